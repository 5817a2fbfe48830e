"""The pages of the record in three lightings, on a desk, on a phone and on a narrow phone."""

import pytest
from allauth.mfa.totp.internal.auth import TOTP, generate_totp_secret
from django.utils import timezone

from assessments import journey
from assessments.models import Decision
from assessments.record import deed_for, record_of
from courses.models import Person
from courses.proofs import Proof
from tests.browser.answering import judged
from tests.browser.stage import Stage, at, look, press
from tests.factories import MembershipFactory

pytestmark = [pytest.mark.browser, pytest.mark.looks, pytest.mark.django_db(transaction=True)]

ELEMENT = "COA2"


@pytest.fixture
def ready(shelves, trainee):
    """The trainee, whose paper is satisfactory and waits for a signature, with one that failed before it."""
    judged(trainee, "right decision, fuel heater ticked", "paper")
    judged(trainee, "key", "paper")
    return trainee


@pytest.fixture
def signer(instructor):
    """The instructor, who may sign the element, with a code device."""
    instructor.memberships.update(may_sign=[ELEMENT])
    TOTP.activate(instructor, generate_totp_secret())
    return instructor


@pytest.fixture
def desk(open_page, site, sign_in, signer, other):
    """The signer's screen; another trainee beside the one who is ready has not begun."""
    return Stage(sign_in(open_page(), signer), site, signer)


def signed(signer: Person, person: Person) -> Decision:
    """Return a signature on what is on record, proved by a code that was given just now."""
    now = timezone.now()
    return journey.sign(signer, person, deed_for(record_of(person), ELEMENT, signer, now), Proof("totp", now), now=now)


def withdrawn(signature: Decision) -> Decision:
    """Return the withdrawal of a signature by who gave it."""
    now = timezone.now()
    return journey.withdraw(signature, signature.by, Proof("totp", now), reason="The wrong person.", now=now)


def turned_down(signer: Person, person: Person, kind: str) -> Decision:
    """Return a refusal to sign, with its reason."""
    now = timezone.now()
    shown = deed_for(record_of(person), ELEMENT, signer, now)
    return journey.turn_down(signer, person, shown, kind, reason="The fuel heater was ticked before.", now=now)


def sign_without_reading(stage: Stage, person: Person) -> None:
    """Sign with a code of five digits and without a tick."""
    stage.go("sign-off", person.handle, ELEMENT)
    stage.page.evaluate("document.querySelectorAll('main [required]').forEach((one) => { one.required = false; })")
    stage.page.fill("[name=code]", "48219")
    press(stage.page, "main .btn-primary")


@pytest.mark.parametrize("mine", [True, False], ids=["one's own", "of a trainee"])
def test_a_record(open_page, site, sign_in, desk, ready, mine):
    withdrawn(signed(desk.person, ready))
    if mine:
        assert look(Stage(sign_in(open_page(), ready), site, ready), at("record")) == []
    else:
        assert look(desk, at("record-detail", ready.handle)) == []


def test_a_record_of_somebody_who_has_not_begun(open_page, site, sign_in, trainee):
    assert look(Stage(sign_in(open_page(), trainee), site, trainee), at("record")) == []


def test_cohorts_and_their_board(desk, ready, remote):
    MembershipFactory(person=ready)
    assert look(desk, at("cohort-list")) == []
    assert look(desk, at("cohort-board", remote.pk)) == []


def test_a_board_of_forty(desk, ready, remote):
    MembershipFactory.create_batch(40, cohort=remote)
    assert look(desk, at("cohort-board", remote.pk)) == []


@pytest.mark.parametrize("name", ["sign-off", "element-decline", "element-ask"])
def test_the_pages_of_a_decision_to_make(desk, ready, name):
    assert look(desk, at(name, ready.handle, ELEMENT)) == []


def test_signing_wrongly(screens, desk, ready):
    screens.allow("status of 422", "status of 429")
    assert look(desk, lambda stage: sign_without_reading(stage, ready)) == []


def test_signing_without_a_device(open_page, site, sign_in, instructor, ready):
    instructor.memberships.update(may_sign=[ELEMENT])
    stage = Stage(sign_in(open_page(), instructor), site, instructor)
    assert look(stage, at("sign-off", ready.handle, ELEMENT)) == []


def test_a_signature_and_its_withdrawal(desk, ready):
    signature = signed(desk.person, ready)
    assert look(desk, at("decision-detail", signature.pk)) == []
    assert look(desk, at("decision-withdraw", signature.pk)) == []
    withdrawal = withdrawn(signature)
    assert look(desk, at("decision-detail", signature.pk)) == []
    assert look(desk, at("decision-detail", withdrawal.pk)) == []


@pytest.mark.parametrize("kind", ["declined", "more_asked"])
def test_a_decision_not_to_sign(desk, ready, kind):
    assert look(desk, at("decision-detail", turned_down(desk.person, ready, kind).pk)) == []


def test_an_attempt_as_its_instructor_reads_it(desk, ready):
    assert look(desk, at("attempt-verdict", ready.attempts.first().pk)) == []
