"""Answers to a drawn attempt: those of an exemplar of its scenario, as rows or typed into the page."""

from collections.abc import Mapping
from typing import Any
from uuid import uuid4

from django.utils import timezone
from playwright.sync_api import Page

from assessments import journey
from assessments.marking.exemplars import Expressions, drawn_case, trials
from assessments.models import Attempt, Scenario
from assessments.scenarios.draw import key_of
from courses.models import Person

CODE = "COA-01"


def answers_like(attempt: Attempt, exemplar: str) -> Mapping[str, Any]:
    """Return the answers of an exemplar to what was drawn for `attempt`."""
    spec, facts = attempt.scenario.spec, journey.facts_of(attempt)
    key = key_of(spec, facts)
    tried = trials(Expressions.of(spec), key, drawn_case(spec, facts, key))
    return next(one.answers for one in tried if one.name == exemplar)


def opened(person: Person, mode: str = "practice", code: str = CODE, seed: int | None = None) -> Attempt:
    """Return an attempt that was just opened for `person`."""
    scenario = Scenario.objects.newest().get(code=code)
    return journey.open_attempt(person, scenario, mode, now=timezone.now(), seed=seed)


def give(attempt: Attempt, task: str, value: Any, seen: int = 0) -> journey.Saved:
    """Give one answer without a page."""
    return journey.save_answer(attempt, journey.Given(task, value, uuid4(), seen), now=timezone.now())


def judged(person: Person, exemplar: str, mode: str = "practice") -> Attempt:
    """Return an attempt that was answered like an exemplar and handed in."""
    attempt = opened(person, mode)
    for task, value in answers_like(attempt, exemplar).items():
        give(attempt, task, value)
    return journey.hand_in(attempt, now=timezone.now())


def rows(attempt: Attempt, task: str) -> list[tuple[Any, int | None]]:
    """Return every answer kept for a task, value and sequence, in the order they came."""
    return list(attempt.answers.filter(task=task).order_by("pk").values_list("value", "sequence"))


def write(page: Page, attempt: Attempt, task: str, value: Any) -> None:
    """Put an answer into its form as a person would, the quantity with the unit it is given in."""
    form = page.locator(f"#task-{task} form[data-answer]")
    kind = attempt.scenario.spec.task(task)
    if kind.kind == "quantity":
        form.locator("[name=value]").fill(f"{value} {'K' if kind.unit == 'K' else '°C'}")
    elif kind.kind == "text":
        form.locator("[name=value]").fill(value)
    else:
        for one in [value] if isinstance(value, str) else value:
            form.locator(f"[name=value][value={one}]").check()
