"""Many options: in the order offered, each once."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assessments.answers.errors import AnswerRefused, UnknownOption
from assessments.answers.many import parse
from assessments.scenarios.fields import Option
from assessments.scenarios.tasks import Task
from courses.trade.units import Preferences

METRIC = Preferences.metric()
IDS = ["log", "tell", "probe"]
TASK = Task("steps", "many", "Steps", "Which?", options=tuple(Option(name, name) for name in IDS))


@given(st.lists(st.sampled_from(IDS)))
def test_ticks_come_in_the_order_offered_each_once(ticked: list[str]) -> None:
    assert parse(TASK, ticked, METRIC) == [name for name in IDS if name in ticked]


@pytest.mark.parametrize("raw", ["log", {"log": True}, [1], 3, True])
def test_what_is_no_list_of_ids_is_refused(raw: object) -> None:
    with pytest.raises(AnswerRefused, match="is no list of option ids; give a list, empty for none of these"):
        parse(TASK, raw, METRIC)


def test_an_option_that_wasnt_offered_is_refused() -> None:
    with pytest.raises(UnknownOption, match="'prob' is no option here; did you mean probe?"):
        parse(TASK, ["log", "prob"], METRIC)
