"""Scum at the waterline."""

import numpy as np
import pytest

from courses.pictures.measure import contrast_of
from courses.pictures.truth import cell_shares, masks
from tests.courses.pictures.films import canvas_of, change, film, leak, rms, shown

BAND = (0.0, 0.3, 1.0, 0.7)


def contrast(colour: str) -> float:
    """Return how far scum stands out of the texture in soft light."""
    scene = film("scum_line", 0.4, colour, BAND)
    return contrast_of(shown(scene, "diffuse"), shown(scene, "diffuse", True), masks(scene, "diffuse")[0])[0]


def test_it_stands_out_far_more_on_white_than_on_dark_colours() -> None:
    white = contrast("white")
    assert white > 2 * contrast("navy")
    assert white > 1.7 * contrast("black")


def test_it_darkens_white_and_takes_blue_first() -> None:
    scene = film("scum_line", 0.6, "white", BAND)
    assert change(scene, "diffuse")[masks(scene, "diffuse")[0]].mean() < -1
    clean, dirty = canvas_of(film("scum_line", 0.0, "white", BAND)).albedo, canvas_of(scene).albedo
    red, _green, blue = (dirty / clean)[70:90].mean((0, 1))
    assert blue < red - 0.1


def test_its_lines_lie_level_with_the_water() -> None:
    band = canvas_of(film("scum_line", 0.6, "white", BAND)).albedo[50:110, :, 1]
    assert band.mean(1).std() > 4 * band.mean(0).std()


def test_its_upper_edge_is_crisp_and_its_lower_edge_is_not() -> None:
    level = canvas_of(film("scum_line", 0.6, "white", BAND)).albedo[..., 2].mean(1)
    fall = np.diff(level)
    assert -fall[:70].min() > 1.5 * fall[85:].max()


def test_cells_above_and_below_the_band_are_free() -> None:
    shares = cell_shares(film("scum_line", 0.6, "white", BAND), "diffuse")[0]
    assert all(shares[f"{row}{column}"] > 0.2 for row in "B" for column in range(2, 6))
    assert all(shares[f"A{column}"] < 0.03 for column in range(1, 7))


@pytest.mark.parametrize("light", ["diffuse", "point", "raking"])
def test_the_mask_holds_what_changes(light: str) -> None:
    assert leak(film("scum_line", 0.5, "white"), light) < 0.2


def test_it_grows_with_severity_and_no_polish_is_asked() -> None:
    strength = [rms(change(film("scum_line", severity, "white"), "diffuse")) for severity in (0.05, 0.3, 0.9)]
    assert strength[0] < strength[1] < strength[2]
    untouched, polished = (
        canvas_of(film("scum_line", 0.6, "white", removed_um=um)).albedo.mean() for um in (0.0, 20.0)
    )
    assert polished == pytest.approx(float(untouched), rel=1e-3)
