"""Cells of a picture that were marked; where verdicts are asked, in groups, each with its verdict."""

from collections.abc import Mapping, Sequence

from assessments.answers.choice import offered
from assessments.answers.errors import AnswerRefused, UnknownOption
from assessments.scenarios.tasks import Task
from courses.pictures import CELLS
from courses.trade.errors import offer
from courses.trade.units import Preferences

Group = dict[str, list[str] | str]


def parse(task: Task, raw: object, _prefs: Preferences) -> list[str] | list[Group]:
    """Return the cells in reading order, or the groups in the order of their verdicts; an empty list marks nothing.

    Raises UnknownOption for a cell or verdict that isn't there, AnswerRefused for a cell in two groups.

    >>> cells = Task("cells", "zones", "Mark", "Where?", picture="panel")
    >>> parse(cells, ["B2", "A1", "B2"], Preferences.metric())
    ['A1', 'B2']
    """
    if not isinstance(raw, list | tuple):
        raise AnswerRefused(task.id, f"{raw!r:.60} is no list of cells; a cell is called A1 to D6.")
    if not task.verdicts:
        return _cells(task, raw)
    if not all(isinstance(group, Mapping) for group in raw):
        raise AnswerRefused(task.id, f"{raw!r:.60} is no list of groups; give each as {{'cells': […], 'verdict': …}}.")
    return _groups(task, raw)


def read(task: Task, values: Sequence[str]) -> list[str] | list[Group]:
    """Return what was marked from the texts a page sends: ``A1``, or ``A1:refer`` where verdicts are asked."""
    if not task.verdicts:
        return list(values)
    groups: dict[str, list[str]] = {}
    for value in values:
        cell, _, verdict = value.partition(":")
        groups.setdefault(verdict, []).append(cell)
    marked: list[Group] = [{"cells": cells, "verdict": verdict} for verdict, cells in groups.items()]
    return marked


def written(marked: Sequence[str] | Sequence[Mapping[str, object]]) -> list[str]:
    """Return what was marked as the texts a page sends.

    >>> written([{"cells": ["A1", "A2"], "verdict": "refer"}])
    ['A1:refer', 'A2:refer']
    """
    return [text for one in marked for text in ([one] if isinstance(one, str) else _of_group(one))]


def _of_group(group: Mapping[str, object]) -> list[str]:
    cells = group["cells"]
    return [f"{cell}:{group.get('verdict', '')}" for cell in (cells if isinstance(cells, list | tuple) else ())]


def _cells(task: Task, raw: object) -> list[str]:
    if not isinstance(raw, list | tuple) or not all(isinstance(cell, str) for cell in raw):
        raise AnswerRefused(task.id, f"{raw!r:.60} is no list of cells; a cell is called A1 to D6.")
    marked = {offered(task, cell) for cell in raw}
    return [cell for cell in CELLS if cell in marked]


def _groups(task: Task, raw: Sequence[Mapping[object, object]]) -> list[Group]:
    verdicts = [option.id for option in task.options]
    by_verdict: dict[str, list[str]] = {}
    taken: dict[str, str] = {}
    for group in raw:
        verdict = str(group.get("verdict") or "")
        if verdict and verdict not in verdicts:
            raise UnknownOption(task.id, f"{verdict[:60]!r} is no verdict here; {offer(verdict, verdicts)}")
        for cell in _cells(task, group.get("cells", [])):
            if taken.setdefault(cell, verdict) != verdict:
                raise AnswerRefused(task.id, f"{cell} is marked twice, with two verdicts. Keep one of them.")
            by_verdict.setdefault(verdict, []).append(cell)
    kept = {verdict: _cells(task, by_verdict[verdict]) for verdict in [*verdicts, ""] if verdict in by_verdict}
    return [{"cells": cells, **({"verdict": verdict} if verdict else {})} for verdict, cells in kept.items()]
