"""Residue of compound."""

import numpy as np
import pytest

from courses.pictures.arrays import blur
from tests.courses.pictures.films import WHOLE, canvas_of, change, film, leak, rms


def test_it_is_white_on_dark_colours_and_lost_on_white() -> None:
    dark, white = (change(film("residue", 0.6, colour), "diffuse") for colour in ("black", "white"))
    assert np.percentile(dark, 99) > 5
    assert rms(white) < 0.25 * rms(dark)


def test_its_smears_follow_the_cloth() -> None:
    level, upright = (
        blur(canvas_of(film("residue", 0.6, "black", WHOLE, direction=turn)).albedo[..., 1], 0.8) for turn in (0, 90)
    )
    assert np.abs(np.diff(level, axis=0)).mean() > 1.3 * np.abs(np.diff(level, axis=1)).mean()
    assert np.abs(np.diff(upright, axis=1)).mean() > 1.3 * np.abs(np.diff(upright, axis=0)).mean()


def test_a_bead_stays_along_an_edge() -> None:
    rows = canvas_of(film("residue", 0.8, "black", WHOLE, size=[480, 320])).albedo[..., 1].mean(1)
    ridge = int(rows.argmax())
    assert 0.6 < ridge / 320 < 0.95
    assert rows[ridge] > 1.5 * np.median(rows)


def test_thick_crumbs_stand_proud_and_have_no_gloss() -> None:
    scene = film("residue", 0.8, "black")
    canvas, clean = canvas_of(scene), canvas_of(film("haze", 0.0, "black"))
    thick = canvas.coat < 0.5
    assert thick.any()
    assert np.abs(canvas.ny - clean.ny)[thick].mean() > 10 * np.abs(canvas.ny - clean.ny)[~thick].mean()


@pytest.mark.parametrize("light", ["diffuse", "point", "raking"])
def test_the_mask_holds_what_changes(light: str) -> None:
    assert leak(film("residue", 0.6, "black"), light) < 0.2


def test_it_grows_with_severity_and_no_polish_takes_it() -> None:
    strength = [rms(change(film("residue", severity, "black"), "diffuse")) for severity in (0.05, 0.4, 0.9)]
    assert strength[0] < strength[1] < strength[2]
    untouched, polished = (canvas_of(film("residue", 0.6, removed_um=um)).albedo.mean() for um in (0.0, 20.0))
    assert polished == pytest.approx(float(untouched), rel=1e-3)
