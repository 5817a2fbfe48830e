"""The door to the calculators: `sum NAME key=value…`, `sum NAME FILE`, `sum --list`."""

import json
from collections.abc import Mapping
from typing import Any

from django.core.management.base import CommandParser

from courses.management.door import Door, DoorError, read_json
from courses.shipped import sources
from courses.trade.ranges import METRIC
from courses.trade.sums import SUMS, Result, ShownLine, listing, sum_named, work_out


class Command(Door):
    """Works out one sum, or lists them all."""

    help = "Work out a calculator, such as: sum dew_point air_degc=20 air_rh=50. A text may carry its unit: '54 °F'."

    def add_arguments(self, parser: CommandParser) -> None:
        parser.add_argument("name", nargs="?", help="the sum, such as dew_point")
        parser.add_argument("given", nargs="*", help="inputs as key=value, or one JSON file, or - for standard input")
        parser.add_argument("--list", action="store_true", dest="listed", help="name every sum and what it takes")
        parser.add_argument("--json", action="store_true", help="answer in JSON")

    def answer(self, **options: Any) -> object:
        name, given = options["name"], options["given"]
        if options["listed"]:
            if name:
                raise DoorError(f"--list names every sum and takes no other word than --json; leave out {name!r}.")
            return listing() if options["json"] else _as_list()
        if not name:
            raise DoorError("Name a sum, such as: sum dew_point air_degc=20 air_rh=50; sum --list names them all.")
        sum_named(name)
        result = work_out(name, _inputs(name, given))
        return result.as_json() if options["json"] or _is_file(given) else _in_words(result)


def _is_file(given: list[str]) -> bool:
    return len(given) == 1 and "=" not in given[0]


def _inputs(name: str, given: list[str]) -> Mapping[str, object]:
    if not _is_file(given):
        return _pairs(given)
    read = read_json(given[0])
    if isinstance(read, dict):
        return read
    example = ", ".join(f'"{wanted.name}": …' for wanted in SUMS[name].inputs)
    raise DoorError(f"{given[0]} holds no object of inputs; write {{{example}}}.")


def _pairs(given: list[str]) -> Mapping[str, object]:
    inputs: dict[str, object] = {}
    for word in given:
        key, equals, value = word.partition("=")
        if not equals or not key:
            raise DoorError(f"{word!r} is no input; write key=value, such as air_degc=20, or name one JSON file.")
        if key in inputs:
            raise DoorError(f"{key} is given twice; keep one.")
        inputs[key] = _rows(key, value) if value.startswith("[") else value
    return inputs


def _rows(key: str, value: str) -> object:
    try:
        return json.loads(value)
    except ValueError as wrong:
        raise DoorError(f"{key}: {value!r} is not JSON; a list of rows is written [{{…}}, {{…}}].") from wrong


def _as_list() -> str:
    return "\n".join(f"{declared.name}({_signature(declared.name)}): {declared.title}" for declared in SUMS.values())


def _signature(name: str) -> str:
    return ", ".join(
        wanted.name if wanted.needed else f"{wanted.name}={'' if wanted.default is None else wanted.default}"
        for wanted in SUMS[name].inputs
    )


def _in_words(result: Result) -> str:
    said = result.shown(METRIC)
    lines = [*map(_line, (said.output, *said.also)), "", said.formula]
    source = sources().get(said.source)
    lines += [f"Source: {source.cited() if source else said.source} [{said.mark}]", said.uncertainty, *said.notes]
    return "\n".join(lines)


def _line(line: ShownLine) -> str:
    return f"{line.title}: {line.text}"
