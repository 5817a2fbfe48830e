"""Rows: an option in each column of each thing listed."""

import pytest

from assessments.answers.errors import AnswerRefused, UnknownOption
from assessments.answers.rows import parse, read, written
from courses.trade.units import Preferences
from tests.assessments.answers.listing import ROWS

METRIC = Preferences.metric()
BOTH = [{"n": 1, "what": "teak", "verdict": "leave"}, {"n": 2, "what": "gel_coat"}]


def test_rows_come_in_the_order_listed_and_a_column_left_out_is_not_answered() -> None:
    assert parse(ROWS, BOTH[::-1], METRIC) == BOTH
    assert parse(ROWS, [{"n": 1, "what": ""}, {"n": 2, "what": None}], METRIC) is None


def test_rows_survive_a_page() -> None:
    assert written(BOTH) == ["1:what:teak", "1:verdict:leave", "2:what:gel_coat"]
    assert read(ROWS, written(BOTH)) == BOTH


@pytest.mark.parametrize(
    ("raw", "error", "says"),
    [
        ({"n": 1}, AnswerRefused, "is no list of rows"),
        ([1], AnswerRefused, "is no list of rows"),
        ([{"n": 3}], UnknownOption, "3 is no row here; the rows are 1, 2"),
        ([{"n": True}], UnknownOption, "True is no row here"),
        ([{"n": 1}, {"n": 1}], AnswerRefused, "row 1 is given twice"),
        ([{"n": 1, "wat": "teak"}], UnknownOption, "there is no column wat; did you mean what?"),
        ([{"n": 1, "what": "tek"}], UnknownOption, "'tek' is no what here; did you mean teak?"),
        ([{"n": 1, "what": ["teak"]}], UnknownOption, "is no what here"),
    ],
)
def test_what_isnt_listed_is_refused(raw: object, error: type[AnswerRefused], says: str) -> None:
    with pytest.raises(error, match=says):
        parse(ROWS, raw, METRIC)


def test_a_page_that_sends_something_else_is_refused() -> None:
    with pytest.raises(UnknownOption, match="'one:what:teak' is no row here"):
        read(ROWS, ["one:what:teak"])
