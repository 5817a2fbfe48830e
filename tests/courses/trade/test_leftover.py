"""What a cut leaves, against Python's own normal distribution and properties that hold whatever the numbers."""

from collections.abc import Callable
from math import log
from statistics import NormalDist

import pytest
from hypothesis import given
from hypothesis import strategies as st

from courses.trade import leftover
from courses.trade.errors import OutOfRange

CUTS = st.floats(0.0, 200.0)
FILMS = st.floats(20.0, 900.0)
SPREADS = st.floats(0.02, 0.5)


@given(CUTS, st.floats(0.5, 60.0), SPREADS)
def test_a_layer_is_a_normal_distribution(removed: float, layer: float, spread: float) -> None:
    left = leftover.share_oxidised(removed, layer, spread)
    expected = 1.0 if removed == 0 else 1 - NormalDist(layer, spread * layer).cdf(removed)
    assert left == pytest.approx(expected, abs=1e-12)


@given(st.floats(0.01, 30.0), st.floats(0.1, 10.0), st.floats(1.05, 4.0))
def test_marks_are_a_log_normal_distribution(depth: float, median: float, gsd: float) -> None:
    left = leftover.share_deeper(depth, median, gsd)
    assert left == pytest.approx(1 - NormalDist(log(median), log(gsd)).cdf(log(depth)), abs=1e-12)


@given(st.floats(0.1, 10.0), st.floats(1.0, 4.0), SPREADS)
def test_nineteen_in_twenty_lie_below_d95(median: float, gsd: float, spread: float) -> None:
    if gsd > 1.05:
        assert leftover.share_deeper(leftover.d95_um(median, gsd), median, gsd) == pytest.approx(0.05, abs=1e-4)
    assert leftover.share_oxidised(leftover.layer_to_um(median, spread), median, spread) == pytest.approx(
        0.05, abs=1e-4
    )


@given(FILMS, SPREADS, CUTS, CUTS)
def test_burning_grows_with_the_cut_and_tape_never_adds_to_it(
    film: float, spread: float, one: float, two: float
) -> None:
    less, more = sorted((one, two))
    at = [leftover.burn_probability(film, spread, cut, 2.5, 0.75, taped=False) for cut in (less, more)]
    assert at[0] <= at[1]
    assert leftover.burn_probability(film, spread, more, 2.5, 0.75, taped=True) <= at[1]


@given(FILMS, st.floats(0.02, 0.3), st.floats(0.001, 0.2))
def test_the_cut_at_a_chance_has_that_chance(film: float, spread: float, chance: float) -> None:
    cut = leftover.cut_at_chance_um(film, spread, chance)
    assert cut == 0 or leftover.burn_in_field(film, spread, cut) == pytest.approx(chance, rel=1e-6)


def test_an_even_layer_goes_all_at_once() -> None:
    assert [leftover.share_oxidised(cut, 10.0, 0.0) for cut in (9.9, 10.0, 10.1)] == [1.0, 0.0, 0.0]
    assert [leftover.share_deeper(depth, 2.0, 1.0) for depth in (1.9, 2.0, 2.1)] == [1.0, 0.0, 0.0]
    assert [leftover.burn_in_field(40.0, 0.0, cut) for cut in (40.0, 40.1)] == [0.0, 1.0]


def test_nothing_cut_leaves_everything() -> None:
    assert leftover.share_oxidised(0.0, 10.0, 0.9) == leftover.share_deeper(0.0, 0.8, 1.6) == 1.0


@pytest.mark.parametrize(
    "call",
    [
        lambda: leftover.share_oxidised(-1.0, 10.0, 0.3),
        lambda: leftover.share_oxidised(5.0, 0.0, 0.3),
        lambda: leftover.share_deeper(1.0, 0.8, 0.9),
        lambda: leftover.burn_in_field(45.0, 1.5, 12.0),
        lambda: leftover.burn_at_edge(45.0, 0.1, 12.0, 0.5, 0.75),
        lambda: leftover.burn_at_edge(45.0, 0.1, 12.0, 2.5, 1.5),
        lambda: leftover.cut_at_chance_um(45.0, 0.1, 0.5),
    ],
)
def test_what_lies_outside_is_refused(call: Callable[[], float]) -> None:
    with pytest.raises(OutOfRange):
        call()
