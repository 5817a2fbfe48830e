"""The door to the model surface: `simulate FILE|- [--optics]`, `simulate --explain`."""

from typing import Any

from django.core.management.base import CommandParser

from courses.management.door import Door, DoorError, read_json
from courses.shipped import catalogue, constants
from courses.trade.surface import PanelSurface, read_plan, simulate
from courses.trade.surface.explain import schema

WANTED = '{"surface": {"substrate": …, "film_um": …}, "plan": [{"op": …}, …]}'


class Command(Door):
    """Works a plan on a panel and says what would have come of it."""

    help = "Work a plan on a model surface, such as: simulate plan.json; simulate --explain says what a file may hold."

    def add_arguments(self, parser: CommandParser) -> None:
        parser.add_argument("file", nargs="?", help="a JSON object of surface and plan; - for standard input")
        parser.add_argument("--explain", action="store_true", help="a JSON schema of the file, with every default")
        parser.add_argument("--optics", action="store_true", help="gloss and haze after every step, not only the last")

    def answer(self, **options: Any) -> object:
        source = options["file"]
        if options["explain"]:
            if source or options["optics"]:
                raise DoorError("--explain says what a file may hold and takes nothing else; leave the rest out.")
            return schema(catalogue(), constants())
        if not source:
            raise DoorError(f"Name a file, or - for standard input, that holds {WANTED}.")
        read = read_json(source)
        if not isinstance(read, dict):
            raise DoorError(f"{source} holds no object; write {WANTED}.")
        for key in read:
            if key not in ("surface", "plan"):
                raise DoorError(f"There is no {key[:40]!r} beside surface and plan; write {WANTED}.")
        for key in ("surface", "plan"):
            if key not in read:
                raise DoorError(f"The {key} is missing; write {WANTED}.")
        surface = PanelSurface.of(read["surface"], catalogue(), constants())
        steps = read_plan(read["plan"], surface)
        return simulate(surface, steps, constants(), optics="every" if options["optics"] else "last").as_json()
