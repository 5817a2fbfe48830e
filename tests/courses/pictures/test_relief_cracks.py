"""Cracks: dark lines that a white panel shows and a black one hides, at a place the region decides."""

import numpy as np
import pytest

from courses.pictures import cell_shares, masks, required_and_allowed
from tests.courses.pictures.reliefs import look, plan, scene

KINDS = ("crack_star", "crack_ring", "crack_parallel")
FOUR_CELLS = (0.33, 0.28, 0.64, 0.72)


@pytest.mark.parametrize("kind", KINDS)
def test_a_crack_is_dark_on_white_in_soft_light_and_shows_far_less_on_black(kind):
    white, black = (look(scene(kind, colour, seed=61), "diffuse") for colour in ("white", "black"))
    assert np.percentile(white.change[white.mask], 20) < -2
    assert white.change[white.mask].mean() < 0
    assert white.cnr > 2 * black.cnr
    assert white.cnr > 5


@pytest.mark.parametrize("kind", KINDS)
def test_the_mask_holds_what_changed(kind):
    assert look(scene(kind, seed=62), "diffuse").leak < 0.2


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("number", range(70, 76))
def test_a_crack_lies_in_as_many_cells_as_its_region(kind, number):
    shares = cell_shares(scene(kind, box=FOUR_CELLS, seed=number), "diffuse")
    required, allowed = required_and_allowed(shares, (True,))
    assert 2 <= len(required) <= 4
    assert set(required) <= {"B3", "B4", "C3", "C4"}
    assert set(required) < set(allowed)


def test_a_star_has_its_middle_where_the_region_has_it():
    lines = plan(scene("crack_star", seed=63)).lines
    x0, y0 = plan(scene("crack_star", seed=63)).plate.centre
    assert sum(np.hypot(line.x[0] - x0, line.y[0] - y0) < 4 for line in lines) >= 5


@pytest.mark.parametrize("direction", [0.0, 30.0, 90.0])
def test_parallel_cracks_run_the_way_they_are_told(direction):
    lines = plan(scene("crack_parallel", seed=64, direction=direction)).lines
    long = [line for line in lines if np.hypot(np.ptp(line.x), np.ptp(line.y)) > 25]
    turns = [np.arctan2(-(line.y[-1] - line.y[0]), line.x[-1] - line.x[0]) for line in long]
    off = np.angle(np.mean(np.exp(2j * (np.array(turns) - np.radians(direction))))) / 2
    assert abs(np.degrees(off)) < 8


@pytest.mark.parametrize("kind", KINDS)
def test_worse_cracks_cover_more(kind):
    areas = [masks(scene(kind, severity=severity, seed=65), "diffuse")[0].sum() for severity in (0.1, 0.5, 1.0)]
    assert areas[0] < areas[2]
    cnr = [look(scene(kind, severity=severity, seed=65), "diffuse").cnr for severity in (0.1, 0.5, 1.0)]
    assert cnr == sorted(cnr)


@pytest.mark.parametrize("kind", KINDS)
def test_a_tiny_region_holds_a_tiny_crack(kind):
    tiny = scene(kind, box=(0.5, 0.5, 0.505, 0.505))
    assert masks(tiny, "diffuse")[0].mean() < 0.001
