"""Answers as rules read them: acts numbered, with what was left unsaid filled in; cells and zones from what was marked.

Everything here follows from the answer alone; what was not answered stays absent.
"""

from collections.abc import Callable, Mapping
from types import MappingProxyType
from typing import Any, Final

from assessments.marking.acts import NEVER, Plain, Steps, act_kind, bound_acts, bound_trials, trial_kind
from assessments.marking.plans import bound_plan, plan_kind
from assessments.scenarios.draw import zones_of
from assessments.scenarios.fields import Record
from assessments.scenarios.shown import ZoneCells
from assessments.scenarios.spec import Scenario
from assessments.scenarios.tasks import Task
from courses.pictures import CELLS

__all__ = ["DERIVED", "DERIVED_NAMES", "NEVER", "Plain", "bound", "bound_kinds"]

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
    ordered, planned, zoned = scenario.the("order"), scenario.the("plan"), scenario.the("zones")
    if ordered:
        item = trial_kind(ordered) if ordered.spots else act_kind(ordered)
        kinds[ordered.id] = {"t": "list", "item": item, "max": ordered.most + len(ordered.laid)}
    if planned:
        kinds[planned.id] = {"t": "list", "item": plan_kind(planned), "max": planned.most}
    if planned or (ordered and not ordered.spots):
        kinds |= {name: {"t": "int"} for name in DERIVED}
    if zoned:
        kinds["cells"] = {"t": "list", "item": {"t": "enum", "vals": list(CELLS)}, "max": len(CELLS)}
    if zoned and zoned.verdicts:
        kinds["zones"] = {"t": "list", "item": _zone_kind(scenario, zoned), "max": len(CELLS)}
    return kinds


def bound(scenario: Scenario, facts: Record, answers: Mapping[str, Any]) -> dict[str, object]:
    """Return the answers with what is bound of them; what wasn't answered is left out."""
    found = dict(answers)
    for task in scenario.tasks:
        if task.id in found and task.kind in ("order", "plan"):
            found |= _done(scenario, task, facts, found[task.id])
    zoned = scenario.the("zones")
    if zoned and zoned.id in found:
        found |= _marked(zoned, found[zoned.id], zones_of(scenario, facts))
    return found


def _done(scenario: Scenario, task: Task, facts: Record, given: Steps) -> dict[str, object]:
    """Return what is bound of acts, of trials, or of the steps of a plan."""
    if task.spots:
        return {task.id: bound_trials(task, given)}
    steps = bound_plan(scenario, task, facts, given) if task.kind == "plan" else bound_acts(task, given)
    return {task.id: steps, **{name: derive(steps) for name, derive in DERIVED.items()}}


def _zone_kind(scenario: Scenario, task: Task) -> Plain:
    named = {"t": "enum", "vals": list(scenario.zone_names)}
    verdict = {"t": "enum", "vals": [option.id for option in task.options], "opt": True}
    return {"t": "rec", "fields": {"n": named, "verdict": verdict}}


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
