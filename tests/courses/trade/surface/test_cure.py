"""Cure of a repair: warmth and time, between the two temperatures a repair article names."""

import pytest

from courses.trade.surface.cure import cured_after, is_hard
from tests.courses.trade.model import constants


@pytest.mark.parametrize(("hours", "degc"), [(12, 18), (12, 35), (20, 18), (20, 35)])
def test_a_soft_core_hardens_in_12_to_20_hours_at_18_to_35_degrees(hours: float, degc: float) -> None:
    """CUT-03: 70 % of soft ones turn hard; those start with 0.7 of their cure."""
    assert is_hard(cured_after(0.7, hours, degc, constants()), constants())


def test_below_ten_degrees_nothing_happens_and_beyond_35_it_gets_no_faster() -> None:
    assert cured_after(0.5, 500, 9.9, constants()) == 0.5
    assert cured_after(0.5, 5, 35, constants()) == cured_after(0.5, 5, 60, constants())


def test_ten_degrees_warmer_is_twice_as_fast() -> None:
    assert cured_after(0.2, 10, 22, constants()) == pytest.approx(cured_after(0.2, 5, 32, constants()))


def test_two_waits_are_as_good_as_one() -> None:
    once = cured_after(0.2, 12, 22, constants())
    assert cured_after(cured_after(0.2, 5, 22, constants()), 7, 22, constants()) == pytest.approx(once)
    assert cured_after(0.4, 0, 22, constants()) == 0.4
