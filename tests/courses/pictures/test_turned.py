"""A region's own way along and across."""

from math import cos, radians, sin

import pytest
from hypothesis import given
from hypothesis import strategies as st

from courses.pictures.turned import Turned, turned
from tests.courses.pictures.films import film, plate_of

millimetres = st.floats(-300, 300)


@given(st.floats(-3.2, 3.2), millimetres, millimetres)
def test_there_and_back(angle: float, u: float, v: float) -> None:
    axes = Turned(300.0, 200.0, angle, 50.0, 20.0)
    assert axes.of(*axes.back(u, v)) == pytest.approx((u, v), abs=1e-2)


def test_a_region_that_is_not_turned_reaches_to_its_box() -> None:
    plate = plate_of(film("haze"))
    axes = turned(plate)
    assert (axes.half_u, axes.half_v) == pytest.approx(plate.half)


def test_along_points_the_way_of_the_scene_counter_clockwise() -> None:
    axes = turned(plate_of(film("haze", direction=30)))
    x, y = axes.back(10.0, 0.0)
    # y runs down on the panel, so a line that rises to the right goes to smaller y
    assert (x - axes.x, y - axes.y) == pytest.approx((10 * cos(radians(30)), -10 * sin(radians(30))))


def test_a_quarter_turn_swaps_the_sides() -> None:
    plate = plate_of(film("haze", direction=90))
    axes = turned(plate)
    assert (axes.half_u, axes.half_v) == pytest.approx(plate.half[::-1])
