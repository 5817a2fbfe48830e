"""Plans as rules read them: steps with every parameter filled in, and what the panel came to under them."""

from collections.abc import Mapping, Sequence
from typing import Any, Final

from assessments.marking.acts import Plain, Steps, done_fields, numbered
from assessments.scenarios.draw import shop_of, surface_of
from assessments.scenarios.fields import Field, Record
from assessments.scenarios.planned import model_fields, plan_parameters
from assessments.scenarios.spec import Scenario
from assessments.scenarios.tasks import Task
from assessments.scenarios.worked import outcome_of, worked
from courses.trade.surface import Parameter, Step, read_plan, simulate

NONE: Final = "none"
"""What a choice reads on a step that doesn't take it."""

UNTIL_CLEAR: Final = "until_clear"


def plan_kind(task: Task) -> Plain:
    """Return the kind of one step of a plan, for the schema of rules."""
    carried = {name: _kind(one) for name, one in plan_parameters(task.ops).items()}
    beside: Plain = {"panel_degc": {"t": "num", "unit": "degc"}, "top_rpm": {"t": "int"}, UNTIL_CLEAR: {"t": "bool"}}
    return {"t": "rec", "fields": {**carried, **beside, **done_fields(task.ops, [one.id for one in task.options])}}


def bound_plan(scenario: Scenario, task: Task, facts: Record, given: Steps) -> list[Plain]:
    """Return the steps of a plan, what was left unsaid filled in."""
    surface = surface_of(scenario, facts)
    names = plan_parameters(task.ops)
    steps = read_plan(given)  # also where the panel isn't: rules judge those, the model does nothing there
    states = simulate(surface, steps, shop_of(scenario).constants, optics="none").states
    rows = [
        {**_row(names, step), "zone": step.zone, "panel_degc": state.panel_degc}
        for step, state in zip(steps, states, strict=True)
    ]
    return numbered(rows, [step.family for step in steps], [one.id for one in task.options])


def model_of(scenario: Scenario, task: Task, facts: Record, plan: Sequence[Mapping[str, Any]]) -> Plain:
    """Return what a plan comes to on the panel of these facts, as rules read it."""
    run = worked(scenario, facts, plan)
    shares = {name: round(getattr(run.outcome, name), 3) for name in ("oxidised", "swirl_left")}
    came = {**outcome_of(run), **shares}
    came["score"] = round(came["score"], 6)
    return {field.name: _narrowed(field, came[field.name]) for field in model_fields(task.options)}


def _narrowed(field: Field, value: Any) -> Any:
    """Return a value with the columns that rules may read."""
    names = [column.name for column in field.columns]
    return [{name: row[name] for name in names} for row in value] if names else value


def _kind(one: Parameter) -> Plain:
    if one.kind == "choice" or (one.kind == "number" and one.options):
        return {"t": "enum", "vals": [*(option for option, _words in one.options), NONE]}
    if one.kind == "whole":
        return {"t": "int"}
    if one.kind == "numbers":
        return {"t": "list", "item": {"t": "num", "unit": one.unit}, "max": 20}
    if one.kind == "text":
        return {"t": "str"}
    unit: Plain = {"unit": one.unit} if one.unit != "ratio" else {}
    return {"t": "num", **unit, **({"opt": True} if one.default is None else {})}


def _row(names: Mapping[str, Parameter], step: Step) -> Plain:
    said = {name: getattr(step, name) for name in names}
    row: Plain = {name: _value(names[name], value) for name, value in said.items() if value is not None}
    return {**row, "op": step.op, "top_rpm": round(max(step.speeds_rpm, default=0)), UNTIL_CLEAR: step.until_clear}


def _value(one: Parameter, value: Any) -> Any:
    """Return a setting as rules read it; of a disc that did some area already, that it is used."""
    if one.kind == "numbers":
        return list(value)
    if one.kind == "choice" or (one.kind == "number" and one.options):
        return ("used" if isinstance(value, float) else str(value)) or NONE
    return value
