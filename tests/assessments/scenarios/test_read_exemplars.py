"""Exemplars of a scenario file, held against its tasks."""

import pytest

from assessments.scenarios.fields import Option
from assessments.scenarios.read_exemplars import read_exemplar
from assessments.scenarios.spec import Exemplar
from assessments.scenarios.tasks import Task
from courses.content.errors import FileRefused
from courses.content.tables import read_table
from tests.assessments.answers.listing import ASK, CELLS_ONLY

TASKS = (
    Task("margin", "quantity", "Margin", "How far?", unit="K", decimals=1),
    Task("steps", "many", "Steps", "Which?", options=(Option("log", "Log"), Option("tell", "Tell"))),
)


def read(text: str) -> Exemplar:
    return read_exemplar(read_table(f"name = 'wrong'\n{text}", "a.toml"), TASKS)


def test_an_exemplar_is_its_difference_from_the_key() -> None:
    made = read(
        "outcomes = ['critical_fail']\nwhen = 'key.short'\nnot_met = ['R41']\nexactly = true\n"
        "put = { steps = [] }\nwork = { margin = 'key.margin + 1' }\nadd = { steps = ['log'] }\n"
        "drop = { steps = ['tell'] }\ntick_all = ['steps']\nunanswered = ['margin']"
    )
    assert (made.name, made.outcomes, made.when, made.not_met) == ("wrong", ("critical_fail",), "key.short", ("R41",))
    assert (made.exactly, made.safest) == (True, False)
    assert (dict(made.put), dict(made.work)) == ({"steps": []}, {"margin": "key.margin + 1"})
    assert (dict(made.add), dict(made.drop)) == ({"steps": ("log",)}, {"steps": ("tell",)})
    assert (made.tick_all, made.unanswered) == (("steps",), ("margin",))


def test_readings_and_cells_are_ticked_like_options() -> None:
    raw = "name = 'all'\noutcomes = ['satisfactory']\ndrop = { asked = ['nail'] }\ntick_all = ['cells']"
    made = read_exemplar(read_table(raw, "a.toml"), (ASK, CELLS_ONLY))
    assert (dict(made.drop), made.tick_all) == ({"asked": ("nail",)}, ("cells",))


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("outcomes = ['fail']", "outcomes: 'fail' isn't known here; did you mean critical_fail"),
        ("outcomes = []", "outcomes: the list is empty; name at least one"),
        (
            "outcomes = ['satisfactory']\nput = { margn = 1 }",
            "put.margn: 'margn' isn't known here; did you mean margin",
        ),
        ("outcomes = ['satisfactory']\nwork = { margin = 3 }", "work.margin: 3 is not text"),
        ("outcomes = ['satisfactory']\nadd = { steps = ['lock'] }", "add.steps: 'lock' isn't known here; "),
        ("outcomes = ['satisfactory']\nadd = { margin = ['log'] }", "add.margin: 'margin' has no options to tick"),
        ("outcomes = ['satisfactory']\ntick_all = ['margin']", "tick_all: 'margin' has no options to tick"),
        (
            "outcomes = ['satisfactory']\nunanswered = ['x']",
            "unanswered: 'x' isn't known here; there are margin",
        ),
        ("outcomes = ['critical_fail']\nsafest = true", "outcomes: the safest answer never fails on a critical rule"),
        ("outcomes = ['satisfactory']\nsafe = true", "'safe' isn't known here; did you mean safest"),
    ],
)
def test_an_exemplar_that_cant_stand_is_refused(text: str, says: str) -> None:
    with pytest.raises(FileRefused, match=says):
        read(text)
