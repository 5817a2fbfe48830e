"""Notches as deep as the marks, inside the film; torn edges along all of it."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from courses.figures.drawing import Box
from courses.figures.film_marks import OVER, notch_depths, notches_down, notches_left, tear_across, tear_down, tops

FILM = Box(46.0, 100.0, 118.0, 80.0)
MARKS = st.lists(st.floats(0.0, 400.0), max_size=10)


@given(marks=MARKS, count=st.integers(1, 8))
def test_the_deepest_mark_is_cut_at_its_full_depth_and_nothing_is_deeper(marks, count):
    depths = notch_depths(marks, count)
    assert max(depths, default=0.0) == max(marks, default=0.0)
    assert len(depths) == (count if any(marks) else 0)


@given(depths=st.lists(st.floats(0.0, 400.0), min_size=1, max_size=8))
def test_no_notch_leaves_the_film_but_to_open_its_edge(depths):
    for mark in notches_down(FILM, depths):
        assert mark.box.y == pytest.approx(FILM.y - OVER)
        assert mark.box.bottom <= FILM.bottom + 0.01
        assert FILM.x <= mark.box.x < mark.box.right <= FILM.right
    for mark in notches_left(FILM, depths):
        assert mark.box.right == pytest.approx(FILM.right + OVER)
        assert mark.box.x >= FILM.x - 0.01
        assert FILM.y <= mark.box.y < mark.box.bottom <= FILM.bottom


def test_a_notch_has_the_depth_of_its_mark():
    (mark,) = notches_down(FILM, [20.0])
    assert mark.box.height == 20.0 + OVER
    (mark,) = notches_left(FILM, [20.0])
    assert mark.box.width == 20.0 + OVER


def test_a_mark_too_fine_to_be_seen_is_not_drawn():
    assert notches_down(FILM, [0.5]) == notches_left(FILM, [0.5]) == ()


@pytest.mark.parametrize("width", [24.0, 100.0, 118.0])
def test_teeth_fill_the_edge(width):
    across = tear_across(Box(0.0, 0.0, width, 50.0)).path
    assert across.count("-5") == round(width / 12)
    down = tear_down(Box(0.0, 0.0, 50.0, width)).path
    assert down.count("-5") == round(width / 12)


def test_parts_stand_one_under_the_other():
    assert tops([10.0, 20.0, 5.0], 5.0, 2.0) == (5.0, 17.0, 39.0)
