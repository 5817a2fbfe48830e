"""The lamp: where its image stands, its beam, its face and its body."""

import numpy as np
import pytest

from courses.pictures import Panel
from courses.pictures.arrays import F32
from courses.pictures.camera import stand_for
from courses.pictures.lamps import FACE_MM, Lamp, lamp_for
from tests.courses.pictures.panels import SMALL, scene

DOWN = Lamp((0.0, 0.0, 520.0), (0.0, 0.0, -1.0), 1.0)


def up(n: int) -> tuple[np.ndarray, ...]:
    return np.zeros(n, F32), np.zeros(n, F32), np.ones(n, F32)


@pytest.mark.parametrize("light", ["point", "raking"])
@pytest.mark.parametrize("curve", ["flat", "gentle"])
@pytest.mark.parametrize("at", [(0.5, 0.42), (0.25, 0.6), (0.8, 0.3)])
def test_its_image_stands_where_it_is_asked_for(light: str, curve: str, at: tuple[float, float]) -> None:
    panel = Panel.build(scene(curve=curve), light)
    bright = panel.shoot(at).rgb.min(axis=2) >= 250
    y, x = np.argwhere(bright).mean(0)
    assert ((x + 0.5) / 240, (y + 0.5) / 160) == pytest.approx(at, abs=0.025)


def test_light_falls_with_the_square_of_the_distance_and_off_the_beam() -> None:
    lx, ly, lz = (F32(part) for part in (0.0, 0.0, 1.0))
    near, far = DOWN.beam(lx, ly, lz, F32(520)), DOWN.beam(lx, ly, lz, F32(1040))
    assert (float(near), float(far)) == pytest.approx((1.0, 0.25))
    aside = DOWN.beam(F32(0.6), F32(0), F32(0.8), F32(520))
    assert float(aside) < 0.4


def test_a_mirrored_ray_meets_a_face_as_wide_as_it_is() -> None:
    x = np.linspace(-40, 40, 81, dtype=F32)
    face, _room = DOWN.face((x, np.zeros(81, F32)), up(81), np.full(81, 0.001, F32))
    assert (np.abs(x[face > 0.3]).max(), face.max()) == (pytest.approx(FACE_MM, abs=1), pytest.approx(1, abs=0.01))


def test_a_rough_film_spreads_the_face_and_dims_it() -> None:
    x = np.linspace(0, 200, 101, dtype=F32)
    sharp, dull = (DOWN.face((x, x * 0), up(101), np.full(101, alpha, F32))[0] for alpha in (0.004, 0.1))
    assert dull[0] < 0.2 * sharp[0]
    assert dull[30] > sharp[30]


def test_the_hand_hides_some_of_the_room() -> None:
    span = np.linspace(-150, 150, 61, dtype=F32)
    x, y = (one.ravel() for one in np.meshgrid(span, span))
    _face, room = DOWN.face((x, y), up(x.size), np.full(x.size, 0.004, F32))
    assert (room.min() < 0.5, room.max()) == (True, pytest.approx(1))


def test_the_lamp_is_held_at_its_height_and_aimed_at_the_panel() -> None:
    lamp = lamp_for(scene(), "point", stand_for("point", SMALL), (0.3, 0.3))
    assert lamp.place[2] == pytest.approx(520)
    assert lamp.aim[2] < -0.5
    assert np.linalg.norm(lamp.aim) == pytest.approx(1)
