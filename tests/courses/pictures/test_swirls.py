"""Swirl marks on scenes not looked at while they were tuned."""

import numpy as np
import pytest

from courses.pictures.features import centroid, glint_geometry
from tests.courses.pictures.panels import FULL, MIDDLE, SMALL, change, changes, cover_left, marked, outside

LAMPS = ((0.3, 0.42), (0.5, 0.42), (0.7, 0.42))


@pytest.mark.parametrize("seed", [4711, 4712])
def test_hair_lines_run_round_the_lamp_alike_on_all_sides(seed: int) -> None:
    tangency, evenness = glint_geometry(change(marked("swirl", seed=seed, size=FULL)), (0.5, 0.42))
    assert tangency >= 0.8
    assert evenness >= 0.95


def test_they_follow_the_lamp() -> None:
    found = changes(marked("swirl", seed=4713, size=MIDDLE), "point", *LAMPS)
    slope = np.polyfit([x for x, _y in LAMPS], [centroid(one)[0] for one in found], 1)[0]
    assert slope > 0.5


def test_an_open_sky_hardly_shows_them() -> None:
    shown = marked("swirl", seed=4714)
    sky, lamp = (float(np.abs(change(shown, light)).mean()) for light in ("diffuse", "point"))
    assert 0 < sky < 0.5 * lamp


@pytest.mark.parametrize(("removed_um", "most", "least"), [(0.5, 0.85, 0.5), (1.0, 0.7, 0.2), (3.0, 0.12, 0.0)])
def test_a_cut_leaves_the_deep_ones(removed_um: float, most: float, least: float) -> None:
    assert least <= cover_left("swirl", removed_um, size=SMALL) < most


def test_oil_hides_them_until_it_is_wiped() -> None:
    dry, oiled = (np.sqrt((change(marked("swirl", oils=oils, seed=4715)) ** 2).mean()) for oils in (False, True))
    assert 0 < oiled < 0.7 * dry


def test_they_stay_in_their_region() -> None:
    assert outside(marked("swirl", box=(0.3, 0.25, 0.75, 0.7), seed=4716, size=MIDDLE), near_px=14) < 0.2
