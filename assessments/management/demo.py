"""The demo school: invented people who did real draws, made by the same verbs as everybody's."""

import json
import secrets
import tomllib
from collections.abc import Callable, Mapping
from datetime import datetime, timedelta
from pathlib import Path
from typing import Any
from uuid import uuid4

from assessments import journey
from assessments.marking.exemplars import Expressions, drawn_case, trials
from assessments.models import Attempt, Scenario
from assessments.scenarios.draw import draw, key_of
from courses.actions import enrol, found_school, gather_cohort, units, welcome
from courses.keys import keep_secret
from courses.models import Course, Membership, Person
from courses.models.enrolment import Role
from courses.shipped import text_of

SCHOOL = "demo/school.toml"
HOST = "slackwater.example"
PASSWORDS = "demo-passwords.json"
TRIES = 400


def plan() -> Mapping[str, Any]:
    """Return what the demo school is made of."""
    return tomllib.loads(text_of(SCHOOL))


def address_of(name: str) -> str:
    """Return the invented address of a demo person."""
    return f"{name.split()[0].lower()}@{HOST}"


def passwords(var: Path, names: list[str]) -> Mapping[str, str]:
    """Return address to password of the demo people, made once for this installation."""
    kept = var / PASSWORDS
    made = {address_of(name): secrets.token_urlsafe(9) for name in names}
    keep_secret(kept, json.dumps(made, indent=1))
    return dict(json.loads(kept.read_text(encoding="utf-8")))


def load(var: Path, now: datetime, progress: Callable[[str], None]) -> Mapping[str, str]:
    """Make the school, its people and what they did; what is already there is left as it is."""
    school = plan()
    found_school(school["school"])
    cohorts = {
        one["name"]: gather_cohort(one["name"], one["mode"], Course.objects.get(code=one["course"]))
        for one in school["cohort"]
    }
    known = passwords(var, [one["name"] for one in school["person"]])
    for one in school["person"]:
        person = _person(one, known)
        enrol(person, one.get("role", Role.TRAINEE), cohorts.get(one.get("cohort", "")), **_codes(one))
    for one in school["sitting"]:
        progress(f"{one['person']} sits {one['scenario']}")
        _sit(one, now)
    return known


def staff_first() -> list[Membership]:
    """Return the memberships of the demo people, those who teach first."""
    order = [Role.MANAGER, Role.INSTRUCTOR, Role.EXAMINER, Role.TRAINEE]
    demo = Membership.objects.filter(person__email__endswith=f"@{HOST}").select_related("person", "cohort")
    return sorted(demo, key=lambda one: (order.index(Role(one.role)), one.cohort_id or 0, one.person_id))


def _person(one: Mapping[str, Any], known: Mapping[str, str]) -> Person:
    email = address_of(one["name"])
    there: Person | None = Person.objects.with_email(email).first()
    if there:
        return there
    fields = {**units(metric=one.get("metric", False)), "name": one["name"]}
    fields.update({key: one[key] for key in ("film", "extra_time_percent") if key in one})
    return welcome(email, known[email], **fields)


def _codes(one: Mapping[str, Any]) -> dict[str, list[str]]:
    return {key: one.get(key, []) for key in ("teaches", "may_sign")}


def _sit(one: Mapping[str, Any], now: datetime) -> None:
    """Let a demo person sit a scenario as often as the plan says, no more."""
    person = Person.objects.with_email(address_of(one["person"])).get()
    scenario = Scenario.objects.newest().get(code=one["scenario"])
    began = now - timedelta(days=one["days_ago"])
    mine = Attempt.objects.by(person).on(scenario.code).filter(mode=one["mode"])
    if mine.filter(opened_at__date=began.date()).exists() or mine.count() >= one["nth"]:
        return
    seed, answers = _answers_like(scenario, one["exemplar"])
    attempt = journey.open_attempt(person, scenario, one["mode"], now=began, seed=seed)
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
    raise LookupError(f"{SCHOOL}: in {TRIES} draws of {scenario.code} none fits the exemplar {exemplar!r}.")
