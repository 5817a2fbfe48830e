"""Pictures of a scenario file, and what a scenario works from an answer."""

from collections.abc import Collection
from dataclasses import replace

from assessments.scenarios.read_fields import read_field, read_name
from assessments.scenarios.spec import ModelField, Picture
from assessments.scenarios.tasks import Task
from courses.content.tables import Table


def read_picture(table: Table, tasks: tuple[Task, ...]) -> Picture:
    """Return one picture; raise FileRefused for a task or a reading that isn't there."""
    table.only_fields_of(Picture)
    readings = [reading.id for task in tasks for reading in task.readings]
    return Picture(
        name=read_name(table, "name"),
        alt=table.text("alt"),
        caption=table.text("caption", ""),
        task=table.one_of("task", [task.id for task in tasks], ""),
        after=table.one_of("after", readings, ""),
        zones=table.texts("zones", ()),
    )


def read_model_field(table: Table, tasks: tuple[Task, ...]) -> ModelField:
    """Return a value worked from the answer; raise FileRefused where it rests on no task of this scenario."""
    rests = table.some_of("rests", [task.id for task in tasks])
    bare = {key: value for key, value in table.values.items() if key != "rests"}
    return ModelField(read_field(replace(table, values=bare)), rests)


def refuse_odd_pictures(whole: Table, tasks: tuple[Task, ...], names: Collection[str]) -> None:
    """Refuse a task of zones on a picture that isn't there, and a second task of a kind that is set once."""
    for kind in ("zones", "order", "plan", "ask"):
        if sum(task.kind == kind for task in tasks) > 1:
            raise whole.refuse("tasks", f"a scenario sets one task of kind '{kind}' at most.")
    for table, task in zip(whole.tables("tasks"), tasks, strict=True):
        if task.kind == "zones":
            table.refuse_unknown("picture", task.picture, names)
