"""The demo school: invented people who did real draws, made by the same verbs as everybody's."""

import json
import secrets
from collections.abc import Callable, Iterable, Mapping
from datetime import datetime, timedelta
from pathlib import Path
from typing import Any
from uuid import uuid4

from allauth.mfa.models import Authenticator
from allauth.mfa.totp.internal.auth import TOTP, generate_totp_secret
from allauth.mfa.utils import decrypt
from django.db import transaction

from assessments import journey
from assessments.management.demo_plan import FILE, HOST, DecisionPlan, PersonPlan, SittingPlan, read_plan
from assessments.marking.exemplars import Expressions, drawn_case, trials
from assessments.models import Attempt, Decision, Scenario
from assessments.record import deed_for, record_of
from assessments.scenarios.draw import draw, key_of
from assessments.scenarios.errors import DrawNeverSettled
from courses.actions import enrol, found_school, gather_cohort, renew_password, units, welcome
from courses.keys import keep_secret
from courses.models import Course, Membership, Person
from courses.models.enrolment import Role
from courses.proofs import Proof

PASSWORDS = "demo-passwords.json"
TRIES = 400
TERM = timedelta(days=60)
"""How long the demo school has been running."""


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
        teaches, may_sign = list(one.teaches), list(one.may_sign)
        enrol(people[one.name], one.role, cohorts.get(one.cohort), now=now - TERM, teaches=teaches, may_sign=may_sign)
    happenings: list[SittingPlan | DecisionPlan] = [*plan.sittings, *plan.decisions]
    for happened in sorted(happenings, key=lambda one: -one.days_ago):
        if isinstance(happened, SittingPlan):
            progress(f"{happened.person} sits {happened.scenario}")
            _sit(people[happened.person], happened, now)
        else:
            progress(f"{happened.by} decides on {happened.element} of {happened.person}")
            _decide(people[happened.by], people[happened.person], happened, now)
    signers = {one.by for one in plan.decisions}
    for name in sorted(signers):
        device_key(people[name])
    return known


def device_key(person: Person) -> str:
    """Return the set-up key of the code device of a demo person, made once for this installation."""
    there = Authenticator.objects.filter(user=person, type=Authenticator.Type.TOTP).first()
    if there is None:
        secret: str = generate_totp_secret()
        TOTP.activate(person, secret)
        return secret
    return str(decrypt(there.data["secret"]))


def signers() -> list[Person]:
    """Return the demo people whose code device stands."""
    held = Authenticator.objects.filter(type=Authenticator.Type.TOTP, user__email__endswith=f"@{HOST}")
    return [one.user for one in held.select_related("user")]


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


def _decide(by: Person, person: Person, one: DecisionPlan, now: datetime) -> None:
    """Let a demo instructor decide what the plan says, once."""
    if Decision.objects.filter(person=person, element=one.element, kind=one.kind).exists():
        return
    at = now - timedelta(days=one.days_ago)
    shown = deed_for(record_of(person), one.element, by, at)
    if one.kind == Decision.Kind.SIGNED:
        journey.sign(by, person, shown, Proof("totp", at), now=at)
    else:
        journey.turn_down(by, person, shown, one.kind, reason=one.reason, now=at)


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
