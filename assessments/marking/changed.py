"""How an exemplar changes an order of acts, marked zones or rows: written as a difference from the key."""

from collections.abc import Mapping, Sequence
from types import MappingProxyType
from typing import Any, Final

from assessments.scenarios.spec import Exemplar
from assessments.scenarios.tasks import Task

EMPTY: Final[Mapping[str, Any]] = MappingProxyType({})
"""No numbers of rows were worked."""


def changed_list(exemplar: Exemplar, task: Task, value: Any, numbers: Mapping[str, Any] = EMPTY) -> Any:
    """Return an answer as the exemplar gives it; what the exemplar says nothing of stays as it is.

    ``numbers`` holds the numbers of rows that were worked from facts and key, by the expression the exemplar names.
    """
    match task.kind:
        case "order" | "plan":
            return _acts(exemplar, task.id, value)
        case "zones":
            return _zones(exemplar, task, value)
        case "rows":
            return _rows(exemplar.rows.get(task.id, {}), value, numbers)
        case _:
            return value


def _acts(exemplar: Exemplar, task_id: str, acts: Sequence[Mapping[str, Any]]) -> list[Any]:
    kept = [act for act in acts if act["op"] not in exemplar.without.get(task_id, ())]
    return [*_more(exemplar.before, task_id), *kept, *_more(exemplar.after, task_id)]


def _more(acts: Mapping[str, object], task_id: str) -> list[Any]:
    found = acts.get(task_id, [])
    return list(found) if isinstance(found, list | tuple) else []


def _zones(exemplar: Exemplar, task: Task, marked: Sequence[Any]) -> list[Any]:
    step = 2 if exemplar.half.get(task.id) else 1
    if not task.verdicts:
        return list(marked)[::step]
    verdict = exemplar.verdict.get(task.id)
    return [{"cells": list(group["cells"])[::step], "verdict": verdict or group.get("verdict")} for group in marked]


def _rows(over: Mapping[str, Any], rows: Sequence[Mapping[str, Any]], worked: Mapping[str, Any]) -> list[Any]:
    numbers = over.get("n", [row["n"] for row in rows])
    numbers = worked[numbers] if isinstance(numbers, str) else numbers
    said = {name: option for name, option in over.items() if name != "n"}
    return [{**row, **said} if row["n"] in numbers else dict(row) for row in rows]
