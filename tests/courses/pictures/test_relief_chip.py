"""Chips: craters with a broken outline, a wall in layers and a floor."""

import numpy as np
import pytest

from courses.pictures import masks
from courses.pictures.camera import Camera, stand_for
from courses.pictures.canvas import Canvas
from courses.pictures.relief_chip import CHIP
from tests.courses.pictures.reliefs import SIZE, look, plan, scene


def test_one_big_chip_in_the_middle_and_small_ones_about_it():
    chips = plan(scene("chip", seed=31, severity=0.8))
    first, rest = chips.chips[0], chips.chips[1:]
    x0, y0 = chips.plate.centre
    assert np.hypot(first.x - x0, first.y - y0) < 0.2 * min(chips.plate.half)
    assert rest
    assert max(chip.radius for chip in rest) <= 0.3 * first.radius


def test_the_outline_is_broken_and_not_round():
    chip = plan(scene("chip", seed=32)).chips[0]
    assert chip.outline.std() > 0.06
    turn = np.linspace(0, 2 * np.pi, 50)
    rim = chip.radius * chip.outline[(turn / (2 * np.pi) * 719).astype(int)]
    q = chip.rim(rim * np.cos(turn), rim * np.sin(turn))
    assert np.allclose(q, 1, atol=0.06)


def test_it_falls_from_the_rim_to_the_floor():
    chip = plan(scene("chip", seed=33)).chips[0]
    bed = chip.bed(np.linspace(1.2, 0, 50), np.zeros(50))
    assert (np.diff(bed) >= 0).all()
    assert (bed[0], float(bed[-1])) == (0.0, pytest.approx(chip.depth))


def test_the_wall_leans_to_the_middle():
    of = scene("chip", "grey", seed=34, severity=0.9)
    chip = plan(of).chips[0]
    camera = Camera(stand_for("diffuse", SIZE), SIZE)
    bare, laid = (Canvas(of, "diffuse", camera) for _ in range(2))
    CHIP.lay(plan(of), laid)
    dx, dy = camera.x - chip.x, camera.y - chip.y
    wall = (chip.rim(dx, dy) > 0.75) & (chip.rim(dx, dy) < 0.92)
    out = ((laid.nx - bare.nx) * dx + (laid.ny - bare.ny) * dy)[wall] / np.hypot(dx, dy)[wall]
    assert out.mean() < -0.1


@pytest.mark.parametrize("colour", ["white", "navy"])
def test_a_chip_shows_on_any_colour_and_changes_nothing_else(colour):
    seen = look(scene("chip", colour, seed=35, substrate="clear_coat"), "diffuse")
    assert seen.cnr > 5
    assert seen.leak < 0.2


def test_worse_chips_cover_more():
    areas = [masks(scene("chip", severity=severity, seed=36), "diffuse")[0].sum() for severity in (0.1, 0.5, 1.0)]
    assert areas == sorted(areas)
