"""Readings asked for: in the order asked, never given back."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assessments.answers.ask import joined, parse
from assessments.answers.errors import AnswerRefused, UnknownOption
from courses.trade.units import Preferences
from tests.assessments.answers.listing import ASK

METRIC = Preferences.metric()
asked = st.lists(st.sampled_from(ASK.option_ids))


@given(asked)
def test_the_order_asked_is_kept_and_each_counts_once(ids: list[str]) -> None:
    assert parse(ASK, ids, METRIC) == list(dict.fromkeys(ids))


@given(asked, asked)
def test_what_was_asked_before_stays_in_front(before: list[str], now: list[str]) -> None:
    kept = joined(before, now)
    first = list(dict.fromkeys(before))
    assert kept[: len(first)] == first
    assert set(kept) == {*before, *now}


def test_a_reading_that_isnt_for_sale_is_refused() -> None:
    with pytest.raises(UnknownOption, match="'pres' is no option here; did you mean press?"):
        parse(ASK, ["pres"], METRIC)
    with pytest.raises(AnswerRefused, match="no list of readings; give their ids in the order asked"):
        parse(ASK, "wet", METRIC)
