"""Who is stuck: on a rule that isn't met again and again, or gone quiet. Both limits are common practice, no source."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime

TIMES = 3
"""So many times in a row not met, and somebody is stuck on a rule."""
QUIET_DAYS = 14
"""After so many days without a sign of life somebody is quiet."""


@dataclass(frozen=True, slots=True)
class Stuck:
    """Why somebody is stuck: "rule", its code and how often in a row; or "quiet", and the days since the last sign."""

    why: str
    code: str = ""
    times: int = 0
    days: int = 0


def stuck(judged: Iterable[tuple[str, str, datetime]], last_seen: datetime | None, at: datetime) -> tuple[Stuck, ...]:
    """Return on what somebody is stuck at `at`: rules by code, then quiet.

    `judged` is rule, verdict and moment, in any order. Where a rule didn't apply says nothing; any verdict but not_met
    ends the row. Who was never seen isn't quiet: they have not begun.
    """
    rows: dict[str, list[str]] = {}
    for code, verdict, _at in sorted((one for one in judged if one[2] <= at), key=lambda one: one[2]):
        if verdict != "not_applicable":
            rows.setdefault(code, []).append(verdict)
    times = {code: _last_in_a_row(verdicts) for code, verdicts in sorted(rows.items())}
    found = [Stuck("rule", code, times=row) for code, row in times.items() if row >= TIMES]
    days = (at - last_seen).days if last_seen else 0
    return (*found, *([Stuck("quiet", days=days)] if days >= QUIET_DAYS else []))


def _last_in_a_row(verdicts: list[str]) -> int:
    others = [place for place, verdict in enumerate(verdicts, start=1) if verdict != "not_met"]
    return len(verdicts) - (others[-1] if others else 0)
