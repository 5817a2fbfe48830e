"""Haze."""

import numpy as np
import pytest

from courses.pictures.arrays import blur
from tests.courses.pictures.films import WHOLE, canvas_of, change, film, lamp_peak, leak, rms


def test_the_lamp_image_loses_its_edge_but_not_its_place() -> None:
    peaks = [lamp_peak(film("haze", severity, box=WHOLE)) for severity in (0.0, 0.3, 0.6, 1.0)]
    assert peaks[0] > peaks[1] > peaks[2] > peaks[3] > 0.02 * peaks[0]


def test_the_veil_lies_beside_the_lamp_and_thins_away_from_it() -> None:
    changed = blur(change(film("haze", 0.5, "black", WHOLE), "point"), 3)
    beside, far = changed[60:76, 132:146].mean(), changed[130:, :40].mean()
    assert beside > 2 * far > 0


def test_it_shows_less_in_soft_light_than_beside_a_lamp_on_black() -> None:
    assert rms(change(film("haze", 0.5, "black"), "diffuse")) < 0.5 * rms(change(film("haze", 0.5, "black"), "point"))


def test_colour_stays() -> None:
    hazed, clean = canvas_of(film("haze", 0.9)), canvas_of(film("haze", 0.0))
    assert np.array_equal(hazed.albedo, clean.albedo)


def test_passes_lie_along_the_direction() -> None:
    level, upright = (canvas_of(film("haze", 0.8, box=WHOLE, direction=turn)).halo for turn in (0, 90))
    level, upright = blur(level, 4), blur(upright, 4)
    assert np.abs(np.diff(level, axis=0)).mean() > 1.5 * np.abs(np.diff(level, axis=1)).mean()
    assert np.abs(np.diff(upright, axis=1)).mean() > 1.5 * np.abs(np.diff(upright, axis=0)).mean()


def test_a_polish_takes_it_off() -> None:
    clean, polished = (canvas_of(film("haze", 0.6 * share, removed_um=share)) for share in (0.0, 1.0))
    assert polished.halo.mean() == pytest.approx(clean.halo.mean(), rel=0.02)


@pytest.mark.parametrize("light", ["diffuse", "point", "raking"])
def test_the_mask_holds_what_changes(light: str) -> None:
    assert leak(film("haze", 0.5), light) < 0.2
