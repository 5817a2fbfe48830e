"""What a mark consists of: a finding for each rule, the outcome, and the trace that proves it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from assessments.rules.outcome import outcome
from assessments.rules.sentences.compared import Compared

_DECIMALS = 2


@dataclass(frozen=True, slots=True)
class Judged:
    """How one rule came out: verdict, points, and everything a trainee is told about it.

    `failed` is the reason why the rule failed to judge; its verdict is then `not_answered`.
    """

    code: str
    verdict: str
    severity: str
    points: float
    of: float
    sentence: str
    because: str
    lesson: str | None
    source: str
    values: tuple[Compared, ...] = ()
    failed: str | None = None

    def as_json(self) -> dict[str, Any]:
        """Return the finding in the shape of the `mark` door."""
        return {
            "code": self.code,
            "verdict": self.verdict,
            "severity": self.severity,
            "points": _plain_number(self.points),
            "of": _plain_number(self.of),
            "because": self.failed or self.because,
            "values": [value.as_json() for value in self.values],
            "lesson": self.lesson,
            "source": self.source,
        }


@dataclass(frozen=True, slots=True)
class Mark:
    """The findings of one case, their outcome, and the trace to be stored with the digest of the book."""

    findings: tuple[Judged, ...]
    digest: str
    trace: Mapping[str, Any]

    @property
    def outcome(self) -> str:
        """How the attempt came out."""
        return outcome(self.findings)

    @property
    def points(self) -> float:
        """Points earned."""
        return round(sum(finding.points for finding in self.findings), _DECIMALS)

    @property
    def of(self) -> float:
        """Points that could be earned, rules that don't apply left out."""
        return round(sum(finding.of for finding in self.findings), _DECIMALS)

    @property
    def critical(self) -> tuple[str, ...]:
        """Codes of critical rules that were not met."""
        return tuple(each.code for each in self.findings if each.severity == "critical" and each.verdict == "not_met")

    @property
    def failed(self) -> tuple[str, ...]:
        """Codes of rules that failed to judge."""
        return tuple(each.code for each in self.findings if each.failed)

    def as_json(self) -> dict[str, Any]:
        """Return the mark in the shape of the `mark` door."""
        return {
            "outcome": self.outcome,
            "points": _plain_number(self.points),
            "of": _plain_number(self.of),
            "critical": list(self.critical),
            "findings": [finding.as_json() for finding in self.findings],
        }


def _plain_number(value: float) -> float:
    """Return whole points as whole numbers."""
    return int(value) if float(value).is_integer() else value
