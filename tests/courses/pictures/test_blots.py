"""Lobed shapes."""

import numpy as np
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from courses.pictures.arrays import F32
from courses.pictures.blots import Blots, lobed
from tests.courses.pictures.films import chance


def pair() -> Blots:
    """Return two lobes of 5 and 4 mm, 6 mm apart, that flow together."""
    return Blots(np.array([[0.0, 6.0]]), np.zeros((1, 2)), np.array([[5.0, 4.0]]), 0.1)


def test_depth_is_that_of_a_circle_far_from_other_lobes() -> None:
    inside = pair().inside(0, np.array([-3.0, -5.0, -8.0], F32), np.zeros(3, F32))
    assert np.allclose(inside.deep, [2.0, 0.0, -3.0], atol=0.05)
    assert np.allclose(inside.gx, 1.0, atol=0.02)


def test_the_waist_between_lobes_is_filled_a_little() -> None:
    waist = pair().inside(0, np.array([3.4], F32), np.array([3.7], F32)).deep
    apart = max(5 - np.hypot(3.4, 3.7), 4 - np.hypot(2.6, 3.7))
    assert apart < float(waist[0]) < apart + 0.5


@settings(max_examples=20, deadline=None)
@given(st.integers(0, 2**32 - 1), st.floats(-6, 6), st.floats(-6, 6))
def test_the_way_in_is_the_slope_of_the_depth(seed: int, x: float, y: float) -> None:
    blots = lobed(chance(seed), [0.0], [0.0], [5.0], 4, 0.3, 0.2)
    assume(np.hypot(x - blots.x, y - blots.y).min() > 0.5)
    step = 0.02
    places = np.array([[x - step, x + step, x, x], [y, y, y - step, y + step]], F32)
    deep = blots.inside(0, *places).deep
    here = blots.inside(0, np.array([x], F32), np.array([y], F32))
    assert abs(float(deep[1] - deep[0]) / (2 * step) - float(here.gx[0])) < 0.05
    assert abs(float(deep[3] - deep[2]) / (2 * step) - float(here.gy[0])) < 0.05


@settings(max_examples=20, deadline=None)
@given(st.integers(0, 2**32 - 1))
def test_what_fills_them_lies_within_and_within_reach(seed: int) -> None:
    blots = lobed(chance(seed), [10.0, 60.0], [10.0, 10.0], [5.0, 3.0], 4, 0.3, 0.1)
    x, y = blots.filled(0.5)
    first = x < 35
    deep = blots.inside(0, (x[first] - blots.x[0, 0]).astype(F32), (y[first] - blots.y[0, 0]).astype(F32)).deep
    assert deep.min() > -1e-3
    assert np.hypot(x[first] - blots.x[0, 0], y[first] - blots.y[0, 0]).max() <= blots.reach[0]


def test_what_is_kept_is_what_was_marked() -> None:
    blots = lobed(chance(), [10.0, 60.0], [10.0, 10.0], [5.0, 3.0], 4, 0.3, 0.1)
    assert blots.kept(np.array([False, True])).x.tolist() == blots.x[1:].tolist()
