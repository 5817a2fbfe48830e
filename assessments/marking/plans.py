"""Plans as rules read them: steps with every parameter filled in, and what the panel came to under them."""

from collections.abc import Iterator, Mapping, Sequence
from typing import Any, Final

from assessments.marking.acts import Plain, Steps, done_fields, numbered
from assessments.scenarios.draw import surface_of
from assessments.scenarios.fields import Record
from assessments.scenarios.planned import ALL, plan_parameters
from assessments.scenarios.spec import Scenario
from assessments.scenarios.tasks import Task
from assessments.scenarios.worked import outcome_of, worked
from courses.trade.surface import Parameter, Step, read_plan

WET: Final = ("prerinse", "wash", "rinse", "flush_prove")
WATER_DEGC: Final = 20.0
"""Water from the hose, and what it brings a hot panel down to: common practice."""

NONE: Final = "none"
"""What a choice reads on a step that doesn't take it."""

UNTIL_CLEAR: Final = "until_clear"
VERDICTS: Final = ("pass", "redo", "harm")

_NUMBERS: Final[Mapping[str, str]] = {
    **dict.fromkeys(("film_um", "removed_um", "tail_um", "own_tail_um", "trail_um"), "um"),
    "minutes": "min", "heat_degc": "degc", "gloss60": "gu", "gloss20": "gu",
}
_OF_ZONES: Final = ("film_um", "removed_um", "tail_um", "trail_um")


def plan_kind(task: Task) -> Plain:
    """Return the kind of one step of a plan, for the schema of rules."""
    carried = {name: _kind(one) for name, one in plan_parameters(task.ops).items()}
    beside: Plain = {"panel_degc": {"t": "num", "unit": "degc"}, "top_rpm": {"t": "int"}, UNTIL_CLEAR: {"t": "bool"}}
    return {"t": "rec", "fields": {**carried, **beside, **done_fields(task.ops, [one.id for one in task.options])}}


def bound_plan(scenario: Scenario, task: Task, facts: Record, given: Steps) -> list[Plain]:
    """Return the steps of a plan, what was left unsaid filled in."""
    surface = surface_of(scenario, facts)
    names = plan_parameters(task.ops)
    steps = read_plan([{name: value for name, value in step.items() if name != "zone"} for step in given], surface)
    warm = _warmth(steps, surface.panel_degc)
    rows = [
        {**_row(names, step), "zone": said.get("zone", ALL), "panel_degc": degc}
        for step, said, degc in zip(steps, given, warm, strict=True)
    ]
    return numbered(rows, [step.family for step in steps], [one.id for one in task.options])


def model_kinds(task: Task) -> Plain:
    """Return the kinds of what a plan comes to, by the name under ``model``."""
    number: dict[str, Plain] = {name: {"t": "num", "unit": unit, "opt": True} for name, unit in _NUMBERS.items()}
    zone: Plain = {name: {"t": "num", "unit": "um"} for name in _OF_ZONES}
    named = dict.fromkeys((*(one.id for one in task.options), "main", "edge"))
    zone |= {"name": {"t": "enum", "vals": list(named)}}
    left: Plain = {"kind": {"t": "str"}, "depth_um": {"t": "num", "unit": "um"}, "left": {"t": "num"}}
    return {
        **number,
        **{name: {"t": "num", "opt": True} for name in ("score", "oxidised", "swirl_left")},
        "verdict": {"t": "enum", "vals": list(VERDICTS), "opt": True},
        "zones": {"t": "list", "item": {"t": "rec", "fields": {**zone, "verdict": _VERDICT}}, "max": 8, "opt": True},
        "residual": {"t": "list", "item": {"t": "rec", "fields": left}, "max": 40, "opt": True},
    }


_VERDICT: Final[Plain] = {"t": "enum", "vals": list(VERDICTS)}


def model_of(scenario: Scenario, facts: Record, plan: Sequence[Mapping[str, Any]]) -> Plain:
    """Return what a plan comes to on the panel of these facts, as rules read it."""
    run = worked(scenario, facts, plan)
    came = outcome_of(run)
    return {
        **{name: came[name] for name in (*_NUMBERS, "score", "verdict")},
        "zones": [{name: one[name] for name in ("name", *_OF_ZONES, "verdict")} for one in came["zones"]],
        "residual": came["residual"],
        "oxidised": round(run.outcome.oxidised, 3),
        "swirl_left": round(run.outcome.swirl_left, 3),
    }


def _warmth(steps: Sequence[Step], panel_degc: float) -> Iterator[float]:
    """Walk the panel's temperature as each step begins: water cools it, an hour of waiting brings it to the air."""
    for step in steps:
        yield panel_degc
        if step.op in WET:
            panel_degc = min(panel_degc, WATER_DEGC)
        if step.op == "wait" and step.hours >= 1:
            panel_degc = step.warm_degc


def _kind(one: Parameter) -> Plain:
    if one.kind == "choice" or (one.kind == "number" and one.options):
        return {"t": "enum", "vals": [*(option for option, _words in one.options), NONE]}
    if one.kind == "whole":
        return {"t": "int"}
    if one.kind == "numbers":
        return {"t": "list", "item": {"t": "num", "unit": one.unit}, "max": 20}
    if one.kind == "text":
        return {"t": "str"}
    return {"t": "num", "unit": one.unit} if one.unit != "ratio" else {"t": "num"}


def _row(names: Mapping[str, Parameter], step: Step) -> Plain:
    row: Plain = {name: _value(one, getattr(step, name)) for name, one in names.items()}
    return {**row, "op": step.op, "top_rpm": round(max(step.speeds_rpm, default=0)), UNTIL_CLEAR: step.until_clear}


def _value(one: Parameter, value: Any) -> Any:
    """Return a setting as rules read it; of a disc that did some area already, that it is used."""
    if one.kind == "numbers":
        return list(value)
    if one.kind == "choice" or (one.kind == "number" and one.options):
        return ("used" if isinstance(value, float) else str(value)) or NONE
    return value
