"""The scenarios there are, and one of them before it is tried."""

from typing import Any

from django.contrib.auth.decorators import login_required
from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.urls import reverse
from django.utils import timezone

from assessments.access import get_scenario_for, scenarios_for
from assessments.journey import close_due, minutes_allowed
from assessments.models import Attempt, Scenario
from assessments.views.rows import address_of, rows
from courses.access import get_person
from courses.models import Lesson, Person


def lessons_named(codes: tuple[str, ...]) -> list[dict[str, str]]:
    """Return title and address of the lessons with these codes; no address where one is not taught here yet."""
    found = {one.code: one for one in Lesson.objects.filter(code__in=codes).defer("text")}
    return [lesson_line(found[code]) for code in codes if code in found]


def lesson_line(lesson: Lesson) -> dict[str, str]:
    """Return title and address of a lesson."""
    return {"title": lesson.title, "url": reverse("lesson-detail", args=[lesson.slug]) if lesson.taught else ""}


def _attempts(person: Person, code: str = "") -> list[Attempt]:
    close_due(timezone.now(), person)
    mine = Attempt.objects.by(person).listed()
    return list(mine.on(code) if code else mine)


def _line(scenario: Scenario, attempts: list[Attempt]) -> dict[str, Any]:
    mine = [one for one in attempts if one.scenario_code == scenario.code]
    last = next((one for one in mine if one.outcome), None)
    return {
        "code": scenario.code,
        "title": scenario.title,
        "about": scenario.spec.about,
        "url": reverse("scenario-detail", args=[scenario.code]),
        "open": any(one.is_open for one in mine),
        "last": {"outcome": last.newest_outcome, "url": address_of(last), "when": last.closed_at} if last else None,
    }


@login_required
def index(request: HttpRequest) -> HttpResponse:
    """List the scenarios open to oneself."""
    person = get_person(request.user)
    attempts = _attempts(person)
    lines = [_line(one, attempts) for one in scenarios_for(person)]
    return render(request, "assessments/scenario_list.html", {"scenarios": lines})


@login_required
def detail(request: HttpRequest, code: str) -> HttpResponse:
    """Show a scenario before it is tried: practice, paper, what it rests on, one's attempts."""
    person = get_person(request.user)
    scenario = get_scenario_for(person, code)
    attempts = _attempts(person, code)
    going = {one.mode: one for one in attempts if one.is_open}
    context = {
        "scenario": _about(scenario, person),
        "open_url": reverse("attempt-open", args=[code]),
        "open_practice": _going(going.get(Attempt.Mode.PRACTICE)),
        "open_paper": _going(going.get(Attempt.Mode.PAPER)),
        "lessons": lessons_named(scenario.spec.lessons),
        "past": rows(one for one in attempts if one.outcome),
    }
    return render(request, "assessments/scenario_detail.html", context)


def _about(scenario: Scenario, person: Person) -> dict[str, Any]:
    spec = scenario.spec
    allowed = minutes_allowed(person, spec.minutes)
    return {
        "title": spec.title,
        "about": spec.about,
        "tasks": len(spec.tasks),
        "paper_minutes": spec.minutes,
        "extra_minutes": allowed - spec.minutes,
        "allowed_minutes": allowed,
    }


def _going(attempt: Attempt | None) -> dict[str, Any] | None:
    if attempt is None:
        return None
    away = "" if attempt.is_paper else reverse("attempt-put-away", args=[attempt.pk])
    return {"url": address_of(attempt), "number": attempt.number, "put_away_url": away}
