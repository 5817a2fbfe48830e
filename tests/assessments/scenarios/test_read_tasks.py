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


READINGS = "readings = [{ id = 'wet', words = 'Wet it', minutes = 2 }]"
ACTS = "acts = [{ id = 'cut', words = 'Cut', with = ['zone'] }, { id = 'rub', words = 'Rub', family = 'abrade' }]"
ZONE = "[[tasks.carries]]\nname = 'zone'\nlabel = 'Where'\noptions = [{ id = 'side', words = 'the side' }]"
ROWS = "rows = [{ n = 1, tells = [{ text = 'Teak.' }] }, { n = 2 }]"
COLUMNS = "[[tasks.columns]]\nname = 'what'\nkind = 'choice'\noptions = [{ id = 'a', words = 'A' }]"


def test_a_task_that_is_a_list_of_each_kind() -> None:
    asked = task_of(f"id = 'asked'\nkind = 'ask'\n{READINGS}")
    assert [(one.id, one.words, one.minutes) for one in asked.readings] == [("wet", "Wet it", 2)]
    order = task_of(f"id = 'steps'\nkind = 'order'\nmost = 6\n{ACTS}\n{ZONE}")
    assert [(one.id, one.family, one.carries) for one in order.acts] == [
        ("cut", "abrade", ("zone",)),
        ("rub", "abrade", ()),
    ]
    assert [(one.name, one.default, [each.id for each in one.options]) for one in order.carries] == [
        ("zone", "all", ["side", "all"])
    ]
    rows = task_of(f"id = 'patches'\nkind = 'rows'\n{ROWS}\n{COLUMNS}")
    assert [(one.n, one.tells) for one in rows.rows] == [(1, (Sentence("Teak."),)), (2, ())]
    zones = task_of(
        "id = 'zones'\nkind = 'zones'\npicture = 'p'\nverdicts = true\noptions = [{ id = 'refer', words = 'R' }]"
    )
    assert (zones.picture, zones.verdicts, [one.id for one in zones.options]) == ("p", True, ["refer"])


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("id = 'a'\nkind = 'ask'", "a task of kind 'ask' needs readings"),
        ("id = 'a'\nkind = 'order'", "a task of kind 'order' needs acts"),
        (f"id = 'a'\nkind = 'rows'\n{ROWS}", "a task of kind 'rows' needs columns"),
        ("id = 'a'\nkind = 'zones'", "a task of kind 'zones' needs picture"),
        (f"id = 'a'\nkind = 'yes_no'\n{READINGS}", "a task of kind 'yes_no' takes no readings"),
        (f"id = 'a'\nkind = 'order'\n{ACTS}", "'zone' isn't known here"),
        ("id = 'a'\nkind = 'zones'\npicture = 'p'\nverdicts = true", "verdicts and their options stand together"),
        (
            "id = 'a'\nkind = 'zones'\npicture = 'p'\nverdicts = true\noptions = [{ id = 'reffer', words = 'R' }]",
            "'reffer' isn't known here; did you mean refer?",
        ),
        (f"id = 'a'\nkind = 'rows'\nrows = [{{ n = 1 }}, {{ n = 1 }}]\n{COLUMNS}", "each row has a number of its own"),
        (
            f"id = 'a'\nkind = 'rows'\n{ROWS}\n[[tasks.columns]]\nname = 'w'\nkind = 'yes_no'",
            "a column of rows is a choice",
        ),
    ],
)
def test_a_list_that_cant_stand_is_refused(text: str, says: str) -> None:
    with pytest.raises(FileRefused, match=says):
        task_of(text)
