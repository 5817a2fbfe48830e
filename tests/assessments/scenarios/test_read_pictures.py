"""Pictures and model fields of a scenario file."""

import pytest

from assessments.scenarios.fields import Field
from assessments.scenarios.read_pictures import read_model_field, read_picture, refuse_odd_pictures
from assessments.scenarios.spec import ModelField, Picture
from courses.content.errors import FileRefused
from courses.content.tables import Table, read_table
from tests.assessments.answers.listing import ASK, CELLS_ONLY, ORDER, WITH_VERDICTS

TASKS = (ASK, CELLS_ONLY)


def table(name: str, text: str) -> Table:
    return read_table(f"[[{name}]]\n{text}", "a.toml").tables(name)[0]


def test_a_picture_stands_with_a_task_and_may_wait_for_a_reading() -> None:
    text = "name = 'low_lamp'\nalt = 'By a low lamp.'\ntask = 'cells'\nafter = 'press'\nzones = ['crack']"
    assert read_picture(table("pictures", text), TASKS) == Picture(
        "low_lamp", "By a low lamp.", task="cells", after="press", zones=("crack",)
    )


def test_a_model_field_rests_on_tasks() -> None:
    text = "name = 'named'\nkind = 'whole'\nlabel = 'Named right'\nrests = ['asked']"
    assert read_model_field(table("model", text), TASKS) == ModelField(
        Field("named", "whole", "Named right"), ("asked",)
    )


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("name = 'a'", "alt: this is missing"),
        ("name = 'a'\nalt = 'A.'\ntask = 'cell'", "'cell' isn't known here; did you mean cells?"),
        ("name = 'a'\nalt = 'A.'\nafter = 'pres'", "'pres' isn't known here; did you mean press?"),
    ],
)
def test_a_picture_that_points_nowhere_is_refused(text: str, says: str) -> None:
    with pytest.raises(FileRefused, match=says):
        read_picture(table("pictures", text), TASKS)


def test_a_model_field_that_rests_on_nothing_is_refused() -> None:
    with pytest.raises(FileRefused, match="'patches' isn't known here"):
        read_model_field(table("model", "name = 'a'\nkind = 'whole'\nrests = ['patches']"), TASKS)


def test_cells_are_marked_on_a_picture_that_is_there_and_once() -> None:
    whole = read_table("[[tasks]]\npicture = 'panel'\n[[tasks]]\nid = 'b'", "a.toml")
    refuse_odd_pictures(whole, (CELLS_ONLY, ORDER), ["panel"])
    with pytest.raises(FileRefused, match=r"tasks\[1\].picture: 'panel' isn't known here"):
        refuse_odd_pictures(whole, (CELLS_ONLY, ORDER), ["panels"])
    with pytest.raises(FileRefused, match="one task of kind 'zones' at most"):
        refuse_odd_pictures(whole, (CELLS_ONLY, WITH_VERDICTS), ["panel"])
