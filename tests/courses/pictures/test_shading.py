"""Light on a surface: what lies below the coat, what the coat mirrors, what the marks throw."""

from itertools import pairwise

import numpy as np
import pytest

from courses.pictures.arrays import F32, Floats
from courses.pictures.camera import Camera, stand_for
from courses.pictures.canvas import Canvas
from courses.pictures.lamps import lamp_for
from courses.pictures.shading import bands, lit, still
from tests.courses.pictures.panels import SMALL, scene


def canvas(light: str = "point", **more: object) -> Canvas:
    return Canvas(scene(**more), light, Camera(stand_for(light, SMALL), SMALL))


def radiance(surface: Canvas, at: tuple[float, float] = (0.5, 0.42)) -> Floats:
    room = still(surface)
    if surface.light == "diffuse":
        return lit(surface, room, None)
    return lit(surface, room, lamp_for(surface.scene, surface.light, surface.camera.stand, at))


def peak(surface: Canvas) -> float:
    return float(radiance(surface).max())


def test_rows_are_cut_into_bands_without_gap() -> None:
    rows = [row for band in bands(150) for row in range(band.start, band.stop)]
    assert rows == list(range(150))


def test_the_lamp_peak_falls_as_the_gloss_goes() -> None:
    peaks = []
    for alpha in (0.0, 0.01, 0.03, 0.08, 0.2):
        surface = canvas()
        surface.roughen(alpha)
        peaks.append(peak(surface))
    assert all(later < earlier for earlier, later in pairwise(peaks))
    assert peaks[-1] < 0.02 * peaks[0]


def test_colour_comes_from_below_the_coat() -> None:
    red = radiance(canvas(colour="red"))
    assert np.median(red[..., 0]) > 4 * np.median(red[..., 2])


def test_what_swallows_light_is_dark_in_every_light() -> None:
    for light in ("diffuse", "point"):
        surface = canvas(light, colour="white")
        surface.dark[:, :120] = 0.9
        seen = radiance(surface).mean(axis=2)
        assert np.median(seen[:, :120]) < 0.3 * np.median(seen[:, 120:])


def test_marks_in_all_directions_make_a_fog_that_falls_away_from_the_lamp() -> None:
    clean, fogged = canvas(), canvas()
    fogged.fogged(0.06, 0.2, np.ones(fogged.alpha.shape, F32))
    added = (radiance(fogged) - radiance(clean)).mean(axis=2)
    near, far = added[62:72, 100:112].mean(), added[62:72, 4:16].mean()
    assert near > 3 * far > 0


def test_marks_are_not_nothing_under_an_open_sky() -> None:
    clean, marked = canvas("diffuse"), canvas("diffuse")
    marked.grooves.cover += F32(0.02)
    by = np.abs(radiance(marked) - radiance(clean)).mean() / radiance(clean).mean()
    assert 1e-4 < by < 0.05


def test_a_film_colours_what_is_mirrored() -> None:
    surface = canvas("diffuse")
    ones = np.ones(surface.alpha.shape, F32)
    surface.film(0.25 * ones, ones)
    plain, coloured = radiance(canvas("diffuse")), radiance(surface)
    ratio = (coloured / plain)[100:140, 20:100].mean((0, 1))
    assert np.ptp(ratio) > 0.05


def test_flakes_glitter() -> None:
    rough = [np.abs(np.diff(radiance(canvas(colour=name)).mean(axis=2))).mean() for name in ("silver", "#b4b8bc")]
    assert rough[0] > 1.5 * rough[1]


def test_a_twin_under_another_lamp_shares_its_room() -> None:
    surface = canvas()
    room = still(surface)
    before = room.below.copy()
    lit(surface, room, lamp_for(surface.scene, "point", surface.camera.stand, (0.2, 0.2)))
    assert room.below == pytest.approx(before)
