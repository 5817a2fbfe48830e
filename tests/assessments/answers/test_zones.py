"""Cells that were marked, with or without verdicts."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assessments.answers.errors import AnswerRefused, UnknownOption
from assessments.answers.zones import parse, read, written
from courses.pictures import CELLS
from courses.trade.units import Preferences
from tests.assessments.answers.listing import CELLS_ONLY, WITH_VERDICTS

METRIC = Preferences.metric()


@given(st.lists(st.sampled_from(CELLS)))
def test_cells_come_in_reading_order_each_once(marked: list[str]) -> None:
    assert parse(CELLS_ONLY, marked, METRIC) == [cell for cell in CELLS if cell in marked]


def test_groups_come_in_the_order_of_their_verdicts_and_meet_where_they_agree() -> None:
    raw = [
        {"cells": ["D6"], "verdict": "refer"},
        {"cells": ["B1", "A1"], "verdict": "polish"},
        {"cells": ["C1"], "verdict": "refer"},
    ]
    groups = [{"cells": ["A1", "B1"], "verdict": "polish"}, {"cells": ["C1", "D6"], "verdict": "refer"}]
    assert parse(WITH_VERDICTS, raw, METRIC) == groups
    assert read(WITH_VERDICTS, written(groups)) == groups
    assert parse(WITH_VERDICTS, [{"cells": ["A1"]}], METRIC) == [{"cells": ["A1"]}]


def test_nothing_marked_is_an_answer() -> None:
    assert parse(CELLS_ONLY, [], METRIC) == parse(WITH_VERDICTS, [], METRIC) == []


@pytest.mark.parametrize(
    ("raw", "error", "says"),
    [
        ("A1", AnswerRefused, "is no list of cells; a cell is called A1 to D6"),
        (["A1"], AnswerRefused, "is no list of groups"),
        ([{"cells": ["A1"], "verdict": "reffer"}], UnknownOption, "'reffer' is no verdict here; did you mean refer?"),
        ([{"cells": ["A7"], "verdict": "refer"}], UnknownOption, "'A7' is no option here"),
        ([{"cells": "A1", "verdict": "refer"}], AnswerRefused, "is no list of cells"),
        (
            [{"cells": ["A1"], "verdict": "refer"}, {"cells": ["A1"], "verdict": "polish"}],
            AnswerRefused,
            "A1 is marked twice, with two verdicts. Keep one of them.",
        ),
    ],
)
def test_what_isnt_there_is_refused(raw: object, error: type[AnswerRefused], says: str) -> None:
    with pytest.raises(error, match=says):
        parse(WITH_VERDICTS, raw, METRIC)
