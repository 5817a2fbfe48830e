"""Text for the instructor."""

import pytest

from assessments.answers.errors import AnswerRefused
from assessments.answers.text import LONGEST, parse
from assessments.scenarios.tasks import Task
from courses.trade.units import Preferences

METRIC = Preferences.metric()
TASK = Task("why", "text", "Why", "Why?")


def test_text_is_kept_as_written_but_for_its_ends() -> None:
    assert parse(TASK, "  too\r\n  short \x00 ", METRIC) == "too\n  short"
    assert parse(TASK, " \n ", METRIC) is None
    assert parse(TASK, "x" * LONGEST, METRIC) == "x" * LONGEST


def test_text_that_is_too_long_is_refused_with_how_much_fits() -> None:
    with pytest.raises(AnswerRefused, match="why: this has 2001 characters; 2000 fit"):
        parse(TASK, "x" * 2001, METRIC)
    with pytest.raises(AnswerRefused, match="3 is no text"):
        parse(TASK, 3, METRIC)
