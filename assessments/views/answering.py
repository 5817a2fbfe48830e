"""The fields of tasks that are lists: readings to ask for, acts in order, rows, and the cells of a picture."""

from collections.abc import Callable, Mapping, Sequence
from typing import Any

from django.utils.translation import gettext as _

from assessments.answers import order
from assessments.forms.building import BUILT, builder_of
from assessments.scenarios.fields import Option, Record
from assessments.scenarios.spec import Scenario
from assessments.scenarios.story import Show, told, with_units
from assessments.scenarios.tasks import Task
from assessments.scenarios.worked import spot_told
from courses.forms.steps import Builder
from courses.pictures import CELLS

Line = dict[str, Any]


def list_line(task: Task, sent: Sequence[str], spec: Scenario, facts: Record, show: Show, opened: str = "") -> Line:
    """Return what the field of a list shows besides its title; `sent` is the answer as a page sends it.

    `opened` is the act whose settings are to be filled in, or the number of the step that is changed.
    """
    if task.kind in BUILT:
        return _steps(task, sent, spec, facts, show, opened)
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


def _steps(task: Task, sent: Sequence[str], spec: Scenario, facts: Record, show: Show, opened: str) -> Line:
    builder = builder_of(task, show)
    line: Line = {"list": builder.page(sent, opened), "spots": task.spots}
    if task.spots:
        line["laid"] = _laid(task, sent, spec, facts, builder)
    return line


def _laid(task: Task, sent: Sequence[str], spec: Scenario, facts: Record, builder: Builder) -> list[Line]:
    """Return every spot with what it shows, those of the log first."""
    known = [one for one in order.read(sent) if one["op"] in {act.id for act in task.acts}]
    spots = [*task.laid, *known]
    words = [builder.words(one) for one in order.written(spots)]
    told = [spot_told(spec, facts, task, one) for one in spots]
    return [{"n": n, "words": words[n - 1], "told": told[n - 1]} for n in range(1, len(spots) + 1)]


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
    "rows": _rows,
    "zones": _zones,
}
