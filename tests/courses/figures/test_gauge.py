"""The gauge, tested as numbers: places, what it says, and that nothing leaves the drawing."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from courses.figures import Box, GaugeError, gauge
from courses.figures.gauge import HEIGHT, WIDTH

NUMBERS = st.floats(-1000, 1000, allow_nan=False)


def test_the_limit_of_half_the_scale_stands_in_the_middle():
    assert gauge(1.5, 3.0, high=6.0).limit_x == WIDTH / 2


def test_a_value_short_of_a_lower_limit_leaves_a_gap_between_them():
    drawn = gauge(1.5, 3.0, high=6.0)
    assert (drawn.says, drawn.bar, drawn.gap) == ("short", Box(1.0, 27.0, 71.5, 10.0), Box(72.5, 27.0, 71.5, 10.0))


def test_a_value_over_an_upper_limit_leaves_a_gap_between_them():
    drawn = gauge(90, 85, high=100, sense="at_most")
    assert drawn.says == "over"
    assert drawn.gap == Box(drawn.limit_x, 27.0, 258.4 - drawn.limit_x, 10.0)


@pytest.mark.parametrize("sense", ["at_least", "at_most"])
def test_a_value_at_the_limit_keeps_it(sense):
    drawn = gauge(3.0, 3.0, high=6.0, sense=sense)
    assert (drawn.says, drawn.gap) == ("kept", None)


def test_a_value_beyond_the_scale_is_drawn_at_its_end_but_judged_as_it_is():
    drawn = gauge(-4.0, 3.0, high=6.0)
    assert (drawn.says, drawn.bar.width) == ("short", 0.0)


def test_labels_without_words_are_left_out():
    assert gauge(1.0, 2.0, high=3.0).labels == ()


def test_a_label_near_an_edge_is_anchored_there():
    low, high = (gauge(value, 3.0, high=6.0, value_words="5.7 K").labels[0] for value in (0.0, 6.0))
    assert [(label.anchor, label.x) for label in (low, high)] == [("start", 0.0), ("end", WIDTH)]


@given(value=NUMBERS, limit=NUMBERS, low=NUMBERS, span=st.floats(0.1, 1000))
def test_nothing_leaves_the_drawing(value, limit, low, span):
    drawn = gauge(value, limit, low=low, high=low + span, value_words="1.7 K", limit_words="3.0 K")
    boxes = [box for box in (drawn.track, drawn.bar, drawn.gap) if box]
    assert all(box.x >= 0 and box.x + box.width <= WIDTH and box.y + box.height <= HEIGHT for box in boxes)
    assert all(0 <= label.x <= WIDTH and 0 < label.y <= HEIGHT for label in drawn.labels)


@given(value=NUMBERS, limit=NUMBERS)
def test_a_gap_stands_exactly_where_the_limit_is_not_kept(value, limit):
    drawn = gauge(value, limit, low=-1000, high=1000)
    assert (drawn.gap is None) == (value >= limit)


@pytest.mark.parametrize(
    ("value", "high", "sentence"),
    [
        (float("nan"), 6.0, "The value of a gauge is nan; it has to be a finite number."),
        (1.0, 0.0, "The scale of a gauge runs from 0.0 to 0.0; its end has to lie above its start."),
    ],
)
def test_what_cannot_be_drawn_is_refused_with_a_sentence(value, high, sentence):
    with pytest.raises(GaugeError) as refusal:
        gauge(value, 3.0, high=high)
    assert str(refusal.value) == sentence


def test_a_box_is_written_as_a_path_with_one_decimal_at_most():
    assert Box(72.5, 27.0, 71.5, 10.0).path == "M72.5 27h71.5v10h-71.5z"
