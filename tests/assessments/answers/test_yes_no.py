"""Yes or no, as a door or a form says it."""

import pytest

from assessments.answers.errors import AnswerRefused
from assessments.answers.yes_no import parse
from assessments.scenarios.tasks import Task
from courses.trade.units import Preferences

METRIC = Preferences.metric()
TASK = Task("released", "yes_no", "Released", "Is it?")


@pytest.mark.parametrize(
    ("raw", "value"),
    [(True, True), (False, False), ("true", True), ("Yes", True), ("false", False), (" no ", False), ("", None)],
)
def test_yes_no_and_silence(raw: object, value: bool | None) -> None:
    assert parse(TASK, raw, METRIC) is value


@pytest.mark.parametrize("raw", ["perhaps", 1, 0, []])
def test_what_is_neither_is_refused(raw: object) -> None:
    with pytest.raises(AnswerRefused, match="is neither true nor false"):
        parse(TASK, raw, METRIC)
