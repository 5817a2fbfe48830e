"""Holograms on scenes not looked at while they were tuned."""

import numpy as np
import pytest

from courses.pictures.features import band_energy, glint_geometry
from tests.courses.pictures.panels import FULL, MIDDLE, change, changes, cover_left, laid, marked, outside

LAMP = (0.5, 0.42)


@pytest.mark.parametrize(("seed", "direction"), [(4721, 10), (4722, 75), (4723, 140)])
def test_they_are_bands_and_no_rings(seed: int, direction: float) -> None:
    by = change(marked("hologram", seed=seed, direction=direction, size=FULL))
    assert glint_geometry(by, LAMP)[1] < 0.92
    assert band_energy(by, LAMP) > 0.8


def test_swirls_are_no_bands() -> None:
    assert band_energy(change(marked("swirl", seed=4724, size=FULL)), LAMP) < 0.8


def test_bands_change_as_the_lamp_moves() -> None:
    shown = marked("hologram", seed=4725, size=MIDDLE)
    first, second = changes(shown, "point", (0.4, 0.42), (0.6, 0.42))
    assert abs(np.corrcoef(first.ravel(), second.ravel())[0, 1]) < 0.5


def test_no_two_lanes_are_alike() -> None:
    a, b = (laid(marked("hologram", seed=seed)).grooves.cover for seed in (4726, 4727))
    assert np.corrcoef(a, b)[0, 1] < 0.5


@pytest.mark.parametrize(("removed_um", "most"), [(0.13, 0.5), (0.26, 0.05), (0.6, 0.0)])
def test_a_fine_cut_takes_them_off(removed_um: float, most: float) -> None:
    assert cover_left("hologram", removed_um) <= most


def test_they_stay_in_their_region() -> None:
    assert outside(marked("hologram", box=(0.3, 0.25, 0.75, 0.7), seed=4728, size=MIDDLE), near_px=14) < 0.2
