"""The region of a defect on the panel."""

import numpy as np
import pytest

from courses.pictures.camera import Camera
from courses.pictures.plate import Plate
from courses.pictures.scene import LIGHTS
from tests.courses.pictures.panels import SMALL, marked

BOX = (0.2, 0.3, 0.7, 0.8)


def plate(box: tuple[float, ...] = BOX, light: str = "point", **more: float) -> Plate:
    shown = marked("swirl", box=box, **more)
    return Plate(shown, shown.defects[0], light)


@pytest.mark.parametrize("light", LIGHTS)
def test_places_scattered_over_a_box_are_seen_inside_it(light: str) -> None:
    here = plate(light=light)
    u, v = here.stand.to_picture(*here.scatter(np.random.default_rng(1), 800))
    assert (u.min(), u.max(), v.min(), v.max()) == pytest.approx(BOX[::2] + BOX[1::2], abs=0.02)


def test_places_are_scattered_evenly_over_the_panel() -> None:
    here = plate((0, 0, 1, 1), "raking")
    _x, y = here.scatter(np.random.default_rng(2), 40_000)
    corners_y = here._reach[1]
    top, low = corners_y[0], corners_y[2]
    share = (y < (top + low) / 2).mean()
    wide, narrow = (here.stand.to_panel(1.06, v)[0] - here.stand.to_panel(-0.06, v)[0] for v in (-0.06, 1.06))
    assert share == pytest.approx((0.75 * wide + 0.25 * narrow) / (wide + narrow), abs=0.01)


def test_fractions_of_the_box_are_places_in_it() -> None:
    here = plate()
    u, v = here.stand.to_picture(*here.at(np.array([0.0, 1.0]), np.array([0.0, 1.0])))
    assert (*u, *v) == pytest.approx((0.2, 0.7, 0.3, 0.8))
    assert here.stand.to_picture(*here.centre) == pytest.approx((0.45, 0.55))
    assert here.half[0] == pytest.approx(here.stand.width * 0.25, rel=0.1)


def test_half_of_it_is_left_where_the_box_ends() -> None:
    here = plate()
    x, y = here.stand.to_panel(np.array([0.45, 0.2, 0.02]), np.array([0.55, 0.55, 0.55]))
    assert here.weight(x, y, rough_mm=0) == pytest.approx([1, 0.5, 0], abs=0.02)


def test_a_ragged_edge_stays_near_the_box() -> None:
    here = plate()
    camera = Camera(here.stand, SMALL)
    weight = here.weight(camera.x, camera.y)
    assert (weight > 0.5).mean() == pytest.approx(0.25, abs=0.04)
    assert weight[:30].max() < 0.3


def test_a_whole_picture_is_not_faded() -> None:
    here = plate((0, 0, 1, 1))
    assert here.whole
    assert here.weight(np.zeros(3), np.zeros(3)).tolist() == [1, 1, 1]
    assert plate((0, 0, 1, 0.5)).weight(*here.stand.to_panel(0.001, 0.1)) == pytest.approx(1)


def test_degrees_turn_counter_clockwise_on_screen() -> None:
    assert plate(direction=90).angle == pytest.approx(-np.pi / 2)


def test_its_noise_is_its_own() -> None:
    here = plate()
    assert (here.field(20, 90, 4).tile == here.field(20, 90, 4).tile).all()
    assert (here.field(20, 90, 4).tile != here.field(20, 90, 5).tile).any()
