"""The demo school: invented people who did real draws, made by the same verbs as everybody's."""

import json
import secrets
from collections.abc import Callable, Iterable, Mapping
from datetime import datetime, timedelta
from pathlib import Path
from typing import Any
from uuid import uuid4

from django.db import transaction

from assessments import journey
from assessments.management.demo_plan import FILE, HOST, PersonPlan, SittingPlan, read_plan
from assessments.marking.exemplars import Expressions, drawn_case, trials
from assessments.models import Attempt, Scenario
from assessments.scenarios.draw import draw, key_of
from assessments.scenarios.errors import DrawNeverSettled
from courses.actions import enrol, found_school, gather_cohort, renew_password, units, welcome
from courses.keys import keep_secret
from courses.models import Course, Membership, Person
from courses.models.enrolment import Role

PASSWORDS = "demo-passwords.json"
TRIES = 400


def passwords(var: Path, emails: Iterable[str] = ()) -> Mapping[str, str]:
    """Return address to password of the demo people: made once for this installation, with one for whoever is new."""
    kept = var / PASSWORDS
    known = dict(json.loads(kept.read_text(encoding="utf-8"))) if kept.exists() else {}
    new = {email: secrets.token_urlsafe(9) for email in emails if email not in known}
    if new:
        kept.unlink(missing_ok=True)
        keep_secret(kept, json.dumps({**known, **new}, indent=1))
    return {**known, **new}


@transaction.atomic
def load(var: Path, now: datetime, progress: Callable[[str], None]) -> Mapping[str, str]:
    """Make the school, its people and what they did; what is already there is left as it is."""
    plan = read_plan()
    found_school(plan.school)
    cohorts = {one.name: gather_cohort(one.name, one.mode, Course.objects.get(code=one.course)) for one in plan.cohorts}
    kept = passwords(var)
    known = passwords(var, [one.email for one in plan.people])
    people = {one.name: _person(one, known[one.email], renew=one.email not in kept) for one in plan.people}
    for one in plan.people:
        codes = {"teaches": list(one.teaches), "may_sign": list(one.may_sign)}
        enrol(people[one.name], one.role, cohorts.get(one.cohort), now=now, **codes)
    for sitting in plan.sittings:
        progress(f"{sitting.person} sits {sitting.scenario}")
        _sit(people[sitting.person], sitting, now)
    return known


def staff_first() -> list[Membership]:
    """Return the memberships of the demo people, those who teach first."""
    order = [Role.MANAGER, Role.INSTRUCTOR, Role.EXAMINER, Role.TRAINEE]
    demo = Membership.objects.filter(person__email__endswith=f"@{HOST}").select_related("person", "cohort")
    return sorted(demo, key=lambda one: (order.index(Role(one.role)), one.cohort_id or 0, one.person_id))


def _person(one: PersonPlan, password: str, *, renew: bool) -> Person:
    there: Person | None = Person.objects.with_email(one.email).first()
    if there:
        return renew_password(there, password) if renew else there
    fields: dict[str, Any] = {**units(metric=one.metric), "extra_time_percent": one.extra_time_percent}
    if one.film:
        fields["film"] = one.film
    return welcome(one.email, password, name=one.name, **fields)


def _sit(person: Person, one: SittingPlan, now: datetime) -> None:
    """Let a demo person sit a scenario as often as the plan says, no more."""
    scenario = Scenario.objects.newest().get(code=one.scenario)
    began = now - timedelta(days=one.days_ago)
    mine = Attempt.objects.by(person).on(scenario.code).filter(mode=one.mode)
    if mine.filter(opened_at__date=began.date()).exists() or mine.count() >= one.nth:
        return
    seed, answers = _answers_like(scenario, one.exemplar)
    attempt = journey.open_attempt(person, scenario, one.mode, now=began, seed=seed)
    for minute, (task, value) in enumerate(answers.items(), start=1):
        journey.save_answer(attempt, journey.Given(task, value, uuid4(), 0), now=began + timedelta(minutes=minute))
    journey.hand_in(attempt, now=began + timedelta(minutes=len(answers) + 1))


def _answers_like(scenario: Scenario, exemplar: str) -> tuple[int, Mapping[str, Any]]:
    """Return a secret seed whose draw the exemplar can be tried on, and the answers it gives there."""
    spec = scenario.spec
    expressions = Expressions.of(spec)
    for _try in range(TRIES):
        seed = secrets.randbits(128)
        facts = draw(spec, str(seed)).facts
        key = key_of(spec, facts)
        tried = trials(expressions, key, drawn_case(spec, facts, key))
        answers = next((one.answers for one in tried if one.name == exemplar), None)
        if answers is not None:
            return seed, answers
    raise DrawNeverSettled(f"{FILE}: in {TRIES} draws of {scenario.code} none fits the exemplar {exemplar!r}.")
