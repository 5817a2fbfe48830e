"""Oxidation and fading."""

from itertools import pairwise

import numpy as np
import pytest

from courses.pictures.arrays import blur
from tests.courses.pictures.films import WHOLE, canvas_of, change, film, lamp_peak, leak, shown


def test_the_lamp_image_falls_at_every_step_of_oxidation() -> None:
    peaks = [lamp_peak(film("oxidation", severity, box=WHOLE)) for severity in (0.05, 0.2, 0.4, 0.6, 0.8, 1.0)]
    assert all(later < 0.9 * earlier for earlier, later in pairwise(peaks))


@pytest.mark.parametrize("severity", [0.3, 0.9])
def test_fading_keeps_the_gloss(severity: float) -> None:
    clean, faded = lamp_peak(film("fading", 0.0, box=WHOLE)), lamp_peak(film("fading", severity, box=WHOLE))
    assert abs(faded / clean - 1) < 0.10


@pytest.mark.parametrize("kind", ["oxidation", "fading"])
def test_both_pale_a_dark_colour_in_soft_light_the_more_the_worse(kind: str) -> None:
    paler = [
        float(change(film(kind, severity, "navy"), "diffuse")[50:110, 80:160].mean()) for severity in (0.1, 0.4, 0.9)
    ]
    assert 0 < paler[0] < paler[1] < paler[2]
    assert paler[2] > 3


@pytest.mark.parametrize("light", ["diffuse", "point", "raking"])
@pytest.mark.parametrize("kind", ["oxidation", "fading"])
def test_the_mask_holds_what_changes(kind: str, light: str) -> None:
    assert leak(film(kind, 0.6, "navy"), light) < 0.2


def test_oxidation_is_worst_along_the_top() -> None:
    worn = 1 - canvas_of(film("oxidation", 0.7, box=WHOLE)).coat
    assert worn[:20].mean() > 1.08 * worn[-40:].mean()


def test_it_runs_down_the_side_and_not_across() -> None:
    # streaks: lightness changes faster across the way of the water than along it
    pale = blur(canvas_of(film("oxidation", 0.7, box=WHOLE)).albedo[..., 0], 1.5)
    assert np.abs(np.diff(pale, axis=1)).mean() > 1.3 * np.abs(np.diff(pale, axis=0)).mean()


def test_polishing_takes_oxidation_with_it_but_not_fading() -> None:
    before, after = (canvas_of(film("oxidation", 0.5, removed_um=um)) for um in (0.0, 15.0))
    assert (before.coat.min(), after.coat.min()) < (0.6, 0.9)
    assert after.coat.mean() > 0.97
    faded = [canvas_of(film("fading", 0.5, removed_um=um)).albedo.mean() for um in (0.0, 15.0)]
    assert faded[1] == pytest.approx(faded[0], rel=1e-3)


def test_half_a_cut_leaves_the_worst_places() -> None:
    whole, half = (1 - canvas_of(film("oxidation", 0.5, box=WHOLE, removed_um=um)).coat for um in (0.0, 5.0))
    worst = whole > np.percentile(whole, 90)
    assert half[worst].mean() / whole[worst].mean() > half[~worst].mean() / whole[~worst].mean()


def test_the_same_seed_gives_the_same_wear() -> None:
    one, same, other = (shown(film("oxidation", 0.5, seed=seed), "diffuse") for seed in (31, 31, 32))
    assert np.array_equal(one, same)
    assert not np.array_equal(one, other)


def test_white_shows_little_of_either() -> None:
    for kind in ("oxidation", "fading"):
        assert (
            np.abs(change(film(kind, 0.5, "white"), "diffuse")).mean()
            < 0.3 * np.abs(change(film(kind, 0.5), "diffuse")).mean()
        )
