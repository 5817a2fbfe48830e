"""Exemplars of a scenario file, held against its tasks."""

import pytest

from assessments.scenarios.errors import SpecRefused
from assessments.scenarios.fields import Option
from assessments.scenarios.located import Table
from assessments.scenarios.read_exemplars import read_exemplar
from assessments.scenarios.spec import Exemplar, Task

TASKS = (
    Task("margin", "quantity", "Margin", "How far?", unit="K", decimals=1),
    Task("steps", "many", "Steps", "Which?", options=(Option("log", "Log"), Option("tell", "Tell"))),
)


def read(text: str) -> Exemplar:
    return read_exemplar(Table.of(f"name = 'wrong'\n{text}", "a.toml"), TASKS)


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


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("outcomes = ['fail']", "outcomes: 'fail' isn't an outcome; did you mean critical_fail"),
        ("outcomes = []", "outcomes: name at least one"),
        (
            "outcomes = ['satisfactory']\nput = { margn = 1 }",
            "put.margn: no task is called 'margn'; did you mean margin",
        ),
        ("outcomes = ['satisfactory']\nwork = { margin = 3 }", "work.margin: should be a text, not 3"),
        ("outcomes = ['satisfactory']\nadd = { steps = ['lock'] }", "add.steps: 'lock' isn't an option of 'steps'; "),
        ("outcomes = ['satisfactory']\nadd = { margin = ['log'] }", "add.margin: 'margin' has no options to tick"),
        ("outcomes = ['satisfactory']\ntick_all = ['margin']", "tick_all: 'margin' has no options to tick"),
        (
            "outcomes = ['satisfactory']\nunanswered = ['x']",
            "unanswered: no task is called 'x'; there are margin",
        ),
        ("outcomes = ['critical_fail']\nsafest = true", "outcomes: the safest answer never fails on a critical rule"),
        ("outcomes = ['satisfactory']\nsafe = true", "'safe' isn't known here; did you mean safest"),
    ],
)
def test_an_exemplar_that_cant_stand_is_refused(text: str, says: str) -> None:
    with pytest.raises(SpecRefused, match=says):
        read(text)
