"""Many bent strokes at once."""

import numpy as np
import pytest

from courses.pictures.arrays import F32, Floats
from courses.pictures.camera import Camera, stand_for
from courses.pictures.canvas import Canvas
from courses.pictures.strokes import Strokes, stepped
from tests.courses.pictures.panels import SMALL, scene


def strokes(n: int = 40, bend: float = 0.0) -> Strokes:
    x, y = np.full(n, 300, F32), np.full(n, 200, F32)
    return Strokes(x, y, np.zeros(n, F32), np.full(n, 60, F32), np.full(n, 0.01, F32), np.full(n, bend, F32))


def canvas() -> Canvas:
    made = Canvas(scene(), "point", Camera(stand_for("point", SMALL), SMALL))
    made.rng = np.random.default_rng(2)
    return made


def test_steps_cover_each_mark_once() -> None:
    owner, along = stepped(np.array([10.0, 0.1, 31.0]), 1.0)
    assert np.bincount(owner).tolist() == [10, 3, 31]
    assert [float(along[owner == k].mean()) for k in range(3)] == pytest.approx([0.5, 0.5, 0.5])


def test_straight_strokes_stay_on_their_row_and_bent_ones_leave_it() -> None:
    heights = []
    for bend in (0.0, 0.03):
        plate = canvas()
        strokes(bend=bend).lay(plate, 0.011, 0.34)
        heights.append(np.ptp(np.argwhere(plate.grooves.cover.reshape(160, 240) > 0)[:, 0]))
    assert heights[0] <= 1 < 3 < heights[1]


def test_strokes_fade_and_lose_what_breaks_up() -> None:
    plate = canvas()
    strokes().lay(plate, 0.011, 0.34, breakup=0.0)
    area = float((plate.grooves.cover * plate.camera.pixel_area.ravel()).sum())
    assert area == pytest.approx(40 * 60 * 0.01 * 5 / 6, rel=0.03)


def test_what_is_not_kept_is_not_cut() -> None:
    def left(x: Floats, y: Floats) -> Floats:
        return (x < 300).astype(F32)

    plate = canvas()
    strokes().lay(plate, 0.011, 0.34, keep=left)
    columns = np.argwhere(plate.grooves.cover.reshape(160, 240) > 0)[:, 1]
    assert columns.max() <= 121


def test_joined_strokes_are_both() -> None:
    assert strokes(3).joined(strokes(4, 0.1)).bend.tolist() == pytest.approx([0, 0, 0, 0.1, 0.1, 0.1, 0.1])
