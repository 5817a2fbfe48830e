"""Dual-action haze: a fog round the lamp, no lines."""

import numpy as np
import pytest

from courses.pictures.features import band_energy, glint_geometry
from tests.courses.pictures.panels import MIDDLE, change, cover_left, laid, marked

LAMP = (0.5, 0.42)


def test_it_is_even_on_all_sides_and_without_direction() -> None:
    by = change(marked("da_haze", seed=4731, size=MIDDLE))
    tangency, evenness = glint_geometry(by, LAMP)
    assert (abs(tangency) < 0.4, evenness > 0.97, band_energy(by, LAMP) < 0.4) == (True, True, True)


def test_it_brightens_round_the_lamp_and_goes_with_it() -> None:
    shown = marked("da_haze", seed=4732, size=MIDDLE)
    here, there = change(shown), change(shown, lamp=(0.8, 0.7))
    near_here, near_there = (slice(100, 130), slice(260, 300)), (slice(210, 240), slice(410, 440))
    assert here[near_here].mean() > there[near_here].mean()
    assert there[near_there].mean() > here[near_there].mean()


def test_the_stronger_the_more() -> None:
    fog = [float(laid(marked("da_haze", severity)).fog.mean()) for severity in (0.0, 0.5, 1.0)]
    assert 0 < fog[0] < fog[1] < fog[2]


def test_half_its_depth_off_is_half_of_it_left() -> None:
    assert cover_left("da_haze", 0.12) == pytest.approx(0.5, abs=0.08)
    veil = [float(np.mean(laid(marked("da_haze", removed_um=taken)).fog)) for taken in (0, 0.12, 0.5)]
    assert veil[0] > veil[1] > veil[2] == 0
