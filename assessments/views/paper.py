"""The page of an open attempt: the job, its facts and a form for each task."""

import uuid
from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime, timedelta
from typing import Any

from django.urls import reverse
from django.utils import timezone
from django.utils.translation import gettext as _

from assessments.answers.sheet import written
from assessments.forms.building import BUILT, builder_of
from assessments.journey import facts_of
from assessments.models import Answer, Attempt
from assessments.scenarios.story import Show, facts_shown, story, tables_shown, with_units, worded
from assessments.scenarios.tasks import Task
from assessments.views.answering import list_line
from assessments.views.pictured import pinned_to
from courses.trade.units import Preferences, shown, symbol, to_shown


def show_for(prefs: Preferences) -> Show:
    """Return how a reader with these units sees a quantity of a scenario: converted, it has one decimal."""

    def show(value: float, unit: str, decimals: int) -> str:
        as_written = prefs.unit_for(unit).code == unit and unit not in ("degc", "K")
        return shown(value, unit, prefs, decimals if as_written else 1)

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
        if task.kind in BUILT and value:
            builder = builder_of(task, self.show)
            return "; ".join(builder.words(one) for one in written(task, value))
        return _("not answered") if value is None else with_units(worded(task.as_field(), value, self.show), self.show)

    def side(self, task: Task, answer: Answer) -> Side:
        """Return an answer as one of two that can be taken."""
        return Side(self.words(task, answer.value), answer.received_at, tuple(self.fields(task, answer.value)))

    def fields(self, task: Task, value: Any) -> list[tuple[str, str]]:
        """Return the fields that send a value again, without a loss by rounding."""
        if value is None:
            return [("value", "")]
        if isinstance(value, list):
            return [("value", one) for one in written(task, value)]
        if task.kind == "quantity":
            return [("value", f"{value!r} {task.unit}")]
        return [("value", self.typed(task, value))]


def task_lines(attempt: Attempt, sheet: Sheet, given: Mapping[str, Answer], **states: Any) -> list[dict[str, Any]]:
    """Return each task with the answer that counts; `states` adds what one task has to say, by its id."""
    spec, facts, pinned = attempt.scenario.spec, facts_of(attempt), pinned_to(attempt, given)
    lines = []
    for number, task in enumerate(spec.tasks, start=1):
        answer, said = given.get(task.id), states.get(task.id, {})
        value = answer.value if answer else None
        sent = said.get("sent") or (written(task, value) if isinstance(value, list) else [])
        more = list_line(task, sent, spec, facts, sheet.show, said.get("opened", ""))
        line = {"number": number, "pictures": pinned.get(task.id, []), **_line(task, sheet, answer), **more, **said}
        lines.append(line)
    return lines


def _line(task: Task, sheet: Sheet, answer: Answer | None) -> dict[str, Any]:
    value = answer.value if answer else None
    chosen = value if isinstance(value, list) else [value]
    return {
        "id": task.id,
        "kind": task.kind,
        "final": task.final,
        "title": task.title,
        "ask": with_units(task.ask, sheet.show),
        "hint": with_units(task.hint, sheet.show),
        "unit": symbol(task.unit, sheet.prefs) if task.unit else "",
        "value": "" if isinstance(value, list) else sheet.typed(task, value),
        "options": [
            {"id": one.id, "words": with_units(one.words, sheet.show), "chosen": one.id in chosen}
            for one in task.options
        ],
        "none": value == [],
        "seq": answer.sequence if answer else 0,
        "client_key": uuid.uuid4(),
        "saved_at": answer.received_at if answer and value is not None else None,
    }


def conflicts_of(attempt: Attempt, sheet: Sheet, given: Mapping[str, Answer]) -> dict[str, Conflict]:
    """Return by task the newest answer that was kept beside the one that counts, where it is newer than that."""
    beside = {one.task: one for one in attempt.answers.beside().order_by("pk")}
    tasks = {task.id: task for task in attempt.scenario.spec.tasks}
    return {
        name: Conflict(sheet.side(tasks[name], one), sheet.side(tasks[name], given[name]), given[name].sequence or 0)
        for name, one in beside.items()
        if name in given and one.pk > given[name].pk
    }


def page_of(attempt: Attempt, prefs: Preferences, **states: Any) -> dict[str, Any]:
    """Return what the page of an open attempt shows; nothing of the key is in it."""
    sheet, given = Sheet(prefs), attempt.answers.newest()
    crossed = conflicts_of(attempt, sheet, given)
    tasks = attempt.scenario.spec.tasks
    said = {one.id: {"conflict": crossed.get(one.id), **states.get(one.id, {})} for one in tasks}
    lines = task_lines(attempt, sheet, given, **said)
    saved = [line["saved_at"] for line in lines if line["saved_at"]]
    return {
        "attempt": attempt,
        **job_of(attempt, sheet.show),
        **time_of(attempt),
        "tasks": lines,
        "pictures": pinned_to(attempt, given).get("", []),
        "describe_url": reverse("attempt-describe", args=[attempt.pk]),
        "answered": len(saved),
        "asked": len(lines),
        "last_saved": max(saved, default=None),
        "save_url": reverse("answer-save", args=[attempt.pk]),
        "hand_in_url": reverse("attempt-hand-in", args=[attempt.pk]),
    }


def job_of(attempt: Attempt, show: Show) -> dict[str, Any]:
    """Return the story and the facts that stand beside it, in the reader's units."""
    spec, facts = attempt.scenario.spec, facts_of(attempt)
    return {
        "story": story(spec, facts, show),
        "facts": facts_shown(spec, facts, show),
        "tables": tables_shown(spec, facts, show),
    }


def time_of(attempt: Attempt) -> dict[str, Any]:
    """Return the time left on a paper, for the strip and for its clock."""
    if attempt.deadline is None:
        return {}
    left = attempt.deadline - timezone.now()
    return {"seconds_left": max(0, int(left.total_seconds())), "minutes_left": minutes_left(left)}


def minutes_left(left: timedelta) -> str:
    """Return the time left in whole minutes, rounded up as the page's own clock does."""
    return _("%(minutes)d min left") % {"minutes": max(0, -(-int(left.total_seconds()) // 60))}
