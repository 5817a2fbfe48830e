"""Noise that lies on the panel."""

import numpy as np
import pytest

from courses.pictures.camera import Camera, stand_for
from courses.pictures.noise import PERIOD, field

CAMERA = Camera(stand_for("point", (96, 64)), (96, 64))


def test_it_has_no_mean_and_a_spread_of_one() -> None:
    tile = field([4, 1], 12, 100).tile
    assert (abs(float(tile.mean())) < 1e-3, float(tile.std())) == (True, pytest.approx(1, abs=1e-3))


def test_what_a_pixel_sees_is_what_lies_at_its_place() -> None:
    cloud = field([4, 1], 12, 100)
    assert cloud.on(CAMERA) == pytest.approx(cloud.at(CAMERA.x, CAMERA.y), abs=1e-3)


def test_it_repeats_after_its_period() -> None:
    cloud = field([4, 1], 12, 100)
    x, y = np.array([-31.0, 11.5, 700.0]), np.array([5.0, -99.0, 41.0])
    assert cloud.at(x + PERIOD, y - PERIOD) == pytest.approx(cloud.at(x, y), abs=1e-4)


def test_a_stream_gives_the_same_noise_again_and_another_another() -> None:
    assert (field([4, 1], 12, 100).tile == field([4, 1], 12, 100).tile).all()
    assert abs(np.corrcoef(field([4, 1], 12, 100).tile.ravel(), field([4, 2], 12, 100).tile.ravel())[0, 1]) < 0.2


def test_stretched_noise_is_longer_that_way() -> None:
    streaks = field([4, 1], 5, 60, stretch=(1.0, 7.0)).tile
    assert np.abs(np.diff(streaks, axis=0)).mean() < 0.4 * np.abs(np.diff(streaks, axis=1)).mean()


def test_slopes_are_those_of_the_values() -> None:
    cloud = field([4, 1], 30, 200)
    right, down = cloud.slopes()
    assert np.corrcoef(right.tile[:, 1:-1].ravel(), np.gradient(cloud.tile, axis=1)[:, 1:-1].ravel())[0, 1] > 0.99
    assert np.corrcoef(down.tile[1:-1].ravel(), np.gradient(cloud.tile, axis=0)[1:-1].ravel())[0, 1] > 0.99
    assert np.sqrt((right.tile**2 + down.tile**2).mean() / 2) == pytest.approx(1, abs=1e-3)
