"""Runs: a curtain with drips that fall down the picture and end in a fat tear."""

import numpy as np
import pytest

from courses.pictures import masks
from courses.pictures.camera import Camera, stand_for
from courses.pictures.canvas import Canvas
from courses.pictures.relief_run import RUN
from tests.courses.pictures.reliefs import SIZE, look, plan, scene


def test_drips_hang_from_the_curtain_and_end_in_the_region():
    run = plan(scene("run", seed=11))
    _, low = run.plate.at(0.5, 1.0)
    assert len(run.drips) >= 3
    assert {drip.top for drip in run.drips} == {run.line[2]}
    assert all(drip.top + drip.length < low for drip in run.drips)
    assert max(drip.length for drip in run.drips) > 1.3 * min(drip.length for drip in run.drips)


def test_the_tear_is_fatter_and_wider_than_the_drip_above_it():
    drip = plan(scene("run", seed=12)).drips[0]
    across = np.linspace(-2 * drip.half, 2 * drip.half, 201)
    middle, tear = (drip.height(across, np.full(201, down)) for down in (0.5, 0.9))
    assert tear.max() > 1.5 * middle.max()
    assert (tear > 1).sum() > (middle > 1).sum()
    assert drip.height(across, np.full(201, 1.05)).max() == 0


def test_it_stands_proud_by_what_the_trade_says():
    """20 to 200 micrometres [common practice, no source]; a tear is fatter than its drip."""
    heights = [plan(scene("run", severity=severity, seed=13)).height_um for severity in (0.0, 0.5, 1.0)]
    assert heights == [20.0, 80.0, 200.0]


def test_only_the_shape_changes():
    of = scene("run", "black", seed=14)
    camera = Camera(stand_for("diffuse", SIZE), SIZE)
    bare, laid = (Canvas(of, "diffuse", camera) for _ in range(2))
    RUN.lay(plan(of), laid)
    assert np.array_equal(bare.albedo, laid.albedo)
    assert np.array_equal(bare.coat, laid.coat)
    assert np.abs(laid.nx - bare.nx).max() > 0.02


@pytest.mark.parametrize("colour", ["black", "navy"])
def test_a_dark_panel_shows_it_in_soft_light_and_nothing_else_changes(colour):
    seen = look(scene("run", colour, severity=0.8, seed=15), "diffuse")
    assert seen.cnr > 5
    assert seen.leak < 0.2


def test_worse_runs_cover_more():
    areas = [masks(scene("run", severity=severity, seed=16), "diffuse")[0].sum() for severity in (0.0, 0.5, 1.0)]
    assert areas[0] < areas[2]
