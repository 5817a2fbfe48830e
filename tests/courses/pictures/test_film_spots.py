"""Water spots, proud and etched."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from courses.pictures.arrays import F32
from courses.pictures.film_spots import Rim
from courses.pictures.truth import masks
from tests.courses.pictures.films import PATCH, WHOLE, canvas_of, change, film, leak, plate_of, rms

KINDS = ["water_spots_mineral", "water_spots_etched"]


@given(st.floats(0.1, 2.0), st.floats(0.1, 2.0), st.floats(-3, 5))
def test_the_slope_of_a_rim_is_that_of_its_height(middle: float, width: float, deep: float) -> None:
    step = 1e-3
    here = Rim.of(np.array([deep - step, deep, deep + step], F32), middle, width)
    assert float(here.height[2] - here.height[0]) / (2 * step) == pytest.approx(float(here.slope[1]), abs=0.06 / width)


def test_mineral_is_white_and_dull_in_rings_that_etching_has_not() -> None:
    mineral, etched, clean = (
        canvas_of(film(kind, severity, "black", WHOLE))
        for kind, severity in [(KINDS[0], 0.8), (KINDS[1], 0.8), ("haze", 0.0)]
    )
    white, bare, hollow = (float(np.percentile(canvas.albedo, 99.5)) for canvas in (mineral, clean, etched))
    assert white > 5 * bare
    assert hollow == pytest.approx(bare, rel=1e-3)
    assert etched.coat.min() < 0.9


def test_one_stands_proud_where_the_other_is_a_dish() -> None:
    def lean_inwards(kind: str) -> float:
        """Return how far the slopes of the outer flanks lean away from the spots:
        above 0 for a hill, below for a hollow.
        """
        scene = film(kind, 1.0, box=WHOLE, seed=34)
        plate, canvas = plate_of(scene), canvas_of(scene)
        clean = canvas_of(film(kind, 0.0, box=WHOLE, seed=34))
        x, y, r, hits = *_alone(scene), []
        for cx, cy, radius in zip(x, y, r, strict=True):
            turn = np.linspace(0, 6.28, 24)
            px, py = cx + 1.02 * radius * np.cos(turn), cy + 1.02 * radius * np.sin(turn)
            out = [
                canvas.camera.look_up(canvas.nx - clean.nx, px, py),
                canvas.camera.look_up(canvas.ny - clean.ny, px, py),
            ]
            hits.append(float((out[0] * np.cos(turn) + out[1] * np.sin(turn)).mean()))
        assert plate.whole
        return float(np.mean(hits))

    assert lean_inwards(KINDS[0]) > 0 > lean_inwards(KINDS[1])


def _alone(scene: object) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    """Return large single drops, by middle and radius."""
    from courses.pictures.panel import planned

    blots = planned(scene, scene.defects[0], "point").blots  # type: ignore[attr-defined]
    single = (blots.r[:, 4:] == 0).all(1) & (blots.r[:, 0] > 4.0)
    return blots.x[single, 0], blots.y[single, 0], blots.r[single, 0] * 1.08


def test_the_ring_is_heavier_on_the_low_side() -> None:
    scene = film(KINDS[0], 1.0, "black", WHOLE, size=[960, 640])
    canvas, (x, y, r) = canvas_of(scene), _alone(scene)
    low, high = (canvas.camera.look_up(1 - canvas.coat, x, y + side * 0.97 * r).mean() for side in (1, -1))
    assert low > 1.4 * high


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("light", ["point", "raking"])
def test_the_mask_holds_what_changes_and_nothing_else(kind: str, light: str) -> None:
    scene = film(kind, 0.6, "black")
    assert leak(scene, light) < 0.2
    assert masks(scene, light)[0].mean() < 0.2


@pytest.mark.parametrize("kind", KINDS)
def test_it_grows_with_severity_and_shows_on_black_not_white(kind: str) -> None:
    strength = [rms(change(film(kind, severity, "black"), "raking")) for severity in (0.1, 0.5, 1.0)]
    assert strength[0] < strength[1] < strength[2]
    assert rms(change(film(kind, 0.5, "white"), "diffuse")) < 0.2 * rms(change(film(kind, 0.5, "black"), "point"))


def test_polishing_takes_the_craters_and_leaves_the_salts() -> None:
    bare = canvas_of(film(KINDS[0], 0.0, box=PATCH)).coat.mean()
    salts, craters = (1 - canvas_of(film(kind, 0.6, removed_um=30.0)).coat.mean() for kind in KINDS)
    assert salts > 3 * (1 - bare)
    assert craters == pytest.approx(1 - bare, abs=1e-3)
