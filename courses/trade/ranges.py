"""The range a formula holds for, refused in one sentence with the value, the limits and the unit."""

from __future__ import annotations

from dataclasses import dataclass

from courses.trade.errors import OutOfRange
from courses.trade.units import Preferences, shown_plain

METRIC = Preferences.metric()


@dataclass(frozen=True, slots=True)
class Range:
    """From ``low`` to ``high``, both included, in ``unit``.

    >>> Range(1.0, 100.0, "rh").checked("air_rh", 85.0)
    85.0
    """

    low: float
    high: float
    unit: str

    def checked(self, name: str, value: float, prefs: Preferences = METRIC) -> float:
        """``value`` as it is where it lies inside; else `OutOfRange` that says so in the reader's units.

        >>> Range(1.0, 100.0, "rh").checked("air_rh", 140.0)
        Traceback (most recent call last):
        courses.trade.errors.OutOfRange: air_rh: 140\xa0% lies outside 1\xa0% to 100\xa0%; give a value within.
        """
        if self.low <= value <= self.high:
            return value
        said, low, high = (shown_plain(number, self.unit, prefs) for number in (value, self.low, self.high))
        raise OutOfRange(f"{said} lies outside {low} to {high}; give a value within.", name)
