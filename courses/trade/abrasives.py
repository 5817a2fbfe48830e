"""Abrasives: the grain of a grade, how far apart two grades are, and the scratches a grade leaves.

Grain is the median of the standard (d50), in micrometres; depths are model micrometres.
"""

from __future__ import annotations

from collections.abc import Mapping
from math import log
from types import MappingProxyType
from typing import Final

from courses.trade.errors import ImpossibleChoice, OutOfRange, offer
from courses.trade.ranges import Range

__all__ = [
    *("D50_UM", "EXTRAPOLATED", "RATIO_EASY", "RATIO_LIMIT", "d50_um", "grain_ratio", "grit", "nearest_grade"),
    *("scratch_um", "stray_um"),
]

D50_UM: Final[Mapping[str, float]] = MappingProxyType(
    {
        "P80": 201.0,
        "P100": 162.0,
        "P120": 125.0,
        "P150": 100.0,
        "P180": 82.0,
        "P220": 68.0,
        "P240": 58.5,
        "P280": 52.2,
        "P320": 46.2,
        "P360": 40.5,
        "P400": 35.0,
        "P500": 30.2,
        "P600": 25.8,
        "P800": 21.8,
        "P1000": 18.3,
        "P1200": 15.3,
        "P1500": 12.6,
        "P2000": 10.3,
        "P2500": 8.4,
        "P3000": 6.9,
        "P4000": 5.2,
        "P5000": 4.2,
    }
)
"""Median grain of each P grade, µm: grit-tables, iso-6344-3 before 2021; those of `EXTRAPOLATED` are 20 800 ÷ P."""

EXTRAPOLATED: Final = ("P3000", "P4000", "P5000")
"""Grades that stand in the standard only since 2021: our own extrapolation, never asked to the decimal."""

RATIO_EASY: Final = 1.5
RATIO_LIMIT: Final = 2.0
"""How many times finer the next grade may be, comfortably and at most: practice."""

GRAIN_UM: Final = Range(0.1, 250.0, "um")


def d50_um(grade: str) -> float:
    """Median grain, µm, of a ``grade`` such as P1500; `ImpossibleChoice` offers the nearest. Source: grit-tables.

    >>> d50_um("P1500"), d50_um("P600")
    (12.6, 25.8)
    """
    if grade in D50_UM:
        return D50_UM[grade]
    raise ImpossibleChoice(f"There is no grade {grade[:40]!r}; {_near(grade[:40])}", "grade")


def grit(grade: str) -> int:
    """The number of a ``grade``: 1500 of P1500. `ImpossibleChoice` where it is none.

    >>> grit("P1500")
    1500
    """
    d50_um(grade)
    return int(grade[1:])


def _near(grade: str) -> str:
    """What to offer: of a bare number, the same P grade or those whose numbers are nearest."""
    digits = "".join(one for one in grade if one.isdigit())[:6]
    if not digits:
        return offer(grade, D50_UM)
    asked = log(max(1, int(digits)))
    near = sorted(D50_UM, key=lambda known: abs(log(int(known[1:])) - asked))
    return f"did you mean {near[0]}?" if int(near[0][1:]) == int(digits) else f"did you mean {near[0]} or {near[1]}?"


def grain_ratio(from_grade: str, to_grade: str) -> float:
    """How many times finer the grain of ``to_grade`` is than that of ``from_grade``. Source: grit-tables.

    >>> round(grain_ratio("P1000", "P1500"), 3), round(grain_ratio("P800", "P2000"), 3)
    (1.452, 2.117)
    """
    return d50_um(from_grade) / d50_um(to_grade)


def nearest_grade(grain_um: float) -> str:
    """The P grade whose grain lies nearest to ``grain_um`` (0.1 to 250 µm) by ratio. Source: grit-tables.

    "600" and "400" on the American scale are 16.0 and 23.6 µm:

    >>> nearest_grade(16.0), nearest_grade(23.6)
    ('P1200', 'P800')
    """
    asked = log(GRAIN_UM.checked("grain_um", grain_um))
    return min(D50_UM, key=lambda grade: abs(log(D50_UM[grade]) - asked))


def scratch_um(grain_um: float, rz_um: float, exponent: float, reference_um: float) -> float:
    """Mean depth of the scratches, model µm, that a grain leaves in a film: rz · (grain ÷ reference)^exponent.

    ``rz_um``: that of the reference grain. A law of ours, laid through one third to one tenth of the grain; a chart of
    belts on metal gives a third of that. `OutOfRange` for a grain beyond 0.1 to 250 µm. Source: model.

    >>> round(scratch_um(12.6, 2.745, 1.3, 18.3), 2)
    1.69
    """
    return _powered(grain_um, rz_um, exponent, reference_um)


def stray_um(grain_um: float, rz_um: float, exponent: float, reference_um: float, stray: float) -> float:
    """Depth of the deepest scratch, model µm: ``stray`` times the mean one. Ranges as `scratch_um`. Source: practice.

    >>> round(stray_um(12.6, 2.745, 1.3, 18.3, 1.7), 2)
    2.87
    """
    return stray * scratch_um(grain_um, rz_um, exponent, reference_um)


def sanding_k(grain_um: float, k: float, exponent: float, reference_um: float) -> float:
    """Preston's k, 1/Pa, of paper of this grain: k · (grain ÷ reference)^exponent. Ranges as `scratch_um`.

    Loose polishing hardly depends on the grain, bonded grain does. Source: model.

    >>> f"{sanding_k(12.6, 5.47e-10, 1.25, 18.3):.2e}"
    '3.43e-10'
    """
    return _powered(grain_um, k, exponent, reference_um)


def _powered(grain_um: float, of_reference: float, exponent: float, reference_um: float) -> float:
    if reference_um <= 0:
        raise OutOfRange(f"A reference grain of {reference_um:g} µm is none; give one above 0.", "reference_um")
    return float(of_reference * (GRAIN_UM.checked("grain_um", grain_um) / reference_um) ** exponent)
