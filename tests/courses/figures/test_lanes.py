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


def test_a_long_name_keeps_off_the_bar_beside_it():
    (lane,) = lanes([LONG], WIDE, 20.0)
    assert max(words.box.right for words in lane.words) <= WIDE.bar_x


def test_a_long_name_keeps_off_what_stands_on_its_right_and_goes_on_below():
    (lane,) = lanes([LONG], TALL, 20.0, right=(11, 15))
    first, second, *others = [words.box.right for words in lane.words]
    assert (first <= TALL.width - 88.0, second <= TALL.width - 120.0) == (True, True)
    assert max(others) <= TALL.width
    assert lane.words[-1].y < lane.bar.y


@pytest.mark.parametrize("place", [WIDE, TALL])
@pytest.mark.parametrize(
    "detail", ["wool, rotary at 900, 1500, 1650 rpm, 2 sets, the bow", "soft disc, 6 passes, the bow"]
)
def test_no_word_of_a_plan_is_cut(place, detail):
    (lane,) = lanes([Named("14\N{NO-BREAK SPACE}Refine with medium compound", detail)], place, 28.0, right=(17, 22))
    assert " ".join(words.text for words in lane.words).endswith(f"Refine with medium compound {detail}")


def test_a_lane_ends_under_its_last_line():
    (lane,) = lanes([Named("4 Refine with medium compound", "wool, rotary at 900, 1500, 1650 rpm, 2 sets")], WIDE, 28.0)
    assert lane.foot == lane.words[-1].y > lane.bar.bottom
    assert lanes([Named("Start")], TALL, 20.0)[0].foot == 64.0
