"""What lies under the film: in order, and never brighter than paint."""

import numpy as np
import pytest

from courses.pictures.arrays import F32
from courses.pictures.camera import Camera, stand_for
from courses.pictures.canvas import Canvas
from courses.pictures.colour import LUMA
from courses.pictures.layers import BARE, Beneath
from courses.pictures.plate import Plate
from tests.courses.pictures.reliefs import SIZE, scene

WHOLE = (slice(None), slice(None))


def opened(substrate: str, colour: str, depth: float) -> Canvas:
    """Return a canvas whose whole film is open to a depth."""
    of = scene("chip", colour, substrate=substrate)
    canvas = Canvas(of, "diffuse", Camera(stand_for("diffuse", SIZE), SIZE))
    Beneath(Plate(of, of.defects[0], "diffuse")).open_to(canvas, np.full(canvas.coat.shape, depth, F32), WHOLE)
    return canvas


@pytest.mark.parametrize("substrate", ["gel_coat", "clear_coat", "topcoat_2k"])
def test_film_that_is_hardly_thinned_looks_as_before(substrate):
    thin, sound = opened(substrate, "red", 0.05), opened(substrate, "red", 0.0)
    assert np.abs(thin.albedo - sound.albedo).max() < 0.01
    assert thin.coat.min() > 0.97


@pytest.mark.parametrize("substrate", ["gel_coat", "clear_coat", "topcoat_2k"])
def test_bare_layers_have_lost_the_mirror(substrate):
    assert opened(substrate, "red", BARE + 0.6).coat.mean() < 0.3


def test_a_clear_coat_keeps_its_colour_until_the_base_is_gone():
    base, primer, metal = (opened("clear_coat", "red", depth).albedo.mean((0, 1)) for depth in (1.15, 1.7, 2.6))
    assert base[0] > 3 * base[1]
    assert np.ptp(primer) < 0.1 * primer.mean()
    assert np.ptp(metal) < 0.1 * metal.mean()


def test_gel_coat_takes_on_the_tone_of_the_laminate_before_it_is_through():
    shades = [float((opened("gel_coat", "white", depth).albedo @ LUMA).mean()) for depth in (0.0, 0.7, 0.95, 1.4)]
    assert shades == sorted(shades, reverse=True)
    glass = opened("gel_coat", "white", 1.6).albedo @ LUMA
    assert glass.std() > 0.02, "no glass to be seen"
