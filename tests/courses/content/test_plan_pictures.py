"""What the pictures of the lessons on planning are said to show is there, and what they hide is hidden."""

from dataclasses import replace

import numpy as np
import pytest

from courses.pictures import Panel
from courses.pictures.colour import lightness
from tests.courses.content.reading import LISTED, panel_of


def shot(code: str, **other: object) -> np.ndarray:
    """The lightness of a listed picture, or of its panel with something changed."""
    listed = LISTED[code]
    return lightness(Panel.build(replace(panel_of(code), **other), listed.light).shoot(listed.lamps[0]).rgb)


def trail_of(code: str) -> float:
    """How much lighter or darker the machine's trail makes the picture, on the mean."""
    return float(np.abs(shot(code) - shot(code, trail_um=0.0)).mean())


def test_the_oils_hide_the_trail_that_the_wipe_brings_back() -> None:
    assert trail_of("spot_wiped") > 5 * trail_of("spot_oily")


@pytest.mark.parametrize("code", ["spot_diffuse", "spot_point", "spot_raking"])
def test_the_veil_is_on_the_taped_half_alone(code: str) -> None:
    veil = np.abs(shot(code) - shot(code, defects=()))
    half = veil.shape[1] // 2
    left, right = veil[:, : half - 8].mean(), veil[:, half + 8 :].mean()
    assert left > 4 * right


def test_the_strays_stand_on_a_finished_panel() -> None:
    assert np.abs(shot("strays_navy") - shot("strays_navy", tail_um=0.0)).max() > 5


def test_crossed_lines_are_not_those_of_one_way() -> None:
    one, two = shot("lines_one_way"), shot("lines_crossed")
    below = slice(one.shape[0] * 2 // 3, None)
    middle = one.shape[1] * 34 // 100
    beam = slice(middle - 12, middle + 12)
    assert one[below, beam].mean() > 1.2 * two[below, beam].mean(), "under the lamp one band stands, of two none"
