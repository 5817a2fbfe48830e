"""A scale holds what it was made for, starts at a round number and keeps its proportions."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from courses.figures.scale import Scale, round_step, scale_from_nothing, torn_scale

UM = st.floats(0.0, 900.0)


@given(one=UM, other=UM)
def test_a_torn_scale_holds_both_ends_over_a_foot_of_its_own(one, other):
    scale = torn_scale(min(one, other), max(one, other))
    assert 0 <= scale.foot <= min(one, other)
    assert scale.top >= max(one, other)
    assert scale.torn == (scale.foot > 0)


@given(one=UM, other=UM)
def test_it_has_few_ticks_each_a_round_number(one, other):
    scale = torn_scale(min(one, other), max(one, other))
    ticks = scale.ticks()
    assert 2 <= len(ticks) <= 9
    assert all(abs(tick / scale.step - round(tick / scale.step)) < 1e-6 for tick in ticks)


@given(value=UM, more=st.floats(0.0, 100.0))
def test_equal_differences_take_equal_room(value, more):
    scale = Scale(200.0, 1200.0, 200.0)
    expected = more / 1000.0 if value >= 200 else max(value + more - 200, 0) / 1000.0
    assert scale.share(value + more) - scale.share(value) == pytest.approx(expected)


def test_what_lies_beyond_stands_at_the_end():
    scale = Scale(200.0, 300.0, 20.0)
    assert (scale.share(10.0), scale.share(900.0)) == (0.0, 1.0)


def test_a_scale_of_nothing_is_still_a_scale():
    assert scale_from_nothing(0.0).share(0.0) == 0.0
    assert torn_scale(0.0, 0.0).ticks()[0] == 0.0


@given(raw=st.floats(0.001, 1000.0))
def test_a_step_is_near_what_was_asked(raw):
    assert 0.5 <= round_step(raw) / raw <= 2.0
