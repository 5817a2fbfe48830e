"""Streaks that go one way."""

import numpy as np
from hypothesis import given, settings
from hypothesis import strategies as st

from courses.pictures.arrays import F32
from courses.pictures.runs import Runs, runs
from tests.courses.pictures.films import chance


def streaks(seed: int, **more: float) -> Runs:
    """Return a dozen streaks 100 mm across that begin within 10 mm and reach 40 to 60 mm."""
    return runs(chance(seed), (0.0, 100.0), 12, (2.0, 6.0), (0.0, 10.0), (40.0, 60.0), **more)


def grid() -> tuple[np.ndarray, np.ndarray]:
    """Return places all over and round them."""
    return np.meshgrid(np.arange(0, 100, 1, F32), np.arange(-20, 90, 1, F32))


@settings(max_examples=20, deadline=None)
@given(st.integers(0, 2**32 - 1))
def test_they_lie_between_their_beginning_and_their_end(seed: int) -> None:
    across, along = grid()
    lit = streaks(seed).at(across, along)
    assert lit.min() >= 0
    assert lit.max() <= 1
    assert lit[along < 0].max() == 0
    assert lit[along > 70].max() == 0
    assert lit[(along > 20) & (along < 30)].max() > 0.1


def test_the_same_chance_gives_the_same_streaks() -> None:
    across, along = grid()
    assert np.array_equal(streaks(7).at(across, along), streaks(7).at(across, along))
    assert not np.array_equal(streaks(7).at(across, along), streaks(8).at(across, along))


def test_they_are_long_and_narrow() -> None:
    lit = streaks(7, sway_mm=0.0).at(*grid())
    assert np.abs(np.diff(lit, axis=1)).mean() > 3 * np.abs(np.diff(lit, axis=0)).mean()


def test_a_long_head_comes_up_slowly() -> None:
    across, along = grid()
    near = (along > 10) & (along < 14)
    assert streaks(7, head_mm=60.0).at(across, along)[near].mean() < 0.5 * streaks(7).at(across, along)[near].mean()
