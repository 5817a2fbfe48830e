"""Tasks of a scenario file."""

import pytest

from assessments.scenarios.fields import Option
from assessments.scenarios.read_tasks import read_task
from assessments.scenarios.tasks import Task
from assessments.scenarios.wording import Sentence
from courses.content.errors import FileRefused
from courses.content.tables import read_table


def task_of(text: str) -> Task:
    return read_task(read_table(f"[[tasks]]\ntitle = 'T'\nask = 'A?'\n{text}", "a.toml").tables("tasks")[0], ["margin"])


def test_a_task_of_each_kind() -> None:
    assert task_of("id = 'k'\nkind = 'quantity'\nunit = 'K'\ndecimals = 1\nlow = -60\nhigh = 60") == Task(
        "k", "quantity", "T", "A?", unit="K", decimals=1, low=-60, high=60
    )
    one = (Option("a", "A"),)
    assert task_of("id = 'c'\nkind = 'choice'\noptions = [{ id = 'a', words = 'A' }]") == Task(
        "c", "choice", "T", "A?", options=one
    )
    assert task_of("id = 'y'\nkind = 'yes_no'\nhint = 'H'") == Task("y", "yes_no", "T", "A?", hint="H")
    text = task_of("id = 'why'\nkind = 'text'\n[[tasks.model]]\ntext = 'So.'")
    assert text == Task("why", "text", "T", "A?", model=(Sentence("So."),))


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("id = 'c'\nkind = 'choice'", "a task of kind 'choice' needs options"),
        (
            "id = 'y'\nkind = 'yes_no'\noptions = [{ id = 'a', words = 'A' }]",
            "kind 'yes_no' takes no options",
        ),
        (
            "id = 'y'\nkind = 'yes_no'\nhint = 'Add {margin}'",
            "line 6, .*hint: no value is called 'margin'; only a fixed",
        ),
        ("id = 'why'\nkind = 'text'", "a task of kind 'text', and no other, has a"),
        (
            "id = 'why'\nkind = 'text'\n[[tasks.model]]\ntext = '{margn}'",
            r"line 7, tasks\[1\].model\[1\].text: no value is called 'margn'; did you mean margin\?",
        ),
        ("id = 'y'\nkind = 'yes_no'\n[[tasks.model]]\ntext = 'So.'", "a task of kind 'text', and no other, has a"),
        (
            "id = 'a'\nkind = 'ask'\n[[tasks.readings]]\nid = 'wipe'\nwords = 'W'\n"
            "[[tasks.readings.tells]]\ntext = 'So.'\nasked = ['wip']",
            "readings: 'wip' isn't known here; did you mean wipe",
        ),
        ("id = 'k'\nkind = 'quantity'\nunit = 'K'\nlow = 3", "'low' and 'high' stand together, the lower one first"),
        ("id = 'k'\nkind = 'quantity'\nunit = 'K'\nlow = 3\nhigh = 2", "'low' and 'high' stand together"),
    ],
)
def test_a_task_that_cant_stand_is_refused(text: str, says: str) -> None:
    with pytest.raises(FileRefused, match=says):
        task_of(text)
