"""The numbers that set kinds apart, on marks drawn by hand, whose answers are known."""

import numpy as np
import pytest

from courses.pictures.arrays import F32, Floats, blur
from courses.pictures.features import band_energy, centroid, glint_geometry

MIDDLE = (0.5, 0.5)
Y, X = np.mgrid[0:320, 0:480].astype(F32)
R, TURN = np.hypot(X - 239.5, Y - 159.5), np.arctan2(Y - 159.5, X - 239.5)


def rings() -> Floats:
    return blur((np.sin(R) > 0.9).astype(F32), 0.6)


def rays() -> Floats:
    return blur((np.sin(TURN * 40) > 0.8).astype(F32), 0.6)


def test_rings_run_round_the_lamp_and_rays_do_not() -> None:
    assert glint_geometry(rings(), MIDDLE)[0] > 0.9
    assert glint_geometry(rays(), MIDDLE)[0] < -0.9


def test_rings_are_even_and_a_fan_is_not() -> None:
    fan = rings() * (np.abs(np.sin(TURN)) < 0.3)
    assert glint_geometry(rings(), MIDDLE)[1] > 0.99
    assert glint_geometry(fan, MIDDLE)[1] < 0.85


def test_bands_have_more_energy_than_rings() -> None:
    bands = rings() * (np.sin(X / 14) > 0)
    assert band_energy(rings(), MIDDLE) < 0.4 < 0.8 < band_energy(bands, MIDDLE)


def test_the_centre_of_a_dot_is_its_place() -> None:
    dot = np.zeros((320, 480), F32)
    dot[78:82, 118:122] = 5
    assert centroid(dot) == pytest.approx((0.25, 0.25), abs=0.005)


def test_noise_does_not_pull_the_centre() -> None:
    dot = np.random.default_rng(1).normal(0, 0.02, (320, 480)).astype(F32)
    dot[78:82, 118:122] += 5
    assert centroid(dot) == pytest.approx((0.25, 0.25), abs=0.005)
