"""How an attempt came out, from how its rules came out."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Protocol

PASS_SHARE = 0.8
_SLACK = 1e-9


class Found(Protocol):
    """What of a finding decides the outcome."""

    @property
    def verdict(self) -> str:
        """One of `met partly not_met not_answered not_applicable`."""

    @property
    def severity(self) -> str:
        """One of `critical needed points`."""

    @property
    def points(self) -> float:
        """Points earned."""

    @property
    def of(self) -> float:
        """Points that could be earned."""

    @property
    def failed(self) -> str | None:
        """Why the rule failed to judge, None when it judged."""


def outcome(findings: Iterable[Found]) -> str:
    """Return `critical_fail`, `cannot_certify`, `not_yet_satisfactory` or `satisfactory`, the first that applies.

    A critical rule not met; else a rule that failed to judge or a critical one not answered; else a needed rule not
    fully met, or under 80 per cent of the points.

    >>> outcome([])
    'satisfactory'
    """
    found = list(findings)
    if any(each.severity == "critical" and each.verdict == "not_met" for each in found):
        return "critical_fail"
    if any(each.failed or (each.severity == "critical" and each.verdict == "not_answered") for each in found):
        return "cannot_certify"
    lacking = any(each.severity == "needed" and each.verdict not in ("met", "not_applicable") for each in found)
    earned, total = sum(each.points for each in found), sum(each.of for each in found)
    return "not_yet_satisfactory" if lacking or earned + _SLACK < PASS_SHARE * total else "satisfactory"
