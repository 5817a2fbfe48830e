"""Fresnel and thin films, held against `tmm`, an independent transfer-matrix library."""

import numpy as np
import pytest
from tmm import coh_tmm

from courses.pictures.arrays import F32
from courses.pictures.optics import FILM_INDEX, WAVES_UM, fresnel, interference


def mirrored(degrees: float, index: float, film_um: float = 0.0, wave_um: float = 0.55) -> float:
    """Return the share of unpolarised light that tmm finds mirrored, with or without a film of index 1.45."""
    layers = [1.0, FILM_INDEX, index] if film_um else [1.0, index]
    depths = [np.inf, film_um, np.inf] if film_um else [np.inf, np.inf]
    found = [coh_tmm(pol, layers, depths, np.radians(degrees), wave_um)["R"] for pol in "sp"]
    return float(np.mean(found))


@pytest.mark.parametrize("index", [1.5, 1.55])
@pytest.mark.parametrize("degrees", [0, 24, 45, 60, 75, 85, 89])
def test_a_bare_film_mirrors_what_tmm_finds(degrees: float, index: float) -> None:
    assert fresnel(np.cos(np.radians(degrees)), index) == pytest.approx(mirrored(degrees, index), rel=1e-9)


def test_half_precision_is_enough_for_pictures() -> None:
    assert fresnel(F32(0.5), 1.5) == pytest.approx(mirrored(60, 1.5), rel=1e-5)


@pytest.mark.parametrize("channel", [0, 1, 2])
def test_colours_of_a_film_swing_as_tmm_has_them(channel: int) -> None:
    thickness = np.linspace(0.05, 0.6, 40)
    ours = interference(thickness.astype(F32), np.ones(40, F32), np.ones(40, F32))[:, channel]
    wave = float(WAVES_UM[channel])
    theirs = np.array([mirrored(0, 1.5, one, wave) for one in thickness])
    assert np.corrcoef(ours, theirs)[0, 1] > 0.98


def test_where_there_is_no_film_nothing_changes() -> None:
    assert interference(np.full(3, 0.3, F32), np.zeros(3, F32), np.ones(3, F32)) == pytest.approx(np.ones((3, 3)))


def test_a_thick_film_has_no_colour() -> None:
    thick = interference(np.linspace(3, 4, 50).astype(F32), np.ones(50, F32), np.ones(50, F32))
    assert float(np.ptp(thick)) < 0.02
