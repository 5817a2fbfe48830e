"""What a rule runs on: one bound case, the loop variables of the moment, and the trace being written."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field
from typing import Any

from assessments.rules.trace import Trace, small

RawEvent = tuple[int, Any, tuple[Any, ...]]


@dataclass(slots=True)
class Frame:
    """One run over one case.

    `events` is None while nothing is recorded; `silent` names the roots of which `answered(missing)` is to be
    unknown instead of False, for the rule of silence.
    """

    case: Mapping[str, Any]
    events: list[RawEvent] | None = None
    silent: frozenset[str] = frozenset()
    variables: dict[str, Any] = field(default_factory=dict)

    def note(self, number: int, result: Any, *operands: Any) -> None:
        """Record one event, if anything is recorded."""
        if self.events is not None:
            self.events.append((number, result, operands))


Run = Callable[[Frame], Any]
LARGEST = 1e300


def finite(value: float) -> float | None:
    """Return a number that can be reckoned with further, None for one that has run out of all bounds.

    >>> finite(2.5), finite(float("inf")), finite(10**400)
    (2.5, None, None)
    """
    return value if abs(value) <= LARGEST and math.isfinite(value) else None


def compact(events: Iterable[RawEvent], failed: str | None = None) -> Trace:
    """Return raw events as a trace: long texts cut, lists by their length, numbers to six decimals."""
    return Trace(
        tuple((number, small(result), *map(small, operands)) for number, result, operands in events), False, failed
    )
