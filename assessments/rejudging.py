"""Judging again what was judged: which verdicts another rule book would change, before anything changes."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from datetime import datetime

from django.db.models import QuerySet

from assessments.journey import judge_again, marked_by
from assessments.marking import Marked
from assessments.models import Evidence, RuleBook
from courses.actions import is_erased

Tick = Callable[[], object]
PAGE = 200
"""How many are read at a time: a reading that stays open keeps writers out of SQLite."""


@dataclass(frozen=True, slots=True)
class CameOut:
    """What an attempt came to: outcome and points."""

    outcome: str
    points: float
    of: float

    def as_json(self) -> dict[str, object]:
        """Return it as the door prints it."""
        return {"outcome": self.outcome, "points": self.points, "of": self.of}


@dataclass(frozen=True, slots=True)
class RuleChange:
    """A rule that comes out otherwise; a verdict is empty where the rule book doesn't hold the rule."""

    code: str
    was: str
    now: str

    def as_json(self) -> dict[str, str]:
        """Return it as the door prints it."""
        return {"code": self.code, "was": self.was, "now": self.now}


@dataclass(frozen=True, slots=True)
class Change:
    """An attempt that comes out otherwise, and the rules that make it so."""

    evidence: Evidence
    was: CameOut
    now: CameOut
    rules: tuple[RuleChange, ...]

    def as_json(self) -> dict[str, object]:
        """Return the change as the door prints it; who it is stands in the person's opaque id."""
        return {
            "attempt": str(self.evidence.attempt_id),
            "person": str(self.evidence.person.handle),
            "mode": self.evidence.mode,
            "was": self.was.as_json(),
            "now": self.now.as_json(),
            "rules": [one.as_json() for one in self.rules],
        }


def judged_otherwise(book: RuleBook) -> QuerySet[Evidence]:
    """Return the newest evidence of every attempt that `book` could judge and didn't."""
    newest = Evidence.objects.filter(replaced_by=None, scenario_code=book.code, scenario_version=book.scenario_version)
    rows = newest.exclude(rule_book=book.digest).order_by("happened_at", "pk")
    return rows.select_related("person", "attempt__scenario", "rejudgement").prefetch_related("attempt__findings")


def changes(book: RuleBook, tick: Tick = lambda: None) -> Iterator[Change]:
    """Yield what would come out otherwise by `book`, oldest first; nothing is written. `tick` follows each attempt.

    Whoever was erased is left out: their words are gone, so nothing of theirs can be judged again.
    """
    keys = list(judged_otherwise(book).values_list("pk", flat=True))
    for start in range(0, len(keys), PAGE):
        for evidence in list(judged_otherwise(book).filter(pk__in=keys[start : start + PAGE])):
            change = None if is_erased(evidence.person) else change_of(evidence, book)
            tick()
            if change:
                yield change


def change_of(evidence: Evidence, book: RuleBook) -> Change | None:
    """Return how one attempt would come out otherwise, None where nothing that counts changes."""
    marked = marked_by(book, evidence.attempt)
    was = CameOut(evidence.outcome, evidence.points, evidence.of)
    now = CameOut(marked.outcome, marked.points, marked.of)
    rules = tuple(_rules(evidence, marked))
    return Change(evidence, was, now, rules) if rules or was != now else None


def apply_change(change: Change, book: RuleBook, *, reason: str, now: datetime) -> Evidence:
    """File what one attempt comes to by `book`, beside what it came to before."""
    return judge_again(change.evidence, book, reason=reason, now=now)


def _rules(evidence: Evidence, marked: Marked) -> Iterator[RuleChange]:
    own = evidence.pk if evidence.replaces_id else None
    was = {one.code: one.verdict for one in evidence.attempt.findings.all() if one.rejudgement_id == own}
    now = {one.code: one.verdict for one in marked.findings}
    for code in dict.fromkeys([*was, *now]):
        if was.get(code, "") != now.get(code, ""):
            yield RuleChange(code, was.get(code, ""), now.get(code, ""))
