"""Acts as rules read them: numbered, with what was left unsaid filled in, and which abrasive or chemistry follows."""

from collections.abc import Mapping, Sequence
from typing import Any, Final

from assessments.scenarios.fields import Option
from assessments.scenarios.tasks import ALL, Task
from courses.trade.surface import FAMILIES

Plain = dict[str, object]
Steps = Sequence[Mapping[str, Any]]

NEVER: Final = 999
"""The number of an act that comes after everything, because it never comes."""


def act_kind(task: Task) -> Plain:
    """Return the kind of one act of an order, for the schema of rules."""
    carried = {one.name: {"t": "enum", "vals": [option.id for option in one.options]} for one in task.carries}
    return {"t": "rec", "fields": {**carried, **done_fields([act.id for act in task.acts], _zones_of(task))}}


def trial_kind(task: Task) -> Plain:
    """Return the kind of one trial, for the schema of rules; what a trial doesn't carry is absent there."""
    carried = {
        one.name: {"t": "enum", "vals": [option.id for option in one.options], "opt": True} for one in task.carries
    }
    op = {"t": "enum", "vals": [act.id for act in task.acts]}
    return {"t": "rec", "fields": {**carried, "no": {"t": "int"}, "op": op, "changes": {"t": "int"}}}


def done_fields(ops: Sequence[str], zones: Sequence[str]) -> Plain:
    """Return the fields that every act has, whatever it carries."""
    places = [*zones, ALL]
    return {
        "n": {"t": "int"},
        "op": {"t": "enum", "vals": list(ops)},
        "zone": {"t": "enum", "vals": places},
        "family": {"t": "enum", "vals": list(FAMILIES)},
        "covers": {"t": "list", "item": {"t": "enum", "vals": places}, "max": len(places)},
        "next_abrade": {"t": "int"},
        "next_chem": {"t": "int"},
    }


def bound_acts(task: Task, given: Steps) -> list[Plain]:
    """Return the acts of an order, each with what it carries."""
    families = [task.act(step["op"]).family for step in given]
    rows = [{**{one.name: step.get(one.name, one.default) for one in task.carries}, "op": step["op"]} for step in given]
    return numbered(rows, families, _zones_of(task))


def numbered(rows: Sequence[Plain], families: Sequence[str], zones: Sequence[str]) -> list[Plain]:
    """Return acts with their numbers, the zones they lie on, and what comes next."""
    return [
        {**row, **_placed(str(row.get("zone", ALL)), zones), **_followed(n, families)}
        for n, row in enumerate(rows, start=1)
    ]


def bound_trials(task: Task, given: Steps) -> list[Plain]:
    """Return every trial, those of the log first, with how many things differ from the one before.

    Another kind of trial is one change, and so is each thing that both carry and that differs.
    """
    rows = [{"op": step["op"], **_carried(task, step)} for step in (*task.laid, *given)]
    return [
        {**row, "no": n, "changes": _changes(row, rows[n - 2]) if n > 1 else 0} for n, row in enumerate(rows, start=1)
    ]


def _carried(task: Task, step: Mapping[str, Any]) -> Plain:
    carries = task.act(step["op"]).carries
    return {one.name: step.get(one.name, one.default) for one in task.carries if one.name in carries}


def _changes(row: Plain, before: Plain) -> int:
    return sum(row[name] != before[name] for name in {*row} & {*before})


def _zones_of(task: Task) -> list[str]:
    options: tuple[Option, ...] = next((carry.options for carry in task.carries if carry.name == "zone"), ())
    return [option.id for option in options if option.id != ALL]


def _placed(zone: str, zones: Sequence[str]) -> Plain:
    return {"zone": zone, "covers": list(zones) if zone == ALL else [zone]}


def _followed(n: int, families: Sequence[str]) -> Plain:
    later = list(enumerate(families, start=1))[n:]
    return {
        "n": n,
        "family": families[n - 1],
        "next_abrade": next((place for place, family in later if family == "abrade"), NEVER),
        "next_chem": next((place for place, family in later if family == "chem"), 0),
    }
