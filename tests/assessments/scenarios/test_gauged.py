"""Readings of a film gauge, drawn."""

from random import Random
from statistics import fmean, stdev

import pytest

from assessments.scenarios.chance import Chance
from assessments.scenarios.gauged import readings_about


def test_readings_are_whole_and_scatter_as_wide_as_asked() -> None:
    many = readings_about(Chance(Random(5).random), 47.3, 2.0, 4000)
    assert all(each == round(each) for each in many)
    assert fmean(many) == pytest.approx(47.3, abs=0.15)
    # rounding to whole micrometres adds a spread of its own, √(1/12): √(2² + 1/12) = 2.02
    assert stdev(many) == pytest.approx(2.02, abs=0.1)


def test_the_furthest_reading_lies_within_three_root_two_spreads() -> None:
    assert (
        readings_about(Chance(lambda: 0.0), 50.0, 1.0, 1),
        readings_about(Chance(lambda: 0.999999), 50.0, 1.0, 1),
    ) == (
        [46.0],
        [54.0],
    )
