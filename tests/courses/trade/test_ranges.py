"""Ranges: what is inside passes, what is outside is refused in the reader's unit."""

import pytest

from courses.trade.errors import OutOfRange
from courses.trade.ranges import Range
from courses.trade.units import Preferences

AIR = Range(-20.0, 50.0, "degc")


@pytest.mark.parametrize("value", [-20.0, 0.0, 50.0])
def test_both_ends_lie_inside(value: float) -> None:
    assert AIR.checked("air_degc", value) == value


def test_outside_is_told_in_the_unit_of_the_reader() -> None:
    with pytest.raises(OutOfRange) as refusal:
        AIR.checked("air_degc", 60.0, Preferences.us())
    assert refusal.value.sentence == "140\xa0°F lies outside −4\xa0°F to 122\xa0°F; give a value within."
    assert refusal.value.input == "air_degc"


def test_a_value_just_outside_is_not_rounded_into_the_range() -> None:
    with pytest.raises(OutOfRange, match=r"100\.4\xa0% lies outside 1\xa0% to 100\xa0%"):
        Range(1.0, 100.0, "rh").checked("air_rh", 100.4)
