"""Today: the one next act, and one's attempts."""

from collections.abc import Callable
from dataclasses import dataclass

from django.contrib.auth.decorators import login_required
from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.urls import reverse
from django.utils import timezone
from django.utils.translation import gettext as _
from django.utils.translation import ngettext

from assessments.access import cohorts_for, scenarios_for
from assessments.journey import close_due
from assessments.models import Attempt
from assessments.views.board import rows_of
from assessments.views.rows import address_of, rows
from courses.access import get_person
from courses.models import Person
from courses.views.catalogue import courses_of, next_lesson, reads_of

SHOWN = 20


@dataclass(frozen=True, slots=True)
class NextAct:
    """What to do now: where it leads, and why."""

    kick: str
    title: str
    why: str
    url: str
    act: str


@login_required
def today(request: HttpRequest) -> HttpResponse:
    """Show the next act and one's attempts."""
    person = get_person(request.user)
    close_due(timezone.now(), person)
    attempts = list(Attempt.objects.by(person).listed())
    context = {"today": timezone.localdate(), "next": next_act(person, attempts), "attempts": rows(attempts[:SHOWN])}
    return render(request, "assessments/home.html", context)


def next_act(person: Person, attempts: list[Attempt]) -> NextAct | None:
    """Return the first act there is: a paper whose clock runs, an open practice, a signature, a lesson, a scenario."""
    steps: list[Callable[[], NextAct | None]] = [
        lambda: _carry_on(attempts),
        lambda: _sign(person),
        lambda: _read_on(person),
        lambda: _try_out(person, attempts),
        lambda: _go_again(attempts),
    ]
    return next((act for act in (step() for step in steps) if act), None)


def _carry_on(attempts: list[Attempt]) -> NextAct | None:
    going = sorted((one for one in attempts if one.is_open), key=lambda one: not one.is_paper)
    if not going:
        return None
    first = going[0]
    kick = _("Paper, attempt %(number)d") if first.is_paper else _("Practice, attempt %(number)d")
    why = _("The clock runs.") if first.is_paper else _("You left it open. What you answered is kept.")
    return NextAct(kick % {"number": first.number}, first.scenario.title, why, address_of(first), _("Carry on"))


def _sign(person: Person) -> NextAct | None:
    """Return the first cohort in which somebody waits for a signature of `person`."""
    if not any(one.may_sign for one in person.memberships.staff()):
        return None
    for cohort in cohorts_for(person):
        waiting = [row for row in rows_of(person, cohort, timezone.now()) if row.mine]
        if waiting:
            names = ", ".join(row.person.name for row in waiting[:3])
            why = ngettext("%(names)s waits for you.", "%(names)s wait for you.", len(waiting)) % {"names": names}
            return NextAct(
                cohort.name, _("Sign what is ready"), why, reverse("cohort-board", args=[cohort.pk]), _("Look")
            )
    return None


def _read_on(person: Person) -> NextAct | None:
    lesson = next_lesson(courses_of(person), reads_of(person))
    if lesson is None:
        return None
    kick = _("Lesson %(code)s, %(minutes)d min") % {"code": lesson.code, "minutes": lesson.minutes}
    why = _("Next on your way. Then try what it teaches on a scenario.")
    return NextAct(kick, lesson.title, why, reverse("lesson-detail", args=[lesson.slug]), _("Read it"))


def _try_out(person: Person, attempts: list[Attempt]) -> NextAct | None:
    tried = {one.scenario_code for one in attempts}
    fresh = next((one for one in scenarios_for(person) if one.code not in tried), None)
    if fresh is None:
        return None
    why = _("You haven't tried it yet. The facts are drawn for you alone.")
    return NextAct(_("Scenario"), fresh.title, why, reverse("scenario-detail", args=[fresh.code]), _("Try it"))


def _go_again(attempts: list[Attempt]) -> NextAct | None:
    newest = {one.scenario_code: one for one in reversed(attempts)}
    short = next((one for one in newest.values() if one.newest_outcome != "satisfactory"), None)
    if short is None:
        return None
    why = _("It didn't hold last time. New facts, same judgement.")
    url = reverse("scenario-detail", args=[short.scenario_code])
    return NextAct(_("Scenario"), short.scenario.title, why, url, _("Try again"))
