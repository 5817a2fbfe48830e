"""The fields of tasks that are lists, as a page shows them."""

import pytest

from assessments import shipped
from assessments.scenarios.fields import Record
from assessments.scenarios.story import metric
from assessments.views.answering import list_line
from tests.assessments.answers.listing import ASK, CELLS_ONLY, ORDER, ROWS, WITH_VERDICTS

NOTHING = Record({})


@pytest.fixture(scope="module")
def spec():
    return shipped.scenario("COA-01@1")


def test_what_was_asked_for_is_told_and_costs_its_minutes(spec):
    line = list_line(ASK, ["press", "wet"], spec, NOTHING, metric)
    assert [(one["id"], one["place"]) for one in line["readings"]] == [("wet", 2), ("nail", 0), ("press", 1)]
    assert (line["asked"], line["spent"]) == (["press", "wet"], 4)


def test_acts_are_said_in_words_with_what_they_carry(spec):
    line = list_line(ORDER, ["lamp place=right", "cut", "nonsense"], spec, NOTHING, metric)
    steps = line["list"]
    assert [(one["n"], one["words"]) for one in steps["steps"]] == [(1, "Lamp, right"), (2, "Cut, everywhere")]
    assert steps["full"] is False
    assert list_line(ORDER, ["wipe"] * 4, spec, NOTHING, metric)["list"]["full"] is True


def test_rows_keep_what_was_chosen(spec):
    line = list_line(ROWS, ["1:what:teak"], spec, NOTHING, metric)
    tokens = [option["token"] for column in line["rows"][0]["columns"] for option in column["options"]]
    assert tokens == ["1:what:teak", "1:what:gel_coat", "1:verdict:leave", "1:verdict:polish"]
    assert line["sent"] == ["1:what:teak"]


def test_cells_stand_in_one_grid_or_in_one_for_each_verdict(spec):
    (grid,) = list_line(CELLS_ONLY, ["B2"], spec, NOTHING, metric)["grids"]
    assert [cell["cell"] for cell in grid["cells"] if cell["chosen"]] == ["B2"]
    assert grid["cells"][7]["label"] == "Row B, column 2"
    polish, refer = list_line(WITH_VERDICTS, ["B2:refer"], spec, NOTHING, metric)["grids"]
    assert not any(cell["chosen"] for cell in polish["cells"])
    assert [cell["label"] for cell in refer["cells"] if cell["chosen"]] == ["Row B, column 2, refer"]


def test_a_plain_task_has_no_list(spec):
    assert list_line(spec.tasks[0], [], spec, NOTHING, metric) == {}
