"""Sanding marks: straight, close, one way, in a satin patch."""

import numpy as np
import pytest

from courses.pictures.panel import planned
from courses.pictures.sanding import Sanding
from tests.courses.pictures.panels import MIDDLE, change, laid, marked, outside


def lines(**more: float) -> Sanding:
    shown = marked("sanding_marks", **more)
    plan = planned(shown, shown.defects[0], "point")
    assert isinstance(plan, Sanding)
    return plan


@pytest.mark.parametrize("direction", [0, 35, 110])
def test_lines_run_the_way_they_are_told(direction: float) -> None:
    strokes = lines(direction=direction, seed=4751).strokes
    off = strokes.phi + np.radians(direction)
    assert np.abs(off).max() < 0.2
    assert 0.005 < off.std() < 0.08
    assert np.abs(strokes.bend).max() < 0.004


def test_passes_lie_beside_one_another_with_headings_of_their_own() -> None:
    headings = {round(float(one), 2) for one in lines(seed=4752).strokes.phi}
    assert len(headings) > 5


def test_the_patch_is_satin() -> None:
    canvas = laid(marked("sanding_marks", box=(0.2, 0.2, 0.8, 0.8)))
    assert canvas.alpha[80, 120] > 2 * canvas.alpha[3, 3]
    assert canvas.halo[80, 120] > 5 * canvas.halo[3, 3]


def test_low_light_shows_them_best() -> None:
    shown = marked("sanding_marks", 0.4, seed=4753)
    low, sky = (np.sqrt((change(shown, light) ** 2).mean()) for light in ("raking", "diffuse"))
    assert low > 2 * sky


def test_they_stay_in_their_region() -> None:
    assert outside(marked("sanding_marks", box=(0.3, 0.25, 0.75, 0.7), seed=4754, size=MIDDLE), near_px=14) < 0.2


def test_a_cut_as_deep_as_the_median_leaves_little() -> None:
    whole, cut = (laid(marked("sanding_marks", removed_um=taken)) for taken in (0, 4.4))
    assert float(cut.grooves.cover.sum()) < 0.3 * float(whole.grooves.cover.sum())
    assert cut.alpha.mean() < 1.05 * 0.0042
