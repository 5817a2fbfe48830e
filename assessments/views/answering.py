"""The fields of tasks that are lists: readings to ask for, acts in order, rows, and the cells of a picture."""

from collections.abc import Callable, Mapping, Sequence
from typing import Any

from django.utils.translation import gettext as _

from assessments.answers import order
from assessments.scenarios.fields import Option, Record
from assessments.scenarios.spec import Scenario
from assessments.scenarios.story import Show, told, with_units
from assessments.scenarios.tasks import Task
from courses.pictures import CELLS

Line = dict[str, Any]


def list_line(task: Task, sent: Sequence[str], spec: Scenario, facts: Record, show: Show) -> Line:
    """Return what the field of a list shows besides its title; `sent` is the answer as a page sends it."""
    return LINES[task.kind](task, sent, spec, facts, show) if task.kind in LINES else {}


def _ask(task: Task, sent: Sequence[str], spec: Scenario, facts: Record, show: Show) -> Line:
    asked = [one for one in sent if one in task.option_ids]
    readings = [
        {
            "id": one.id,
            "words": with_units(one.words, show),
            "minutes": one.minutes,
            "place": asked.index(one.id) + 1 if one.id in asked else 0,
            "told": told(one.tells, facts, spec.facts, show, asked) if one.id in asked else "",
        }
        for one in task.readings
    ]
    spent = sum(task.reading(one).minutes for one in asked)
    return {"readings": readings, "asked": asked, "spent": spent}


def _order(task: Task, sent: Sequence[str], spec: Scenario, facts: Record, show: Show) -> Line:
    known = {act.id for act in task.acts}
    steps = [step for step in order.read(sent) if step["op"] in known]
    lines = [
        {"n": n, "token": token, "words": act_words(task, step, show)}
        for n, (step, token) in enumerate(zip(steps, order.written(steps), strict=True), start=1)
    ]
    acts = [{"id": act.id, "words": with_units(act.words, show), "carries": " ".join(act.carries)} for act in task.acts]
    carries = [
        {"name": one.name, "label": one.label, "default": one.default, "options": _worded(one.options, show)}
        for one in task.carries
    ]
    blank = {"n": 0, "token": "", "words": ""}
    full = len(steps) >= task.most
    return {"steps": lines, "blank": blank, "acts": acts, "carries": carries, "full": full, "most": task.most}


def act_words(task: Task, step: Mapping[str, str], show: Show) -> str:
    """Return an act with what it carries in words."""
    act = task.act(step["op"])
    carried = [
        option.words
        for carry in task.carries
        for option in carry.options
        if carry.name in act.carries and option.id == step.get(carry.name, carry.default)
    ]
    return with_units(", ".join([act.words, *carried]), show)


def _rows(task: Task, sent: Sequence[str], spec: Scenario, facts: Record, show: Show) -> Line:
    rows = [
        {
            "n": row.n,
            "words": told(row.tells, facts, spec.facts, show),
            "columns": [
                {
                    "name": column.name,
                    "label": column.label,
                    "options": [
                        {**one, "token": f"{row.n}:{column.name}:{one['id']}"} for one in _worded(column.options, show)
                    ],
                }
                for column in task.columns
            ],
        }
        for row in task.rows
    ]
    return {"rows": rows, "sent": list(sent)}


def _zones(task: Task, sent: Sequence[str], spec: Scenario, facts: Record, show: Show) -> Line:
    groups = _worded(task.options, show) if task.verdicts else [{"id": "", "words": ""}]
    grids = [
        {**group, "n": n, "cells": [_cell(cell, group, sent) for cell in CELLS]}
        for n, group in enumerate(groups, start=1)
    ]
    return {"grids": grids, "verdicts": task.verdicts}


def _cell(cell: str, group: Mapping[str, str], sent: Sequence[str]) -> Line:
    token = f"{cell}:{group['id']}" if group["id"] else cell
    label = _("Row %(row)s, column %(column)s") % {"row": cell[0], "column": cell[1]}
    return {
        "cell": cell,
        "token": token,
        "label": f"{label}, {group['words']}" if group["words"] else label,
        "chosen": token in sent,
    }


def _worded(options: Sequence[Option], show: Show) -> list[dict[str, str]]:
    return [{"id": one.id, "words": with_units(one.words, show)} for one in options]


LINES: dict[str, Callable[[Task, Sequence[str], Scenario, Record, Show], Line]] = {
    "ask": _ask,
    "order": _order,
    "rows": _rows,
    "zones": _zones,
}
