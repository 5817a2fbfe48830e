"""Gauge readings: mean and spread of a few, what was removed between two sets, and how far that may be off.

The doubt comes from the readings alone. A hand-held gauge drifts by 1 to 2 µm besides (practice).
"""

from __future__ import annotations

from collections.abc import Sequence
from math import atan, cos, pi, sin, sqrt

from courses.trade.errors import ImpossibleChoice, OutOfRange
from courses.trade.ranges import Range

READING_UM = Range(-50.0, 5000.0, "um")
ZERO_UM = Range(-50.0, 50.0, "um")
READINGS = (2, 30)
"""How many readings a set holds, at least and at most."""

CONFIDENCE = 0.95
"""In how many sets of a hundred the true figure lies within the doubt, ÷ 100: common practice."""

DRIFT_UM = (1.0, 2.0)
"""How far a hand-held gauge wanders between two sets: practice."""


def mean_um(readings_um: Sequence[float], zero_um: float = 0.0) -> float:
    """Mean of 2 to 30 readings, µm, less what the gauge shows on the bare plate.

    `ImpossibleChoice` for fewer or more, `OutOfRange` beyond −50 to 5000 µm (zero: ±50). Source: arithmetic.

    >>> round(mean_um([92, 95, 90, 94, 96]), 1), round(mean_um([92, 95, 90, 94, 96], zero_um=2.0), 1)
    (93.4, 91.4)
    """
    readings = _checked(readings_um)
    return sum(readings) / len(readings) - ZERO_UM.checked("zero_um", zero_um)


def spread_um(readings_um: Sequence[float]) -> float:
    """Standard deviation of 2 to 30 readings, µm, with one reading less below the line. Refusals as `mean_um`.

    >>> round(spread_um([92, 95, 90, 94, 96]), 2)
    2.41
    """
    return _spread(_checked(readings_um))


def _spread(values: Sequence[float]) -> float:
    middle = sum(values) / len(values)
    return sqrt(sum((value - middle) ** 2 for value in values) / (len(values) - 1))


def removed_um(before_um: Sequence[float], after_um: Sequence[float]) -> float:
    """Mean before less mean after, µm: what has gone, if both sets are of one place and one zero. As `mean_um`.

    >>> round(removed_um([92, 95, 90, 94, 96], [88, 91, 87, 90, 91]), 1)
    4.0
    """
    return mean_um(before_um) - mean_um(after_um)


def doubt_um(before_um: Sequence[float], after_um: Sequence[float]) -> float:
    """How far `removed_um` may be off (95 %), µm, where each set was read at places of its own.

    t·√(s²·(1/n₁ + 1/n₂)), s² pooled; of five and five readings 2.3·√((s₁² + s₂²) ÷ 5). Source: students-t.

    >>> round(doubt_um([92, 95, 90, 94, 96], [88, 91, 87, 90, 91]), 1)
    3.1
    """
    first, second = len(before_um), len(after_um)
    free = first + second - 2
    pooled = ((first - 1) * spread_um(before_um) ** 2 + (second - 1) * spread_um(after_um) ** 2) / free
    return students_t(free) * sqrt(pooled * (1 / first + 1 / second))


def same_places_doubt_um(before_um: Sequence[float], after_um: Sequence[float]) -> float:
    """How far `removed_um` may be off (95 %), µm, where both sets were read at the same places in the same order.

    `ImpossibleChoice` unless both hold as many. Source: students-t.

    >>> round(same_places_doubt_um([92, 95, 90, 94, 96], [88, 91, 87, 90, 91]), 1)
    0.9
    """
    if len(before_um) != len(after_um):
        raise ImpossibleChoice(
            f"{len(before_um)} readings before and {len(after_um)} after can't be of the same places.", "after_um"
        )
    apart = [before - after for before, after in zip(_checked(before_um), _checked(after_um), strict=True)]
    return students_t(len(apart) - 1) * _spread(apart) / sqrt(len(apart))


def students_t(freedom: int, confidence: float = CONFIDENCE) -> float:
    """How many standard errors either side hold ``confidence`` (0.5 to 0.999) of Student's distribution.

    ``freedom`` 1 to 200; `OutOfRange` beyond. Exact to the last digits: the distribution has a closed form for whole
    ``freedom``, turned round by halving. Source: students-t.

    >>> round(students_t(8), 3), round(students_t(4), 3)
    (2.306, 2.776)
    """
    if not (1 <= freedom <= 200 and 0.5 <= confidence <= 0.999):
        raise OutOfRange(f"Freedom {freedom} at {confidence:g} lies outside 1 to 200 at 0.5 to 0.999.", "freedom")
    low, high = 0.0, 1000.0
    while high - low > 1e-12 * high:
        middle = (low + high) / 2
        low, high = (middle, high) if _share_within(middle, freedom) < confidence else (low, middle)
    return high


def _share_within(t: float, freedom: int) -> float:
    """The share of Student's distribution between −t and t, for whole ``freedom``."""
    angle = atan(t / sqrt(freedom))
    odd = freedom % 2
    term = cos(angle) if odd else 1.0
    total = term if freedom > 1 else 0.0
    for step in range(2 + odd, freedom - 1, 2):
        term *= cos(angle) ** 2 * (step - 1) / step
        total += term
    return 2 / pi * (angle + sin(angle) * total) if odd else sin(angle) * total


def _checked(readings_um: Sequence[float]) -> Sequence[float]:
    least, most = READINGS
    if not least <= len(readings_um) <= most:
        raise ImpossibleChoice(f"Give {least} to {most} readings; this holds {len(readings_um)}.", "readings_um")
    for reading in readings_um:
        READING_UM.checked("readings_um", reading)
    return readings_um
