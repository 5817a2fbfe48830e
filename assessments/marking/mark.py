"""Marking: one rule book over one case, made ready once for each version of a scenario."""

from collections.abc import Mapping
from dataclasses import dataclass

from assessments.answers.sheet import Value
from assessments.marking.case import case_of, schema_of
from assessments.marking.trade import FUNCTIONS
from assessments.rules import Compared, Mark, PreparedBook, RuleBook, judge, prepare
from assessments.scenarios.draw import key_of
from assessments.scenarios.fields import Field, Record
from assessments.scenarios.spec import Scenario
from assessments.scenarios.story import Show, worded

Marked = Mark
"""What marking returns: outcome, points, findings with the values compared, digest of the book, trace."""


class WrongBook(ValueError):
    """A rule book that belongs to another scenario, or to another version."""


@dataclass(frozen=True, slots=True)
class Marker:
    """A scenario with its rule book, every rule checked against what the scenario can hold."""

    scenario: Scenario
    book: PreparedBook

    @classmethod
    def of(cls, scenario: Scenario, book: RuleBook) -> "Marker":
        """Return the marker; raise WrongBook for a book of another version, BookRefused for a faulty rule."""
        if (book.code, book.version) != (scenario.code, scenario.version):
            raise WrongBook(f"The rule book {book.code}@{book.version} doesn't mark {scenario.ref}.")
        return cls(scenario, prepare(book, schema_of(scenario), FUNCTIONS))


def mark(marker: Marker, facts: Record, answers: Mapping[str, Value], key: Record | None = None) -> Marked:
    """Return outcome, points and findings of these answers to these facts.

    ``answers`` come from ``read_answers``: unanswered tasks are left out. The key is worked from the facts unless it
    is handed in; it is never part of what was answered.
    """
    worked = key_of(marker.scenario, facts) if key is None else key
    return judge(marker.book, case_of(marker.scenario, facts, worked, answers))


def said(scenario: Scenario, compared: Compared, show: Show) -> tuple[str, str]:
    """Return a compared value for people: its label and its words, in the reader's units; "not answered" where empty.

    The name of a value is its path, such as ``answer.margin``; what is no field of the scenario keeps its path.
    """
    field = _field_of(scenario, compared.name)
    if compared.value is None:
        return (field.label or field.name), "not answered"
    return (field.label or field.name), worded(field, compared.value, show)


def _field_of(scenario: Scenario, path: str) -> Field:
    root, _, name = path.partition(".")
    fields = scenario.facts if root == "facts" else scenario.key_fields
    return next((field for field in fields if field.name == name), Field(path, "text", label=path))
