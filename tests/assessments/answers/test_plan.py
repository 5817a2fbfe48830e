"""Work plans as answers: read, written for a page, refused in a sentence."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assessments.answers.errors import AnswerRefused, UnknownOption
from assessments.answers.plan import parse, read, written
from assessments.answers.sheet import parse_form
from courses.trade.units import Preferences
from tests.assessments.answers.listing import PLAN

METRIC = Preferences.metric()
STEPS = st.one_of(
    st.just({"op": "wash"}),
    st.builds(
        lambda grade, passes: {"op": "sand", "grade": grade, "passes": passes},
        st.sampled_from(["P1000", "P1500"]),
        st.integers(1, 20),
    ),
    st.builds(lambda zone: {"op": "finish", "zone": zone}, st.sampled_from(["bow", "rest", "all"])),
    st.just({"op": "cut", "speeds_rpm": [600, 900, 1500], "sets": "until_clear"}),
)


@given(st.lists(STEPS, max_size=5))
def test_steps_are_kept_as_given_and_survive_a_page(steps: list[dict[str, object]]) -> None:
    assert parse(PLAN, steps, METRIC) == steps
    assert read(PLAN, written(steps)) == steps


def test_what_a_page_sends_is_read_with_its_numbers() -> None:
    sent = ["sand grade=P1500 passes=4 zone=bow", "cut force_n=25.5"]
    assert parse_form(PLAN, sent) == [
        {"op": "sand", "grade": "P1500", "passes": 4, "zone": "bow"},
        {"op": "cut", "force_n": 25.5},
    ]
    assert parse_form(PLAN, ["none_of_these"]) == []


def test_what_a_step_leaves_unsaid_stays_unsaid() -> None:
    assert parse(PLAN, [{"op": "sand", "grade": "", "passes": None}], METRIC) == [{"op": "sand"}]


@pytest.mark.parametrize(
    ("raw", "error", "says"),
    [
        ("wash", AnswerRefused, "is no list of steps"),
        ([{"op": "wash"}] * 6, AnswerRefused, "these are 6 steps; 5 fit"),
        ([{"op": "wahs"}], UnknownOption, "'wahs' is no step here; did you mean wash?"),
        ([{"op": "coat"}], UnknownOption, "'coat' is no step here"),
        ([{"zone": "bow"}], AnswerRefused, "a step names its op; there are"),
        ([{"op": "sand", "zone": "bwo"}], UnknownOption, "'bwo' is no zone here; did you mean bow?"),
        ([{"op": "sand", "grade": "P1501"}], AnswerRefused, "P1501"),
        ([{"op": "sand", "passes": 400}], AnswerRefused, "400"),
        ([{"op": "sand", "compound": "heavy"}], AnswerRefused, "compound"),
        ([{"op": "cut", "speeds_rpm": [90000]}], AnswerRefused, "90000"),
        ([{"op": "cut", "force_n": "much"}], AnswerRefused, "much"),
    ],
)
def test_what_no_step_takes_is_refused(raw: object, error: type[AnswerRefused], says: str) -> None:
    with pytest.raises(error, match=says):
        parse(PLAN, raw, METRIC)


def test_a_text_that_is_no_step_is_refused_in_a_sentence() -> None:
    with pytest.raises(AnswerRefused, match="is no setting"):
        parse_form(PLAN, ["sand grade"])
