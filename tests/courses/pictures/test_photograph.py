"""Exposure, bloom, grain and the curve of the film."""

import numpy as np
import pytest

from courses.pictures.arrays import F32
from courses.pictures.camera import Camera, stand_for
from courses.pictures.photograph import TONE, developed, grain, metered

SIZE = (240, 160)
CAMERA = Camera(stand_for("point", SIZE), SIZE)
QUIET = np.zeros((160, 240, 3), np.float16)


def even(value: float) -> np.ndarray:
    return np.full((160, 240, 3), value, F32)


def test_the_curve_rises_from_black_to_white() -> None:
    assert (np.diff(TONE.astype(int)) >= 0).all()
    assert (TONE[0], TONE[-1]) == (0, 255)


def test_more_light_is_brighter_and_twice_the_exposure_is_twice_the_light() -> None:
    dim, bright = (developed(even(value), 1.0, CAMERA, "point", QUIET)[80, 120, 0] for value in (0.1, 0.4))
    assert dim < bright
    doubled = developed(even(0.2), 2.0, CAMERA, "point", QUIET)
    assert (doubled == developed(even(0.4), 1.0, CAMERA, "point", QUIET)).all()


def test_corners_are_darker() -> None:
    picture = developed(even(0.3), 1.0, CAMERA, "point", QUIET)
    assert picture[0, 0, 0] < picture[80, 120, 0]


def test_a_bright_spot_blooms() -> None:
    spot = even(0.0)
    spot[76:84, 116:124] = 30
    picture = developed(spot, 1.0, CAMERA, "point", QUIET)
    assert picture[80, 128, 0] > picture[80, 150, 0] > 0


def test_low_along_the_panel_near_and_far_are_soft() -> None:
    camera = Camera(stand_for("raking", SIZE), SIZE)
    stripes = np.repeat((np.arange(240) // 2 % 2 * 0.3).astype(F32)[None, :, None], 160, 0) + np.zeros(3, F32)
    picture = developed(stripes, 1.0, camera, "raking", QUIET).astype(float)
    assert picture[80].std() > 1.2 * picture[2].std()


def test_grain_is_its_own_and_comes_again() -> None:
    assert (grain(5, SIZE) == grain(5, SIZE)).all()
    assert (grain(5, SIZE) != grain(6, SIZE)).mean() > 0.9
    assert grain(5, SIZE).astype(float).mean() == pytest.approx(0, abs=0.02)


def test_the_meter_prints_dark_dark_and_keeps_lights_from_burning_out() -> None:
    assert metered("diffuse", 0.9, 0.5, 0.6) * 0.5 > 5 * metered("diffuse", 0.03, 0.5, 0.6) * 0.5
    assert metered("point", 0.9, 0.1, 2.0) == pytest.approx(0.55, rel=1e-3)
