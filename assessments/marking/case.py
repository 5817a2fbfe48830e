"""The case: facts, answer and key bound together, under one schema that the rules were checked against.

Answers are rounded to what their task shows before anything is compared, so that page, finding and verdict all speak
of the same number.
"""

from collections.abc import Iterable, Mapping

from assessments.marking.bound import Plain, bound, bound_kinds
from assessments.rules import Schema
from assessments.scenarios.fields import Field, Record
from assessments.scenarios.register import sketch_of
from assessments.scenarios.spec import Scenario
from courses.trade.units import rounded

__all__ = ["Plain", "case_of", "drawn_schema_of", "rests_of", "schema_of"]


def schema_of(scenario: Scenario) -> Schema:
    """Return the schema of whole cases: what rules may name, with kinds, units, choices and what may be missing."""
    plain = {task.id: _kind(task.as_field()) for task in scenario.tasks}
    answer = {name: {**kind, "opt": True} for name, kind in (plain | bound_kinds(scenario)).items()}
    fields = {"facts": _record(scenario.facts), "key": _record(scenario.key_fields), "answer": _rec(answer)}
    if scenario.model:
        fields["model"] = _rec({one.field.name: {**_kind(one.field), "opt": True} for one in scenario.model})
    return Schema.of(_rec(fields))


def rests_of(scenario: Scenario) -> Mapping[str, tuple[str, ...]]:
    """Return on which answers each value of the model rests."""
    return {f"model.{one.field.name}": tuple(f"answer.{task}" for task in one.rests) for one in scenario.model}


def drawn_schema_of(scenario: Scenario) -> Schema:
    """Return the schema of cases nobody answered yet: facts and key, which exemplars and ``clear_of`` may name."""
    return Schema.of(_rec({"facts": _record(scenario.facts), "key": _record(scenario.key_fields)}))


def case_of(scenario: Scenario, facts: Record, key: Record, answers: Mapping[str, object]) -> Plain:
    """Return the case as plain values, quantities of the answer rounded to the decimals of their task."""
    decimals = {task.id: task.decimals for task in scenario.tasks if task.kind == "quantity"}
    answer = {
        task_id: rounded(value, decimals[task_id]) if isinstance(value, float) else value
        for task_id, value in answers.items()
    }
    case: Plain = {"facts": facts.as_json(), "key": key.as_json(), "answer": bound(scenario, facts, answer)}
    if scenario.model:
        case["model"] = _model(scenario, facts, key, answers)
    return case


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
