"""The door to a mark: `mark CODE --seed N --answers FILE|-`."""

from typing import Any

from django.core.management.base import CommandParser

from assessments.answers.sheet import read_answers
from assessments.management.numbers import whole_number
from assessments.marking import mark
from assessments.scenarios.draw import draw
from assessments.shipped import marker
from courses.management.door import Door, DoorError, read_json


class Command(Door):
    """Marks an answers file against the facts of one draw."""

    help = "Mark answers to a draw, such as: mark COA-01 --seed 7 --answers answers.json"

    def add_arguments(self, parser: CommandParser) -> None:
        parser.add_argument("code", help="the scenario, such as COA-01 or COA-01@1")
        parser.add_argument("--seed", required=True, help="the whole number that drew the facts")
        parser.add_argument("--answers", required=True, help="a JSON object, task to value; - for standard input")

    def answer(self, **options: Any) -> object:
        made_ready = marker(options["code"])
        seed = whole_number("--seed", options["seed"])
        given = read_json(options["answers"])
        if not isinstance(given, dict):
            tasks = ", ".join(task.id for task in made_ready.scenario.tasks)
            place = "standard input" if options["answers"] == "-" else options["answers"]
            raise DoorError(f"{place} holds no object of answers; write one value for each of: {tasks}.")
        answers = read_answers(made_ready.scenario.tasks, given)
        return mark(made_ready, draw(made_ready.scenario, seed).facts, answers).as_json()
