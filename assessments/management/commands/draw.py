"""The door to a draw: `draw CODE --seed N [--key]`."""

from typing import Any

from django.core.management.base import CommandParser

from assessments.management.numbers import whole_number
from assessments.marking.case import case_of
from assessments.scenarios.draw import answer_key, draw, key_of
from assessments.scenarios.tasks import Task
from assessments.shipped import scenario
from courses.management.door import Door


class Command(Door):
    """Draws the facts of one scenario."""

    help = "Draw the facts of a scenario, such as: draw COA-01 --seed 7 --key"

    def add_arguments(self, parser: CommandParser) -> None:
        parser.add_argument("code", help="the scenario, such as COA-01 or COA-01@1")
        parser.add_argument("--seed", required=True, help="a whole number; the same one always draws the same facts")
        parser.add_argument("--key", action="store_true", help="print the key as well: a complete answers file")

    def answer(self, **options: Any) -> object:
        drawn = draw(scenario(options["code"]), whole_number("--seed", options["seed"]))
        printed = {
            "scenario": drawn.scenario.code,
            "version": drawn.scenario.version,
            "seed": drawn.seed,
            "facts": drawn.facts.as_json(),
            "tasks": [_listed(task) for task in drawn.scenario.tasks],
        }
        if not options["key"]:
            return printed
        worked = key_of(drawn.scenario, drawn.facts)
        key = answer_key(drawn.scenario, worked).as_json()
        model = case_of(drawn.scenario, drawn.facts, worked, key).get("model", {})
        return {**printed, "key": key, "model": model}


def _listed(task: Task) -> dict[str, object]:
    listed: dict[str, object] = {"id": task.id, "kind": task.kind}
    if task.unit:
        listed["unit"] = task.unit
    if task.options or task.kind == "zones":
        listed["options"] = [option.id for option in task.options] or list(task.option_ids)
    if task.columns:
        listed["columns"] = {column.name: list(column.option_ids) for column in task.columns}
    if task.rows:
        listed["rows"] = [row.n for row in task.rows]
    if task.acts or task.ops:
        listed["acts"] = [act.id for act in task.acts] or list(task.ops)
    if task.carries:
        listed["columns"] = {one.name: [option.id for option in one.options] for one in task.carries}
    if task.readings:
        listed["options"] = list(task.option_ids)
        listed["minutes"] = {one.id: one.minutes for one in task.readings}
    return listed
