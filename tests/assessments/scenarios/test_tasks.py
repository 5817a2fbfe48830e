"""Tasks: what may be chosen, and the field an answer fits."""

import pytest

from assessments.answers.sheet import read_answers
from assessments.scenarios.fields import Record
from assessments.scenarios.tasks import TASK_SHAPES, Task
from tests.assessments.answers.listing import ASK, CELLS_ONLY, ORDER, ROWS, WITH_VERDICTS

ANSWERS = [
    (ASK, ["press", "wet"]),
    (ORDER, [{"op": "wipe"}, {"op": "cut", "zone": "rest"}]),
    (ROWS, [{"n": 2, "what": "teak"}]),
    (CELLS_ONLY, ["A1", "D6"]),
    (WITH_VERDICTS, [{"cells": ["A1"], "verdict": "refer"}, {"cells": ["B1"]}]),
]


@pytest.mark.parametrize(("task", "value"), ANSWERS, ids=lambda one: one.kind if isinstance(one, Task) else "")
def test_a_list_that_was_answered_fits_the_field_of_its_task(task: Task, value: list[object]) -> None:
    answered = read_answers([task], {task.id: value})
    assert Record.of([task.as_field()], answered).as_json() == answered


def test_what_may_be_chosen() -> None:
    assert ASK.option_ids == ("wet", "nail", "press")
    assert CELLS_ONLY.option_ids[:7] == ("A1", "A2", "A3", "A4", "A5", "A6", "B1")
    assert (ASK.reading("press").minutes, ORDER.act("cut").family) == (2, "abrade")
    with pytest.raises(KeyError):
        ORDER.act("coat")


def test_every_kind_says_what_it_needs() -> None:
    assert {kind: shape.needs for kind, shape in TASK_SHAPES.items()} == {
        "quantity": ("unit",),
        "choice": ("options",),
        "many": ("options",),
        "yes_no": (),
        "text": ("model",),
        "ask": ("readings",),
        "order": ("acts",),
        "plan": ("ops",),
        "rows": ("rows", "columns"),
        "zones": ("picture",),
    }
