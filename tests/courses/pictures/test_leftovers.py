"""What a correction leaves behind."""

import numpy as np
import pytest

from courses.pictures import Panel
from courses.pictures.colour import lightness
from tests.courses.pictures.panels import SMALL, scene

LIT = slice(40, 110)


def marks(**more: float) -> float:
    return float(Panel.build(scene(size=SMALL, **more), "point").canvas.grooves.cover.sum())


def test_a_clean_job_leaves_nothing() -> None:
    assert marks(removed_um=2) == pytest.approx(marks(removed_um=0), rel=0.3)


@pytest.mark.parametrize("key", ["trail_um", "tail_um"])
def test_deeper_leftovers_are_more(key: str) -> None:
    found = [marks(**{key: depth}) for depth in (0, 0.1, 0.4)]
    assert found[0] < found[1] < found[2]


def test_the_cut_that_left_them_does_not_take_them_off() -> None:
    assert marks(trail_um=0.3, removed_um=5) == pytest.approx(marks(trail_um=0.3), rel=0.3)


def test_they_lie_where_film_was_taken_off() -> None:
    plain, left = (
        Panel.build(scene(removed_um=3, removed_right_of=0.5, trail_um=depth), "point").shoot() for depth in (0, 0.4)
    )
    by = np.abs(lightness(left.rgb) - lightness(plain.rgb))
    assert by[LIT, 140:].mean() > 4 * by[LIT, :100].mean()
    assert marks(trail_um=0.4, removed_right_of=1.0) == marks(removed_right_of=1.0)
