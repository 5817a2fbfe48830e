"""Acts in order, each with what it carries."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assessments.answers.errors import AnswerRefused, UnknownOption
from assessments.answers.order import joined, parse, read, written
from courses.trade.units import Preferences
from tests.assessments.answers.listing import ORDER

METRIC = Preferences.metric()
STEPS = st.one_of(
    st.just({"op": "wipe"}),
    st.builds(lambda place: {"op": "lamp", "place": place}, st.sampled_from(["left", "right"])),
    st.builds(lambda zone: {"op": "cut", "zone": zone}, st.sampled_from(["crack", "rest", "all"])),
)


@given(st.lists(STEPS, max_size=4))
def test_acts_are_kept_as_given_and_survive_a_page(steps: list[dict[str, str]]) -> None:
    assert parse(ORDER, steps, METRIC) == steps
    assert read(written(steps)) == steps


def test_what_an_act_leaves_unsaid_stays_unsaid() -> None:
    assert parse(ORDER, [{"op": "cut", "zone": ""}, {"op": "lamp"}], METRIC) == [{"op": "cut"}, {"op": "lamp"}]


@pytest.mark.parametrize(
    ("raw", "error", "says"),
    [
        ("wipe", AnswerRefused, "is no list of acts"),
        (["wipe"], AnswerRefused, "is no list of acts"),
        ([{"op": "wipe"}] * 5, AnswerRefused, "these are 5 acts; 4 fit"),
        ([{"op": "wype"}], UnknownOption, "'wype' is no act here; did you mean wipe?"),
        ([{"zone": "crack"}], UnknownOption, "'None' is no act here"),
        ([{"op": "wipe", "zone": "crack"}], UnknownOption, "'wipe' carries no zone"),
        ([{"op": "cut", "zone": "crakc"}], UnknownOption, "'crakc' is no zone here; did you mean crack?"),
        ([{"op": "lamp", "place": ["left"]}], UnknownOption, "is no place here"),
    ],
)
def test_what_isnt_offered_is_refused(raw: object, error: type[AnswerRefused], says: str) -> None:
    with pytest.raises(error, match=says):
        parse(ORDER, raw, METRIC)


SPOTS = st.lists(st.sampled_from([{"op": "cut"}, {"op": "sand"}, {"op": "cut", "sets": "2"}]), max_size=4)


@given(SPOTS, SPOTS)
def test_a_spot_that_was_laid_stays_laid(before: list[dict[str, str]], now: list[dict[str, str]]) -> None:
    assert joined(before, [*before, *now]) == [*before, *now]
    assert joined(before, now)[: len(before)] == before


def test_a_spot_laid_in_another_tab_comes_after_what_was_laid_meanwhile() -> None:
    cut, sand, again = {"op": "cut"}, {"op": "sand"}, {"op": "cut", "sets": "2"}
    assert joined([cut, sand], [cut, again]) == [cut, sand, again]
    assert joined([cut, sand], [cut]) == [cut, sand]
    assert joined(None, [cut]) == [cut]
