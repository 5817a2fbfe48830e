"""Answers as rules read them: acts numbered, with what was left unsaid filled in; cells and zones from what was marked.

Everything here follows from the answer alone; what was not answered stays absent.
"""

from collections.abc import Callable, Mapping, Sequence
from types import MappingProxyType
from typing import Any, Final

from assessments.scenarios.draw import zones_of
from assessments.scenarios.fields import Record
from assessments.scenarios.read_tasks import FAMILIES
from assessments.scenarios.shown import ZoneCells
from assessments.scenarios.spec import Scenario
from assessments.scenarios.tasks import ALL, Task
from courses.pictures import CELLS

Plain = dict[str, object]
Steps = Sequence[Mapping[str, Any]]

NEVER: Final = 999
"""The number of an act that comes after everything, because it never comes."""

ACID_OR_IRON: Final = ("acid", "iron")
BLEACH: Final = "bleach"
LAMP: Final = "lamp"
HALF: Final = 0.5
"""The share of a zone's cells that a group has to hold to speak of that zone."""

DERIVED: Final[Mapping[str, Callable[[Steps], int]]] = MappingProxyType(
    {
        "first_abrade": lambda steps: _first(steps, lambda step: step["family"] == "abrade"),
        "last_abrade": lambda steps: _last(steps, lambda step: step["family"] == "abrade"),
        "first_acid_or_iron": lambda steps: _first(steps, lambda step: step["op"] in ACID_OR_IRON),
        "last_bleach": lambda steps: _last(steps, lambda step: step["op"] == BLEACH),
        "lamp_places": lambda steps: len({step.get("place") for step in steps if step["op"] == LAMP}),
    }
)
"""What follows from an order of acts as a whole, by the name that rules call it."""

DERIVED_NAMES: Final[Mapping[str, str]] = MappingProxyType(
    {
        "first_abrade": "Number of the first abrasive act",
        "last_abrade": "Number of the last abrasive act",
        "first_acid_or_iron": "Number of the first acid or iron remover",
        "last_bleach": "Number of the last bleach",
        "lamp_places": "Places of the lamp",
        "cells": "Marked cells",
        "zones": "Marked zones",
    }
)
"""What people call what is bound of acts and cells."""


def bound_kinds(scenario: Scenario) -> dict[str, Plain]:
    """Return the kinds of what is bound beside, or instead of, plain answers, by the name under ``answer``."""
    kinds: dict[str, Plain] = {}
    ordered, zoned = scenario.the("order"), scenario.the("zones")
    if ordered:
        kinds[ordered.id] = {"t": "list", "item": _step_kind(ordered), "max": ordered.most}
        kinds |= {name: {"t": "int"} for name in DERIVED}
    if zoned:
        kinds["cells"] = {"t": "list", "item": {"t": "enum", "vals": list(CELLS)}, "max": len(CELLS)}
    if zoned and zoned.verdicts:
        kinds["zones"] = {"t": "list", "item": _zone_kind(scenario, zoned), "max": len(CELLS)}
    return kinds


def bound(scenario: Scenario, facts: Record, answers: Mapping[str, Any]) -> dict[str, object]:
    """Return the answers with what is bound of them; what wasn't answered is left out."""
    ordered, zoned = scenario.the("order"), scenario.the("zones")
    found = dict(answers)
    if ordered and ordered.id in found:
        steps = _steps(ordered, found[ordered.id])
        found |= {ordered.id: steps, **{name: derive(steps) for name, derive in DERIVED.items()}}
    if zoned and zoned.id in found:
        found |= _marked(zoned, found[zoned.id], zones_of(scenario, facts))
    return found


def _zones_of_acts(task: Task) -> list[str]:
    zone = next((carry for carry in task.carries if carry.name == "zone"), None)
    return [option.id for option in zone.options if option.id != ALL] if zone else []


def _step_kind(task: Task) -> Plain:
    zones = [*_zones_of_acts(task), ALL]
    fields: Plain = {
        "n": {"t": "int"},
        "op": {"t": "enum", "vals": [act.id for act in task.acts]},
        "zone": {"t": "enum", "vals": zones},
        "family": {"t": "enum", "vals": list(FAMILIES)},
        "covers": {"t": "list", "item": {"t": "enum", "vals": zones}, "max": len(zones)},
        "next_abrade": {"t": "int"},
        "next_chem": {"t": "int"},
    }
    carried = {one.name: {"t": "enum", "vals": [option.id for option in one.options]} for one in task.carries}
    return {"t": "rec", "fields": {**carried, **fields}}


def _zone_kind(scenario: Scenario, task: Task) -> Plain:
    named = {"t": "enum", "vals": list(scenario.zone_names)}
    verdict = {"t": "enum", "vals": [option.id for option in task.options], "opt": True}
    return {"t": "rec", "fields": {"n": named, "verdict": verdict}}


def _steps(task: Task, given: Steps) -> list[Plain]:
    families = [task.act(step["op"]).family for step in given]
    zones = _zones_of_acts(task)
    return [_step(task, n, step, families, zones) for n, step in enumerate(given, start=1)]


def _step(task: Task, n: int, given: Mapping[str, Any], families: list[str], zones: list[str]) -> Plain:
    carried = {one.name: given.get(one.name, one.default) for one in task.carries}
    zone = str(carried.get("zone", ALL))
    later = list(enumerate(families, start=1))[n:]
    return {
        **carried,
        "n": n,
        "op": given["op"],
        "zone": zone,
        "family": families[n - 1],
        "covers": zones if zone == ALL else [zone],
        "next_abrade": next((place for place, family in later if family == "abrade"), NEVER),
        "next_chem": next((place for place, family in later if family == "chem"), 0),
    }


def _first(steps: Steps, holds: Callable[[Mapping[str, Any]], bool]) -> int:
    return next((step["n"] for step in steps if holds(step)), NEVER)


def _last(steps: Steps, holds: Callable[[Mapping[str, Any]], bool]) -> int:
    return next((step["n"] for step in reversed(steps) if holds(step)), 0)


def _marked(task: Task, given: Any, zones: tuple[ZoneCells, ...]) -> dict[str, object]:
    if not task.verdicts:
        return {"cells": given}
    refers = any(zone.verdict == "refer" for zone in zones)
    told = {cell for group in given if not refers or group.get("verdict") == "refer" for cell in group["cells"]}
    spoken = [
        {"n": zone.name, "verdict": group.get("verdict")}
        for zone in zones
        for group in given
        if len(set(zone.required) & set(group["cells"])) >= HALF * len(zone.required)
    ]
    return {"cells": [cell for cell in CELLS if cell in told], "zones": spoken}
