"""Blisters: domes of many sizes, apart from one another, that bend what the panel mirrors."""

import numpy as np
import pytest

from courses.pictures import masks
from courses.pictures.camera import Camera, stand_for
from courses.pictures.canvas import Canvas
from courses.pictures.relief_blisters import BLISTERS
from tests.courses.pictures.reliefs import SIZE, look, plan, scene


def test_sizes_run_from_pinheads_to_coins_and_crowd():
    domes = plan(scene("blisters", seed=51, box=(0, 0, 1, 1)))
    assert domes.radius.min() < 1.5
    assert 9 < domes.radius.max() <= 20
    far = np.hypot(domes.x[:, None] - domes.x, domes.y[:, None] - domes.y) + 1e9 * np.eye(domes.x.size)
    crowd = np.histogram2d(domes.x, domes.y, bins=(9, 6))[0]
    assert crowd.var() > 1.5 * crowd.mean(), "spread as evenly as chance would"
    assert (far > 0.9 * (domes.radius[:, None] + domes.radius)).all()


def test_few_are_broken_and_most_stand():
    broken = np.concatenate([plan(scene("blisters", seed=number)).broken > 0 for number in range(30, 40)])
    assert 0.005 < broken.mean() < 0.2


def test_a_dome_leans_outwards_all_round_and_is_level_on_its_top():
    of = scene("blisters", "grey", seed=52)
    domes = plan(of)
    camera = Camera(stand_for("diffuse", SIZE), SIZE)
    bare, laid = (Canvas(of, "diffuse", camera) for _ in range(2))
    BLISTERS.lay(domes, laid)
    nx, ny = laid.nx - bare.nx, laid.ny - bare.ny
    big = int(np.argmax(np.where(domes.broken > 0, 0, domes.radius)))
    dx, dy = camera.x - domes.x[big], camera.y - domes.y[big]
    away = np.hypot(dx, dy) / domes.radius[big]
    flank = (away > 0.5) & (away < 0.8)
    out = (nx * dx + ny * dy)[flank] / np.hypot(dx, dy)[flank]
    assert (out > 0).mean() > 0.95
    assert out.mean() > 0.08
    assert np.hypot(nx, ny)[away < 0.12].mean() < 0.4 * out.mean()


def test_domes_break_up_the_image_of_the_lamp():
    """A smooth panel has one image of the lamp; each dome near it shows another, and each is small."""
    seen = look(scene("blisters", "navy", severity=0.8, seed=53), "point")
    peaks = [count_spots(lightness > 90) for lightness in (seen.bare, seen.shown)]
    assert peaks[0] <= 2
    assert peaks[1] >= peaks[0] + 4


def count_spots(bright: np.ndarray) -> int:
    """Return how many separate bright spots there are."""
    left, spots = {(int(y), int(x)) for y, x in zip(*np.nonzero(bright), strict=True)}, 0
    while left:
        spots += 1
        edge = [left.pop()]
        while edge:
            y, x = edge.pop()
            near = {(y + i, x + j) for i in (-1, 0, 1) for j in (-1, 0, 1)} & left
            left -= near
            edge.extend(near)
    return spots


@pytest.mark.parametrize("light", ["raking", "diffuse"])
def test_the_mask_holds_what_changed(light):
    assert look(scene("blisters", "grey", seed=54), light).leak < 0.2


def test_raking_light_shows_them_on_white_better_than_soft_light():
    raking, soft = (look(scene("blisters", seed=55), light) for light in ("raking", "diffuse"))
    assert raking.cnr > 5
    assert raking.cnr > 1.3 * soft.cnr


def test_worse_blisters_cover_more():
    areas = [masks(scene("blisters", severity=severity, seed=56), "diffuse")[0].sum() for severity in (0.1, 0.5, 1.0)]
    assert areas == sorted(areas)
