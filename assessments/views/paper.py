"""The page of an open attempt: the job, its facts and a form for each task."""

import uuid
from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime, timedelta
from typing import Any

from django.http import HttpRequest
from django.urls import reverse
from django.utils import timezone
from django.utils.translation import gettext as _

from assessments.answers.sheet import NONE_OF_THESE
from assessments.journey import facts_of
from assessments.models import Answer, Attempt
from assessments.scenarios.spec import Task
from assessments.scenarios.story import Show, facts_shown, story, tables_shown, with_units, worded
from courses.trade.units import Preferences, shown, symbol, to_shown


def show_for(prefs: Preferences) -> Show:
    """Return how a reader with these units sees a quantity of a scenario."""

    def show(value: float, unit: str, decimals: int) -> str:
        return shown(value, unit, prefs, max(decimals, 1) if unit in ("degc", "K") else decimals)

    return show


@dataclass(frozen=True, slots=True)
class Side:
    """One of two answers to the same task, as it can be taken."""

    words: str
    at: datetime
    fields: tuple[tuple[str, str], ...]
    client_key: uuid.UUID = field(default_factory=uuid.uuid4)


@dataclass(frozen=True, slots=True)
class Conflict:
    """Two answers given beside each other."""

    mine: Side
    theirs: Side
    seen: int


@dataclass(frozen=True, slots=True)
class Sheet:
    """How the answers of one attempt are read and written back into a page, for one reader."""

    prefs: Preferences

    @property
    def show(self) -> Show:
        """Return how this reader sees a quantity."""
        return show_for(self.prefs)

    def typed(self, task: Task, value: Any) -> str:
        """Return a value as its field holds it."""
        if value is None:
            return ""
        if task.kind == "quantity":
            number = to_shown(float(value), task.unit, self.prefs)[0]
            return f"{number:.{max(task.decimals, 1)}f}".rstrip("0").rstrip(".")
        return str(value).lower() if isinstance(value, bool) else str(value)

    def words(self, task: Task, value: Any) -> str:
        """Return a value in words."""
        return _("not answered") if value is None else with_units(worded(task.as_field(), value, self.show), self.show)

    def side(self, task: Task, answer: Answer) -> Side:
        """Return an answer as one of two that can be taken."""
        return Side(self.words(task, answer.value), answer.received_at, tuple(self.fields(task, answer.value)))

    def fields(self, task: Task, value: Any) -> list[tuple[str, str]]:
        """Return the fields that send a value again, without a loss by rounding."""
        if value is None:
            return [("value", "")]
        if task.kind == "many":
            return [("value", one) for one in value] or [("value", NONE_OF_THESE)]
        if task.kind == "quantity":
            return [("value", f"{value!r} {task.unit}")]
        return [("value", self.typed(task, value))]


def task_lines(attempt: Attempt, sheet: Sheet, given: Mapping[str, Answer], **states: Any) -> list[dict[str, Any]]:
    """Return each task with the answer that counts; `states` adds what one task has to say, by its id."""
    lines = []
    for number, task in enumerate(attempt.scenario.spec.tasks, start=1):
        answer = given.get(task.id)
        value = answer.value if answer else None
        chosen = value if isinstance(value, list) else [value]
        lines.append(
            {
                "id": task.id,
                "kind": task.kind,
                "number": number,
                "title": task.title,
                "ask": with_units(task.ask, sheet.show),
                "hint": with_units(task.hint, sheet.show),
                "unit": symbol(task.unit, sheet.prefs) if task.unit else "",
                "value": sheet.typed(task, value) if task.kind != "many" else "",
                "options": [
                    {"id": one.id, "words": with_units(one.words, sheet.show), "chosen": one.id in chosen}
                    for one in task.options
                ],
                "none": value == [],
                "seq": answer.sequence if answer else 0,
                "client_key": uuid.uuid4(),
                "saved_at": answer.received_at if answer and value is not None else None,
                **states.get(task.id, {}),
            }
        )
    return lines


def conflicts_of(attempt: Attempt, sheet: Sheet, given: Mapping[str, Answer]) -> dict[str, Conflict]:
    """Return by task the newest answer that was kept beside the one that counts, where it is newer than that."""
    beside = {one.task: one for one in attempt.answers.beside().order_by("pk")}
    tasks = {task.id: task for task in attempt.scenario.spec.tasks}
    return {
        name: Conflict(sheet.side(tasks[name], one), sheet.side(tasks[name], given[name]), given[name].sequence or 0)
        for name, one in beside.items()
        if name in given and one.pk > given[name].pk
    }


def page_of(request: HttpRequest, attempt: Attempt, prefs: Preferences, **states: Any) -> dict[str, Any]:
    """Return what the page of an open attempt shows; nothing of the key is in it."""
    spec, facts, sheet = attempt.scenario.spec, facts_of(attempt), Sheet(prefs)
    given = attempt.answers.newest()
    crossed = conflicts_of(attempt, sheet, given)
    said = {one.id: {"conflict": crossed.get(one.id), **states.get(one.id, {})} for one in spec.tasks}
    lines = task_lines(attempt, sheet, given, **said)
    left = attempt.deadline - timezone.now() if attempt.deadline else None
    return {
        "attempt": attempt,
        "story": story(spec, facts, sheet.show),
        "facts": facts_shown(spec, facts, sheet.show),
        "tables": tables_shown(spec, facts, sheet.show),
        "tasks": lines,
        "answered": sum(1 for one in lines if one["saved_at"]),
        "asked": len(lines),
        "seconds_left": max(0, int(left.total_seconds())) if left else None,
        "minutes_left": minutes_left(left) if left else "",
        "last_saved": max((one["saved_at"] for one in lines if one["saved_at"]), default=None),
        "save_url": reverse("answer-save", args=[attempt.pk]),
        "hand_in_url": reverse("attempt-hand-in", args=[attempt.pk]),
    }


def minutes_left(left: timedelta) -> str:
    """Return the time left in whole minutes, rounded up as the page's own clock does."""
    return _("%(minutes)d min left") % {"minutes": max(0, -(-int(left.total_seconds()) // 60))}
