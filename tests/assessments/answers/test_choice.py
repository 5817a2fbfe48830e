"""A choice is one of the options offered."""

import pytest

from assessments.answers.choice import offered, parse
from assessments.answers.errors import AnswerRefused, UnknownOption
from assessments.scenarios.fields import Option
from assessments.scenarios.tasks import Task
from courses.trade.units import Preferences

METRIC = Preferences.metric()
TASK = Task("decision", "choice", "Decision", "What?", options=(Option("wait", "Wait"), Option("coat", "Coat")))


def test_an_option_that_was_offered_is_the_answer_and_blank_is_none() -> None:
    assert parse(TASK, "coat", METRIC) == "coat"
    assert parse(TASK, " ", METRIC) is None


def test_an_option_that_wasnt_offered_is_refused_with_the_near_miss() -> None:
    with pytest.raises(UnknownOption, match="decision: 'wayt' is no option here; did you mean wait?"):
        parse(TASK, "wayt", METRIC)
    with pytest.raises(UnknownOption):
        offered(TASK, "")


def test_what_is_no_id_is_refused() -> None:
    with pytest.raises(AnswerRefused, match="3 is no option id; there are wait, coat"):
        parse(TASK, 3, METRIC)
