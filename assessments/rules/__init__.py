"""The rule engine: a typed subset of Python expressions, checked before it is used, judged in three values.

Pure: it knows no panel, no Django, no clock and no file. `docs/rulebook.md` teaches the language.
"""

from assessments.rules.bind import bind, rounded
from assessments.rules.books.book import read_book, read_shared
from assessments.rules.books.names import read_names
from assessments.rules.books.page import BookRefused
from assessments.rules.checking.checker import Checked, check
from assessments.rules.evaluate import evaluate
from assessments.rules.faults import CaseRefused, Fault, Refused, SchemaRefused, TrialRefused
from assessments.rules.findings import Judged, Mark
from assessments.rules.functions import Function
from assessments.rules.judge import explain_finding, judge, unlooked_finding
from assessments.rules.kinds import Kind, Schema, choice, integer, many, num, record, text, truth
from assessments.rules.outcome import outcome
from assessments.rules.phrasing.composing import joined, written
from assessments.rules.phrasing.fitting import choices, fitting_phrases, typed_units
from assessments.rules.phrasing.phrases import PHRASES, SHARES, Phrase, PhraseRefused, Slot, phrase
from assessments.rules.phrasing.places import Choice
from assessments.rules.prepare import PreparedBook, RuleFault, check_book, prepare
from assessments.rules.rule import ENGINE_VERSION, Rule, RuleBook, SharedBook, SharedRule, Step
from assessments.rules.sentences.compared import Compared, compared
from assessments.rules.sentences.explain import explain
from assessments.rules.sentences.reading import read_back
from assessments.rules.sentences.unlooked import unlooked
from assessments.rules.shared import check_shared, points_only, refuse_shared
from assessments.rules.trace import Trace
from assessments.rules.trial import try_rule

__all__ = [
    "ENGINE_VERSION",
    "PHRASES",
    "SHARES",
    "BookRefused",
    "CaseRefused",
    "Checked",
    "Choice",
    "Compared",
    "Fault",
    "Function",
    "Judged",
    "Kind",
    "Mark",
    "Phrase",
    "PhraseRefused",
    "PreparedBook",
    "Refused",
    "Rule",
    "RuleBook",
    "RuleFault",
    "Schema",
    "SchemaRefused",
    "SharedBook",
    "SharedRule",
    "Slot",
    "Step",
    "Trace",
    "TrialRefused",
    "bind",
    "check",
    "check_book",
    "check_shared",
    "choice",
    "choices",
    "compared",
    "evaluate",
    "explain",
    "explain_finding",
    "fitting_phrases",
    "integer",
    "joined",
    "judge",
    "many",
    "num",
    "outcome",
    "phrase",
    "points_only",
    "prepare",
    "read_back",
    "read_book",
    "read_names",
    "read_shared",
    "record",
    "refuse_shared",
    "rounded",
    "text",
    "truth",
    "try_rule",
    "typed_units",
    "unlooked",
    "unlooked_finding",
    "written",
]
