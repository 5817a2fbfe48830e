"""Every judgement of one attempt, the first and those after it: none takes the place of another."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from django.urls import reverse

from assessments.models import Attempt, Evidence, Finding, RuleBook
from assessments.views.lines import reason_of


@dataclass(frozen=True, slots=True)
class Judgement:
    """What an attempt came to by one rule book: when, by which version, and why anew."""

    attempt: Attempt
    number: int
    outcome: str
    points: float
    of: float
    rule_book: RuleBook
    trace: Mapping[str, Any]
    at: datetime | None
    evidence: Evidence | None = None
    reason: str = ""

    @property
    def url(self) -> str:
        """Return the address of the verdict that shows it."""
        return f"{reverse('attempt-verdict', args=[self.attempt.pk])}?judgement={self.number}"

    def findings(self) -> list[Finding]:
        """Return what was found, rule by rule."""
        own = self.evidence.pk if self.evidence else None
        return [one for one in self.attempt.findings.all() if one.rejudgement_id == own]


def judgements_of(attempt: Attempt) -> list[Judgement]:
    """Return every judgement of a judged attempt, oldest first."""
    first = Judgement(
        attempt,
        1,
        attempt.outcome,
        attempt.points,
        attempt.of,
        attempt.rule_book,
        attempt.trace or {"rules": {}},
        attempt.closed_at,
    )
    again = Evidence.objects.filter(attempt=attempt, replaces__isnull=False).order_by("filed_at")
    rows = again.select_related("rejudgement__rule_book", "note")
    return [first, *(_again(attempt, number, row) for number, row in enumerate(rows, start=2))]


def _again(attempt: Attempt, number: int, row: Evidence) -> Judgement:
    found = row.rejudgement
    came = row.outcome, row.points, row.of
    return Judgement(attempt, number, *came, found.rule_book, found.trace, row.filed_at, row, reason_of(row))


def judgement_asked(judgements: list[Judgement], number: str) -> Judgement:
    """Return the judgement of a number, the newest where none or no known one is asked for."""
    return next((one for one in judgements if str(one.number) == number), judgements[-1])
