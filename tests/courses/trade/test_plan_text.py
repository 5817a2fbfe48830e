"""A plan in texts: what is written is read back, and what is no step is refused in a sentence."""

from contextlib import suppress

import pytest
from hypothesis import given
from hypothesis import strategies as st

from courses.trade.plan_text import PlanTextRefused, plan_text, read_plan_text, read_token, token

WORDS = st.text("abcdefghijklmnopqrstuvwxyzPW", min_size=1, max_size=12)
NUMBERS = st.integers(0, 9999) | st.floats(0, 999, allow_nan=False).map(lambda value: round(value, 3))
STEPS = st.fixed_dictionaries(
    {"op": WORDS},
    optional={
        "grade": st.sampled_from(["P800", "P1500"]),
        "zone": WORDS,
        "product": st.just("mild acid cleaner"),
        "passes": NUMBERS,
        "force_n": NUMBERS,
        "speeds_rpm": st.lists(st.integers(300, 9000), min_size=1, max_size=5),
        "sets": st.just("until_clear"),
        "disc": st.sampled_from(["fresh", 0.4]),
    },
)


@given(STEPS)
def test_a_step_is_read_back_as_it_was_written(step):
    assert read_token(token(step)) == step


@given(st.lists(STEPS, max_size=40))
def test_a_plan_is_read_back_from_its_link(steps):
    tokens = [token(step) for step in steps]
    assert read_plan_text(plan_text(tokens)) == tokens


@given(st.text(max_size=200))
def test_any_text_is_read_or_refused(text):
    for line in read_plan_text(text):
        with suppress(PlanTextRefused):
            assert read_token(line)["op"]


@pytest.mark.parametrize("text", ["sand P1500", "sand =4", "sand grade="])
def test_a_part_that_is_no_setting_is_named(text):
    with pytest.raises(PlanTextRefused, match="is no setting; write it as name=value"):
        read_token(text)


def test_a_setting_that_stands_twice_is_refused():
    with pytest.raises(PlanTextRefused, match="'passes' stands twice"):
        read_token("sand passes=3 passes=4")


@pytest.mark.parametrize("value", ["nan", "inf", "1e9", "9" * 400, "four", "--3"])
def test_what_is_no_plain_number_stays_text(value):
    assert read_token(f"sand passes={value}")["passes"] == value


def test_a_list_with_a_word_in_it_stays_text():
    assert read_token("cut speeds_rpm=600,fast")["speeds_rpm"] == "600,fast"
