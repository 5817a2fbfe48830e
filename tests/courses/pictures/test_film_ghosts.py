"""Ghosts of lettering."""

import numpy as np
import pytest

from courses.pictures.arrays import grown
from courses.pictures.colour import to_linear
from courses.pictures.measure import contrast_of
from courses.pictures.truth import cell_shares, masks
from tests.courses.pictures.films import WHOLE, canvas_of, change, film, leak, rms, shown


def test_the_letters_kept_the_colour_and_gloss_the_field_lost() -> None:
    scene = film("decal_ghost", 0.7, "red", WHOLE)
    canvas, letters = canvas_of(scene), masks(scene, "point")[0]
    core, field = ~grown(~letters, 2), ~grown(letters, 4)
    green = float(to_linear(scene.rgb)[1])
    faded = float(canvas.albedo[field, 1].mean())
    assert float(canvas.albedo[core, 1].mean()) == pytest.approx(green, abs=0.35 * (faded - green))
    assert canvas.coat[core].mean() > 0.9 > canvas.coat[field].mean() + 0.1


def test_the_field_stays_weathered_where_the_letters_are_left_out() -> None:
    scene = film("decal_ghost", 0.7, "navy", WHOLE)
    clean = shown(film("haze", 0.0, "navy", WHOLE), "point")
    assert (shown(scene, "point", without=True) - clean)[100:, :60].mean() > 3


@pytest.mark.parametrize("light", ["diffuse", "point", "raking"])
def test_the_mask_is_the_letters_and_holds_what_changes(light: str) -> None:
    scene = film("decal_ghost", 0.6, "navy")
    assert 0.01 < masks(scene, light)[0].mean() < 0.2
    assert leak(scene, light) < 0.2


@pytest.mark.parametrize("colour", ["silver", "red"])
def test_soft_light_shows_it_best(colour: str) -> None:
    scene, stands_out = film("decal_ghost", 0.5, colour), {}
    for light in ("diffuse", "point", "raking"):
        mask = masks(scene, light)[0]
        stands_out[light] = contrast_of(shown(scene, light), shown(scene, light, True), mask)[0]
    assert stands_out["diffuse"] > 15
    assert max(stands_out, key=stands_out.__getitem__) == "diffuse"


def test_it_grows_with_severity() -> None:
    strength = [rms(change(film("decal_ghost", severity, "navy"), "diffuse")) for severity in (0.1, 0.4, 0.8)]
    assert strength[0] < strength[1] < strength[2]


def test_the_step_is_felt_and_goes_when_it_is_cut_level() -> None:
    def steepest(removed: float) -> float:
        bare, ghost = (canvas_of(film("decal_ghost", severity, removed_um=removed)) for severity in (0.0, 1.0))
        return float(np.abs(ghost.ny - bare.ny).max())

    assert steepest(0.0) > 0.003
    assert steepest(16.0) < 0.1 * steepest(0.0)


def test_weather_of_the_scene_s_own_takes_the_place_of_the_ghost_s() -> None:
    ghost = {"kind": "decal_ghost", "severity": 0.6, "region": {"box": list(WHOLE)}}
    faint = {"kind": "oxidation", "severity": 0.05, "region": {"box": list(WHOLE)}}
    alone, beside = (canvas_of(film("haze", defects=listed)) for listed in ([ghost], [faint, ghost]))
    assert beside.coat.mean() > alone.coat.mean() + 0.1


def test_cells_come_from_the_letters() -> None:
    shares = cell_shares(film("decal_ghost", 0.6, box=(0.0, 0.0, 0.5, 0.5)), "diffuse")[0]
    assert sum(share for cell, share in shares.items() if cell[0] in "AB" and cell[1] in "123") > 0.3
    assert sum(share for cell, share in shares.items() if cell[0] in "CD" or cell[1] in "56") == 0
