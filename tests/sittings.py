"""A sitting, somebody who may sign it, and a signature: what the tests of the record begin from."""

import time
from uuid import uuid4

import pytest
from allauth.mfa.totp.internal.auth import format_hotp_value, hotp_value

from tests.factories import MembershipFactory, PersonFactory


def code_now(secret: str, seconds: float = 4) -> str:
    """Return what a code device shows, waiting for the next code where this one has fewer seconds to live."""
    left = 30 - time.time() % 30
    if left < seconds:
        time.sleep(left)
    return format_hotp_value(hotp_value(secret, int(time.time()) // 30))


@pytest.fixture
def sit(shelves, now):
    """Return a function that sits COA-01 for a person: with the key as answers unless told otherwise."""
    from assessments import journey
    from assessments.models import Scenario as Published
    from assessments.scenarios.draw import answer_key, key_of

    def sat(person, *, mode="paper", at=now, answers=None, seed=7):
        scenario = Published.objects.get(code="COA-01", version=1)
        attempt = journey.open_attempt(person, scenario, mode, now=at, seed=seed)
        key = answer_key(scenario.spec, key_of(scenario.spec, journey.facts_of(attempt))).as_json()
        for task, value in (key if answers is None else answers).items():
            journey.save_answer(attempt, journey.Given(task, value, uuid4(), 0), now=at)
        return journey.hand_in(attempt, now=at)

    return sat


@pytest.fixture
def signer(remote):
    """An instructor of the remote cohort who may sign COA2 and teaches something else."""
    person = PersonFactory(email="signer@test.example", name="Sigrid Signer")
    return MembershipFactory(person=person, role="instructor", cohort=remote, may_sign=["COA2"], teaches=["INS"]).person


@pytest.fixture
def shown(now):
    """Return a function that gives what a signer is shown now."""
    from assessments.record import deed_for, record_of

    return lambda signer, person, element="COA2", at=now: deed_for(record_of(person), element, signer, at)


@pytest.fixture
def signed(sit, signer, trainee, shown, now):
    """A signature of the signer on COA2 of the trainee."""
    from assessments import journey
    from courses.proofs import Proof

    sit(trainee)
    return journey.sign(signer, trainee, shown(signer, trainee), Proof("totp", now), now=now)


@pytest.fixture
def second_book(shelves, now):
    """Version 2 of the rules of COA-01, published but not in use: a margin may be five kelvin out."""
    from assessments import shipped
    from assessments.authoring import publish_book
    from assessments.rules import read_book, read_shared

    one = shipped.published()["COA-01@1"]
    text = one.book_text.replace("version = 1", "version = 2\nscenario_version = 1", 1)
    text = text.replace("near(answer.margin, key.margin, 0.5)", "near(answer.margin, key.margin, 5.0)")
    return publish_book(read_book(text, "COA-01@2", read_shared(one.shared)), text, one.shared, now=now)


@pytest.fixture
def sit_wide(sit):
    """Return a function that sits COA-01 with a margin two kelvin out and the rest right."""
    from assessments.models import Scenario as Published
    from assessments.scenarios.draw import answer_key, draw, key_of

    def sat(person, seed=7, **kwargs):
        spec = Published.objects.get(code="COA-01", version=1).spec
        key = answer_key(spec, key_of(spec, draw(spec, str(seed)).facts)).as_json()
        return sit(person, answers={**key, "margin": key["margin"] + 2.0}, seed=seed, **kwargs)

    return sat


@pytest.fixture
def author(school):
    """An instructor who writes rules."""
    return MembershipFactory(role="instructor", cohort=None, person=PersonFactory(name="Ada Author")).person


@pytest.fixture
def reviewer(school):
    """An examiner who wrote nothing."""
    return MembershipFactory(role="examiner", cohort=None, person=PersonFactory(name="Rhea Reviewer")).person


@pytest.fixture
def draft(shelves, author, now):
    """A draft of the next rules of COA-01, as it begins."""
    from assessments import drafting
    from assessments.models import Scenario as Published

    return drafting.begin_draft(Published.objects.get(code="COA-01"), author, now=now)


@pytest.fixture
def changed(author):
    """Return a function that keeps a rule of a draft with some of its keys changed."""
    from assessments import drafting

    def change(draft, by=author, code="COA-01.2", **keys):
        row = draft.row(code)
        return drafting.keep_rule(draft, {**row, **keys}, by, seen=drafting.mark_of(row))

    return change
