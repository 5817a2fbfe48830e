"""Boxes, words and numbers as every figure uses them."""

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from courses.figures.drawing import (
    CHARACTER,
    Box,
    FigureError,
    Mark,
    Words,
    checked,
    depth,
    fitting,
    hatching,
    one_decimal,
    plain,
    sentences,
    shortage,
    wrapped,
)

NUMBER = re.compile(r"-?\d+(?:\.\d+)?")
SIDES = st.floats(0.0, 300.0)


def test_a_box_is_written_from_its_corner():
    box = Box(72.5, 27.0, 71.5, 10.0)
    assert (box.path, box.right, box.bottom) == ("M72.5 27h71.5v10h-71.5z", 144.0, 37.0)


def test_a_mark_writes_its_own_line_where_it_has_one():
    assert Mark("notch", Box(0.0, 0.0, 1.0, 1.0), "M0 0l1 1").path == "M0 0l1 1"
    assert Mark("film", Box(0.0, 0.0, 1.0, 1.0)).path == "M0 0h1v1h-1z"


@pytest.mark.parametrize(("anchor", "left"), [("start", 100.0), ("mid", 88.0), ("end", 76.0)])
def test_words_take_room_from_where_they_are_anchored(anchor, left):
    assert Words("250", 100.0, 20.0, "tb", anchor).box.x == left


@given(number=st.floats(-1000, 1000))
def test_no_number_is_shown_with_a_minus_and_nothing(number):
    assert one_decimal(number) != "\N{MINUS SIGN}0.0"
    assert plain(number) != "-0"


@pytest.mark.parametrize(("um", "said"), [(0.0, "none"), (0.02, "under 0.1"), (0.06, "0.1"), (7.26, "7.3")])
def test_a_depth_is_never_said_to_be_nothing_where_there_is_one(um, said):
    assert depth(um) == said


@pytest.mark.parametrize("number", [float("nan"), float("inf"), -0.1])
def test_a_number_that_cannot_be_drawn_is_refused_with_its_name(number):
    with pytest.raises(FigureError, match="^The reserve is .*; it has to be a finite number, 0 or more"):
        checked(number, "The reserve")


@given(text=st.text("ab ,", max_size=60), width=st.floats(30.0, 200.0), most=st.integers(1, 3))
def test_wrapped_words_fit_their_lines(text, width, most):
    lines = wrapped(text, width, most)
    assert len(lines) <= most
    assert all(len(line) * CHARACTER <= width for line in lines)


def test_words_that_fit_are_never_cut():
    assert wrapped("Cut with compound", 80.0, 2) == ("Cut with", "compound")
    assert fitting("Cut with", 64.0) == "Cut with"


@given(x=SIDES, y=SIDES, width=SIDES, height=SIDES)
def test_a_hatching_stays_in_its_box(x, y, width, height):
    mark = hatching(Box(x, y, width, height))
    numbers = [float(found) for found in NUMBER.findall(mark.path)]
    assert all(x - 0.1 <= one <= x + width + 0.1 for one in numbers[::2])
    assert all(y - 0.1 <= one <= y + height + 0.1 for one in numbers[1::2])


def test_the_lines_of_a_hatching_lie_on_one_lattice_from_box_to_box():
    left, right = (NUMBER.findall(hatching(Box(x, 0.0, 30.0, 20.0)).path) for x in (0.0, 30.0))
    assert {(float(x) + float(y)) % 10 for x, y in zip(left[::2], left[1::2], strict=True)} == {0.0}
    assert {(float(x) + float(y)) % 10 for x, y in zip(right[::2], right[1::2], strict=True)} == {0.0}


def test_what_is_missing_is_tinted_and_hatched():
    assert [mark.look for mark in shortage(Box(0.0, 0.0, 30.0, 20.0))] == ["short", "hatch"]


def test_a_sentence_that_says_nothing_is_left_out():
    assert sentences(["One.", "", "Two."]) == "One. Two."
