"""Orange peel: slope alone. It shows where the mirror has an edge, and more on dark colours."""

import numpy as np
import pytest

from courses.pictures.camera import Camera, stand_for
from courses.pictures.canvas import Canvas
from courses.pictures.relief_orange_peel import ORANGE_PEEL
from tests.courses.pictures.reliefs import SIZE, look, plan, scene

CLEAR = {"substrate": "clear_coat"}


def laid(severity: float) -> tuple[Canvas, Canvas]:
    """Return a canvas without and with orange peel."""
    of = scene("orange_peel", severity=severity, seed=21, **CLEAR)
    camera = Camera(stand_for("diffuse", SIZE), SIZE)
    bare, peel = Canvas(of, "diffuse", camera), Canvas(of, "diffuse", camera)
    ORANGE_PEEL.lay(plan(of), peel)
    return bare, peel


def test_nothing_but_slope_changes():
    bare, peel = laid(0.7)
    for name in ("albedo", "alpha", "coat", "halo", "dark"):
        assert np.array_equal(getattr(bare, name), getattr(peel, name))
    assert not len(peel.grooves)
    assert np.array_equal(bare.nx[0], peel.nx[0]), "outside its region"


def test_slopes_rise_with_severity():
    rms = [float(np.std((peel.nx - bare.nx)[80:120, 120:180])) for bare, peel in (laid(s) for s in (0.2, 0.6, 1.0))]
    assert rms == sorted(rms)
    assert 0.001 < rms[0] < rms[2] < 0.02


def test_it_shows_more_on_dark_colours():
    """As printed of real panels: Konieczny and Meyer 2012."""
    black, white = (look(scene("orange_peel", colour, seed=22, **CLEAR), "diffuse") for colour in ("black", "white"))
    assert black.cnr > 1.5 * white.cnr


@pytest.mark.parametrize("light", ["diffuse", "raking"])
def test_it_stays_in_its_region(light):
    assert look(scene("orange_peel", "black", severity=0.9, seed=23, **CLEAR), light).leak < 0.2


def test_the_edge_of_a_mirrored_lamp_wobbles():
    """Its outline grows, though it stays as sharp: more pixels lie on the edge between lit and dark."""
    seen = look(scene("orange_peel", "black", severity=0.9, seed=24, **CLEAR), "point")

    def outline(lightness: np.ndarray) -> int:
        lit = lightness > 60
        return int((lit[1:] != lit[:-1]).sum() + (lit[:, 1:] != lit[:, :-1]).sum())

    assert outline(seen.shown) > 1.3 * outline(seen.bare)
