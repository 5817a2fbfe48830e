"""Smooth steps, blurring, growing: the arithmetic that pictures share."""

import numpy as np
import pytest

from courses.pictures.arrays import F32, blur, grown, soft


def test_a_smooth_step_rises_and_stays_within() -> None:
    x = np.linspace(-3, 3, 101)
    assert (np.diff(soft(x)) >= 0).all()
    assert soft(x).dtype == F32
    assert (soft(-x) + soft(x)) == pytest.approx(np.ones(101))


def test_blurring_keeps_the_sum_and_the_spread() -> None:
    dot = np.zeros((41, 41), F32)
    dot[20, 20] = 1
    soft_dot = blur(dot, 2.0)
    i = np.arange(41) - 20
    assert soft_dot.sum() == pytest.approx(1, abs=1e-5)
    assert np.sqrt((soft_dot.sum(0) * i**2).sum()) == pytest.approx(2.0, abs=0.1)


def test_blurring_holds_an_even_picture() -> None:
    assert blur(np.full((12, 9, 3), 0.4, F32), 1.3) == pytest.approx(np.full((12, 9, 3), 0.4))


@pytest.mark.parametrize("px", [1, 3, 8])
def test_a_dot_grows_to_a_square(px: int) -> None:
    dot = np.zeros((40, 60), bool)
    dot[20, 30] = True
    assert grown(dot, px).sum() == (2 * px + 1) ** 2
    assert grown(dot, px)[20 - px : 21 + px, 30 - px : 31 + px].all()


def test_growing_stops_at_the_edge_and_at_nothing() -> None:
    corner = np.zeros((9, 9), bool)
    corner[0, 8] = True
    assert grown(corner, 2).sum() == 9
    assert grown(corner, 0) is corner
