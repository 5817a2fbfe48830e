"""A draft read: its text, its rules checked against the scenario, its exemplars tried, what it changes."""

import tomllib
from collections.abc import Iterable
from dataclasses import dataclass
from functools import lru_cache

import tomli_w
from django.db.models import Max

from assessments.marking import Marker, Proof, prove
from assessments.marking.case import rests_of, schema_of
from assessments.marking.trade import FUNCTIONS
from assessments.models import Draft, RuleBook
from assessments.rules import BookRefused, Rule, RuleFault, check_book, read_book, read_shared
from assessments.rules import RuleBook as Book
from assessments.scenarios.read_exemplars import read_exemplars
from assessments.scenarios.reader import read_scenario
from assessments.shipped import SHARED, shop
from courses.content.errors import FileRefused
from courses.shipped import sources, text_of

SEEDS = 12
"""How many draws every exemplar is tried on while a draft is written."""
Row = dict[str, object]


@dataclass(frozen=True, slots=True)
class Checked:
    """What checking a text showed: its rules if it can be read, what is wrong or risky, the exemplars tried."""

    book: Book | None
    refusal: str
    faults: tuple[RuleFault, ...] = ()
    warnings: tuple[RuleFault, ...] = ()
    proof: Proof | None = None


@dataclass(frozen=True, slots=True)
class Line:
    """One rule of a draft, with what was found in it and the same rule of the version before."""

    code: str
    row: Row
    rule: Rule | None
    was: Rule | None
    faults: tuple[RuleFault, ...]
    warnings: tuple[RuleFault, ...]

    @property
    def change(self) -> str:
        """Say whether it is `new`, `changed` or nothing of the kind."""
        if self.was is None:
            return "new"
        return "changed" if self.rule and self.rule != self.was else ""


@dataclass(frozen=True, slots=True)
class Manuscript:
    """A draft as it stands: lines, what was taken out, the exemplars tried. `refusal` says why it can't be read."""

    draft: Draft
    version: int
    text: str
    shared: str
    lines: tuple[Line, ...]
    gone: tuple[Rule, ...]
    checked: Checked

    @property
    def sound(self) -> bool:
        """Say whether nothing bars it: every rule is sound, every exemplar comes out as said, no rule is idle."""
        return self.checked.proof is not None and self.checked.proof.clean

    @property
    def changes(self) -> bool:
        """Say whether it judges otherwise than the version it began from, or says so in other words."""
        return bool(self.gone or any(line.change for line in self.lines))


def read(draft: Draft) -> Manuscript:
    """Return a draft as it stands; whatever is wrong with it is part of the answer."""
    version, shared = next_version(draft.scenario.code), text_of(SHARED)
    text = text_of_draft(draft, version)
    checked = tried(draft.scenario.text, text, shared, str(draft.scenario))
    before = {rule.code: rule for rule in draft.base.book.rules}
    rules = {rule.code: rule for rule in checked.book.rules} if checked.book else {}
    lines = tuple(_line(row, rules, before, checked) for row in draft.rows)
    codes = {line.code for line in lines}
    gone = tuple(rule for code, rule in before.items() if code not in codes)
    return Manuscript(draft, version, text, shared, lines, gone, checked)


def with_row(draft: Draft, row: Row) -> Checked:
    """Return what checking shows if a rule of a draft were this row, or the row stood behind the others."""
    code = code_of(row)
    rows = [row if code_of(one) == code else one for one in draft.rows]
    text = _text(draft, next_version(draft.scenario.code), rows if draft.row(code) else [*draft.rows, row])
    return tried(draft.scenario.text, text, text_of(SHARED), str(draft.scenario))


def next_version(code: str) -> int:
    """Return the number the next rule book of a scenario gets."""
    newest: int | None = RuleBook.objects.filter(code=code).aggregate(newest=Max("version"))["newest"]
    return (newest or 0) + 1


def opened(book: RuleBook) -> tuple[str, list[Row], list[Row]]:
    """Return what a draft begins from: the lesson of a published text, its rules and its own exemplars, as tables."""
    table = tomllib.loads(book.text)
    return table.get("lesson", ""), table["rule"], table.get("exemplars", [])


def code_of(row: Row) -> str:
    """Return the code of a row: its own, or that of the shared rule it stands for."""
    return str(row.get("code") or row.get("shared") or "")


def text_of_draft(draft: Draft, version: int) -> str:
    """Return the rule book a draft would be, as text."""
    return _text(draft, version, draft.rows)


def _text(draft: Draft, version: int, rows: list[Row]) -> str:
    head: Row = {"code": draft.scenario.code, "version": version, "scenario_version": draft.scenario.version}
    if draft.lesson:
        head["lesson"] = draft.lesson
    return tomli_w.dumps({**head, "rule": rows, "exemplars": draft.exemplars})


@lru_cache(maxsize=128)
def tried(scenario: str, text: str, shared: str, name: str, seeds: int = SEEDS) -> Checked:
    """Return what checking a rule book's text shows, its exemplars tried on so many draws."""
    spec = read_scenario(scenario, name, shop())
    try:
        book = read_book(text, name, read_shared(shared), sources())
        exemplars = read_exemplars(text, name, spec.tasks)
    except (BookRefused, FileRefused) as refused:
        return Checked(None, str(refused))
    faults = check_book(book, schema_of(spec), FUNCTIONS, rests_of(spec))
    if faults:
        return Checked(book, "", faults)
    try:
        marker = Marker.of(spec, book, exemplars)
    except ValueError as refused:
        return Checked(book, str(refused))
    return Checked(book, "", (), marker.book.warnings, prove(marker, seeds))


def _line(row: Row, rules: dict[str, Rule], before: dict[str, Rule], checked: Checked) -> Line:
    code = code_of(row)
    return Line(code, row, rules.get(code), before.get(code), _of(code, checked.faults), _of(code, checked.warnings))


def _of(code: str, found: Iterable[RuleFault]) -> tuple[RuleFault, ...]:
    return tuple(one for one in found if one.code == code)
