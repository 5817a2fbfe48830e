"""Marking: one rule book over one case, made ready once for each version of a scenario."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from assessments.answers.sheet import Value
from assessments.marking.case import case_of, rests_of, schema_of
from assessments.marking.exemplars import Expressions
from assessments.marking.trade import FUNCTIONS
from assessments.rules import Mark, PreparedBook, RuleBook, judge, prepare
from assessments.scenarios.draw import key_of
from assessments.scenarios.fields import Record
from assessments.scenarios.spec import Exemplar, Scenario
from courses.trade.errors import offer

Marked = Mark
"""What marking returns: outcome, points, findings with the values compared, digest of the book, trace."""


class MarkerRefused(ValueError):
    """A rule book that belongs to another version, or exemplars that name rules it doesn't hold."""


@dataclass(frozen=True, slots=True)
class Marker:
    """A scenario with its rule book, every rule and every exemplar checked against what the scenario can hold."""

    scenario: Scenario
    book: PreparedBook
    expressions: Expressions

    @classmethod
    def of(cls, scenario: Scenario, book: RuleBook, exemplars: Iterable[Exemplar] = ()) -> "Marker":
        """Return the marker, made once for each version; ``exemplars`` are those the book brings along.

        Raises MarkerRefused for a book of another version or an exemplar that names no rule of it, BookRefused for a
        faulty rule, ExpressionRefused and AnswerRefused for a faulty exemplar.
        """
        if book.marks != scenario.ref:
            raise MarkerRefused(f"The rule book {book.code}@{book.version} doesn't mark {scenario.ref}.")
        scenario = scenario.with_exemplars(exemplars)
        for exemplar in scenario.exemplars:
            _refuse_unknown_rules(scenario, exemplar, book)
        prepared = prepare(book, schema_of(scenario), FUNCTIONS, rests_of(scenario))
        return cls(scenario, prepared, Expressions.of(scenario))


def mark(marker: Marker, facts: Record, answers: Mapping[str, Value], key: Record | None = None) -> Marked:
    """Return outcome, points and findings of these answers to these facts.

    ``answers`` come from ``read_answers``: unanswered tasks are left out. The key is worked from the facts unless it
    is handed in; it is never part of what was answered.
    """
    worked = key_of(marker.scenario, facts) if key is None else key
    return judge(marker.book, case_of(marker.scenario, facts, worked, answers))


def _refuse_unknown_rules(scenario: Scenario, exemplar: Exemplar, book: RuleBook) -> None:
    codes = [rule.code for rule in book.rules]
    for code in exemplar.not_met:
        if code not in codes:
            where = f"{scenario.ref}, exemplar '{exemplar.name}'"
            raise MarkerRefused(f"{where}: no rule of its book is called '{code}'; {offer(code, codes)}")
