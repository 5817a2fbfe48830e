"""Lanes: names that fit, bars that never stand on each other."""

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from courses.figures.lanes import TALL, WIDE, Named, lanes, named

LONG = Named(
    "7\N{NO-BREAK SPACE}Cut with compound at the transom", "wool, heavy, 3 passes, a used pad, the whole of the bow"
)
SOME = st.lists(st.sampled_from([Named("Start"), Named("3 P600", "5 passes"), LONG]), min_size=1, max_size=40)


def test_a_sentence_gives_its_name_up_to_the_first_comma():
    assert named("Sand P1500, 4 passes, hard disc", 5) == Named("5\N{NO-BREAK SPACE}Sand P1500", "4 passes, hard disc")
    assert named("Wash").whole == "Wash"


@given(names=SOME, place=st.sampled_from([WIDE, TALL]), right=st.sampled_from([(0, 0), (11, 15)]))
def test_every_lane_stands_under_the_one_before(names, place, right):
    rows = lanes(names, place, 20.0, right=right)
    assert len(rows) == len(names)
    for one, other in pairwise(rows):
        assert max(one.bar.bottom, *(words.box.bottom for words in one.words)) < other.words[0].box.y


@pytest.mark.parametrize("place", [WIDE, TALL])
def test_a_long_name_keeps_off_the_bar_and_off_what_stands_on_its_right(place):
    (lane,) = lanes([LONG], place, 20.0, right=(11, 15))
    ends = [words.box.right for words in lane.words]
    room = place.bar_x if place.beside else place.width - 88.0
    assert max(ends[0], *ends) <= room


def test_a_lane_ends_under_its_last_line():
    (lane,) = lanes([Named("4 Refine with medium compound", "wool, rotary at 900, 1500, 1650 rpm, 2 sets")], WIDE, 28.0)
    assert lane.foot == lane.words[-1].y > lane.bar.bottom
    assert lanes([Named("Start")], TALL, 20.0)[0].foot == 64.0
