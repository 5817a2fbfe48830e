"""A clean panel, and what kinds change on it."""

import numpy as np
import pytest

from courses.pictures.arrays import F32
from courses.pictures.camera import Camera, stand_for
from courses.pictures.canvas import Canvas
from courses.pictures.colour import to_linear
from tests.courses.pictures.panels import SMALL, scene


def canvas(**more: object) -> Canvas:
    return Canvas(scene(**more), "point", Camera(stand_for("point", SMALL), SMALL))


def test_a_clean_panel_has_its_colour_and_its_gloss() -> None:
    clean = canvas(colour="red", substrate="gel_coat")
    assert clean.albedo.mean((0, 1)) == pytest.approx(to_linear(clean.scene.rgb), rel=0.02)
    assert (clean.alpha.mean(), clean.coat.mean(), clean.dark.max()) == (pytest.approx(0.008), 1, 0)


def test_a_gentle_panel_is_bent_more_than_a_flat_one() -> None:
    flat, bent = canvas(), canvas(curve="gentle")
    assert np.ptp(bent.nx) > 3 * np.ptp(flat.nx)
    assert (np.ptp(bent.ny), bent.nx[:, 0].mean() < 0) == (pytest.approx(376 / 850, rel=0.2), True)


def test_film_is_taken_off_on_the_right_of_the_tape_only() -> None:
    cut = canvas(removed_um=4, removed_right_of=0.5)
    assert (cut.removed_um[:, :115].max(), cut.removed_um[:, 125:].min()) == (0, 4)
    assert cut.left(8.0)[:, 125:] == pytest.approx(np.full((160, 115), 0.5))
    assert cut.left(2.0)[:, 125:].max() == 0
    assert canvas().left(0.0).min() == 1


def test_roughness_adds_in_squares() -> None:
    clean = canvas()
    clean.roughen(0.05)
    clean.roughen(np.full(clean.alpha.shape, 0.12, F32))
    assert clean.alpha.mean() == pytest.approx(np.sqrt(0.0042**2 + 0.05**2 + 0.12**2), rel=1e-4)


def test_a_stain_takes_its_density_and_a_cover_replaces() -> None:
    clean = canvas(colour="white")
    before = clean.albedo.copy()
    ones = np.ones(clean.alpha.shape, F32)
    clean.stain((0.0, 0.5, 2.0), ones)
    assert (clean.albedo / before).mean((0, 1)) == pytest.approx(np.exp([0, -0.5, -2.0]), rel=2e-3)
    clean.cover((0.1, 0.2, 0.3), ones)
    assert clean.albedo[5, 5] == pytest.approx([0.1, 0.2, 0.3])


def test_a_hill_leans_away_from_its_top() -> None:
    clean = canvas()
    nx, ny = clean.nx.copy(), clean.ny.copy()
    x, y = clean.camera.x - 300, clean.camera.y - 200
    clean.raise_um(1000 * np.exp(-(x * x + y * y) / (2 * 40**2)))
    top = np.exp(-(x * x + y * y) / (2 * 40**2)) / 40**2
    assert (clean.nx - nx)[5:-5, 5:-5] == pytest.approx((x * top)[5:-5, 5:-5], abs=1e-3)
    assert (clean.ny - ny)[5:-5, 5:-5] == pytest.approx((y * top)[5:-5, 5:-5], abs=1e-3)


def test_oil_hides_most_of_what_fogs() -> None:
    plain, oiled = canvas(), canvas(oils=True)
    for one in (plain, oiled):
        one.fogged(0.05, 0.2, np.ones(one.alpha.shape, F32))
    assert 0 < oiled.fog.mean() < 0.1 * plain.fog.mean()


def test_only_silver_paint_has_flakes() -> None:
    silver = canvas(colour="silver").flake
    assert silver is not None
    assert (silver.shape, float(silver[0].std())) == ((3, 160, 240), pytest.approx(0.16, rel=0.02))
    assert canvas().flake is None
    assert canvas(colour="silver", substrate="gel_coat").flake is None


def test_wear_is_faint() -> None:
    clean = canvas()
    clean.wear()
    assert 0 < len(clean.grooves) < 1000
    assert clean.grooves.cover.mean() < 2e-3
