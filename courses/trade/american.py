"""The American series of grit, where a bare number on a sheet means another grain than the same number with a P.

Medians in micrometres. The standard of the series, ANSI B74.18, stops at 600; higher numbers are customary.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Final

from courses.trade.errors import ImpossibleChoice, offer

AMERICAN_D50_UM: Final[Mapping[str, float]] = MappingProxyType(
    {
        "80": 191.0,
        "100": 140.0,
        "120": 115.0,
        "180": 82.0,
        "220": 68.0,
        "240": 53.0,
        "320": 36.0,
        "360": 28.0,
        "400": 23.6,
        "500": 20.0,
        "600": 16.0,
        "800": 12.6,
        "1000": 10.3,
    }
)
"""Median grain, µm, of a sheet without a P: grit-tables, which differ by up to 3 % among themselves."""


def american_d50_um(number: str) -> float:
    """Median grain, µm, of the sheet that is marked ``number`` without a P; `ImpossibleChoice` offers the nearest.

    >>> american_d50_um("600"), american_d50_um("400")
    (16.0, 23.6)
    """
    if number in AMERICAN_D50_UM:
        return AMERICAN_D50_UM[number]
    raise ImpossibleChoice(f"No American grit is called {number[:20]!r}; {offer(number, AMERICAN_D50_UM)}", "american")
