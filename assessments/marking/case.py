"""The case: facts, answer and key bound together, under one schema that the rules were checked against.

Answers are rounded to what their task shows before anything is compared, so that page, finding and verdict all speak
of the same number.
"""

from collections.abc import Iterable, Mapping
from typing import Any

from assessments.marking.bound import Plain, bound, bound_kinds
from assessments.marking.plans import model_of
from assessments.rules import Schema
from assessments.scenarios.fields import Field, Record
from assessments.scenarios.planned import model_fields
from assessments.scenarios.register import sketch_of
from assessments.scenarios.spec import Scenario
from courses.trade.units import rounded

__all__ = ["Plain", "case_of", "drawn_schema_of", "judged_key", "rests_of", "schema_of"]


def schema_of(scenario: Scenario) -> Schema:
    """Return the schema of whole cases: what rules may name, with kinds, units, choices and what may be missing."""
    plain = {task.id: _kind(task.as_field()) for task in scenario.tasks}
    answer = {name: {**kind, "opt": True} for name, kind in (plain | bound_kinds(scenario)).items()}
    fields = {"facts": _record(scenario.facts), "key": _record(_judged(scenario)), "answer": _rec(answer)}
    if scenario.model_fields:
        fields["model"] = _rec({field.name: {**_kind(field), "opt": True} for field in scenario.model_fields})
    return Schema.of(_rec(fields))


def rests_of(scenario: Scenario) -> Mapping[str, tuple[str, ...]]:
    """Return on which answers each value of the model rests."""
    planned = scenario.the("plan")
    worked = model_fields(planned.options) if planned else ()
    of_plan = {f"model.{field.name}": (f"answer.{planned.id}",) for field in worked if planned}
    own = {f"model.{one.field.name}": tuple(f"answer.{task}" for task in one.rests) for one in scenario.model}
    return of_plan | own


def drawn_schema_of(scenario: Scenario) -> Schema:
    """Return the schema of cases nobody answered yet: facts and key, which exemplars and ``clear_of`` may name."""
    return Schema.of(_rec({"facts": _record(scenario.facts), "key": _record(_judged(scenario))}))


def case_of(scenario: Scenario, facts: Record, key: Record, answers: Mapping[str, object]) -> Plain:
    """Return the case as plain values, quantities of the answer rounded to the decimals of their task."""
    decimals = {task.id: task.decimals for task in scenario.tasks if task.kind == "quantity"}
    answer = {
        task_id: rounded(value, decimals[task_id]) if isinstance(value, float) else value
        for task_id, value in answers.items()
    }
    case: Plain = {"facts": facts.as_json(), "key": judged_key(scenario, key), "answer": bound(scenario, facts, answer)}
    planned = scenario.the("plan")
    if scenario.model or planned:
        given = _rows(answers[planned.id]) if planned and planned.id in answers else None
        came = {} if planned is None or given is None else model_of(scenario, planned, facts, given)
        case["model"] = {**came, **_model(scenario, facts, key, answers)}
    return case


def _rows(answer: object) -> list[Mapping[str, Any]]:
    return [row for row in answer if isinstance(row, Mapping)] if isinstance(answer, list | tuple) else []


def judged_key(scenario: Scenario, key: Record) -> Plain:
    """Return the key as rules read it: its plan is one of many, so no rule compares with it."""
    known = {field.name for field in _judged(scenario)}
    return {name: value for name, value in key.as_json().items() if name in known}


def _judged(scenario: Scenario) -> tuple[Field, ...]:
    planned = scenario.the("plan")
    return tuple(field for field in scenario.key_fields if planned is None or field.name != planned.id)


def _model(scenario: Scenario, facts: Record, key: Record, answers: Mapping[str, object]) -> Plain:
    """Return what is worked from the answer, without what rests on a task that nobody answered."""
    fields = [one.field for one in scenario.model if all(task in answers for task in one.rests)]
    if not fields:
        return {}
    worked = sketch_of(scenario).model(facts, key, answers)
    return Record.of(fields, {field.name: worked[field.name] for field in fields}, where="model").as_json()


def _rec(fields: Mapping[str, object]) -> Plain:
    return {"t": "rec", "fields": dict(fields)}


def _record(fields: Iterable[Field]) -> Plain:
    return _rec({field.name: _kind(field) for field in fields})


def _kind(field: Field) -> Plain:
    kind = _bare_kind(field)
    return {**kind, "opt": True} if field.optional else kind


def _bare_kind(field: Field) -> Plain:
    match field.kind:
        case "quantity":
            return {"t": "num", "unit": field.unit}
        case "whole":
            return {"t": "int"}
        case "choice":
            return {"t": "enum", "vals": list(field.option_ids)}
        case "yes_no":
            return {"t": "bool"}
        case "text":
            return {"t": "str"}
        case _:
            item = _record(field.columns) if field.items is None else _kind(field.items)
            return {"t": "list", "item": item, "max": field.most}
