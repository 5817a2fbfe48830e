"""Letters of our own drawing."""

import numpy as np
import pytest

from courses.pictures.camera import Camera, stand_for
from courses.pictures.lettering import GLYPHS, Lettering, lettered
from courses.pictures.turned import Turned, turned
from tests.courses.pictures.films import chance, film, plate_of


def sign(code: str) -> Lettering:
    """Return one sign, 60 mm high, in the middle of the panel."""
    for seed in range(400):
        found = lettered(chance(seed), Turned(300.0, 200.0, 0.0, 200.0, 45.0), 2.0)
        if code in found.text:
            return found
    raise AssertionError(code)


def test_every_sign_fills_its_field_and_no_two_are_alike() -> None:
    for strokes in GLYPHS.values():
        corners = [tuple(map(float, corner.split(","))) for corner in strokes.replace(" / ", " ").split()]
        x, y = zip(*corners, strict=True)
        assert 0 <= min(x) < max(x) <= 4
        assert (min(y), max(y)) == (0, 6)
    assert len(set(GLYPHS.values())) == len(GLYPHS)


@pytest.mark.parametrize("code", ["L", "A", "7"])
def test_a_sign_can_be_drawn(code: str) -> None:
    assert code in sign(code).text


def test_the_same_scene_reads_the_same_in_every_light() -> None:
    texts = set()
    for light in ("diffuse", "point", "raking"):
        axes = turned(plate_of(film("decal_ghost"), light))
        texts.add(lettered(chance(), axes, 1.5).text)
    assert len(texts) == 1


def test_strokes_are_as_deep_as_half_their_width_and_cut_square() -> None:
    bar = Lettering("-", *(np.array([at]) for at in (250.0, 200.0, 350.0, 200.0)), 10.0, *[np.array([True])] * 2)
    camera = Camera(stand_for("point", (240, 160)), (240, 160))
    inside = bar.inside(camera, 6.0)
    assert 8.5 < inside.max() <= 10
    x = camera.x[inside > 0]
    assert (x.min(), x.max()) == pytest.approx((240, 360), abs=3)
    corner = (np.abs(camera.x - 356) < 2) & (np.abs(camera.y - 193) < 2)
    assert (inside[corner] > 0).all()
    assert inside.min() == -6


def test_more_room_along_means_more_signs() -> None:
    axes = Turned(300.0, 200.0, 0.0, 200.0, 60.0)
    assert len(lettered(chance(), axes, 1.0).text) < len(lettered(chance(), axes, 4.0).text)
