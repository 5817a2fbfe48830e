"""Sessions: new at the door, dead at once when they should be, and never longer than a fortnight."""

from datetime import timedelta

import pytest
from allauth.account.models import EmailAddress
from allauth.mfa.recovery_codes.internal.auth import RecoveryCodes
from allauth.mfa.totp.internal.auth import TOTP
from django.contrib.sessions.models import Session
from django.core.cache import cache
from django.test import Client
from django.urls import reverse
from django.utils import timezone

from courses.actions import renew_password
from tests.factories import PASSWORD, InvitationFactory, PersonFactory

pytestmark = pytest.mark.django_db


@pytest.fixture
def person(school):
    """Somebody of the school."""
    cache.clear()
    return PersonFactory(email="pia@test.example")


@pytest.fixture
def phone(person):
    """A browser that person is signed in with."""
    return signed_in(person)


def signed_in(person):
    """Return a browser that `person` signed in with."""
    browser = Client()
    browser.post(reverse("account_login"), {"login": person.email, "password": PASSWORD})
    assert is_in(browser)
    return browser


def is_in(browser):
    return browser.get(reverse("settings")).status_code == 200


def test_a_session_planted_before_the_door_is_not_the_one_behind_it(person):
    browser = Client()
    browser.get(reverse("account_login"))
    browser.post(reverse("display-set"), {"theme": "dark"})
    planted = browser.cookies["sessionid"].value
    browser.post(reverse("account_login"), {"login": person.email, "password": PASSWORD})
    assert browser.cookies["sessionid"].value != planted
    assert not Session.objects.filter(pk=planted).exists()


def test_coming_in_by_invitation_begins_a_new_session(school):
    InvitationFactory()
    browser = Client()
    browser.post(reverse("display-set"), {"theme": "dark"})
    planted = browser.cookies["sessionid"].value
    given = {"email": "nell@test.example", "name": "Nell", "password": "a long enough one", "units": "us"}
    browser.post(reverse("invitation-accept", args=["token-of-a-test"]), given)
    assert browser.cookies["sessionid"].value != planted


def test_signing_out_kills_the_session_itself(phone):
    kept = phone.cookies["sessionid"].value
    phone.post(reverse("account_logout"))
    thief = Client()
    thief.cookies["sessionid"] = kept
    assert not is_in(thief)


def test_signing_out_by_a_link_does_nothing(phone):
    phone.get(reverse("account_logout"))
    assert is_in(phone)


def test_whoever_is_shut_out_is_out_at_the_next_press(person, phone):
    person.is_active = False
    person.save()
    assert not is_in(phone)


def test_a_changed_password_ends_every_other_session_and_keeps_this_one(person, phone):
    laptop = signed_in(person)
    given = {"oldpassword": PASSWORD, "password1": "another shed with doors", "password2": "another shed with doors"}
    laptop.post(reverse("account_change_password"), given)
    assert (is_in(laptop), is_in(phone)) == (True, False)


def test_a_password_renewed_by_the_school_ends_every_session(person, phone):
    renew_password(person, "another shed with doors")
    assert not is_in(phone)


def test_two_devices_at_once_are_allowed(person, phone):
    signed_in(person)
    assert is_in(phone)


def test_a_session_ends_after_a_fortnight(phone):
    session = Session.objects.get(pk=phone.cookies["sessionid"].value)
    assert session.expire_date - timezone.now() <= timedelta(days=14)
    assert phone.cookies["sessionid"]["max-age"] == 14 * 24 * 3600
    session.expire_date = timezone.now() - timedelta(seconds=1)
    session.save()
    assert not is_in(phone)


def grown_stale(browser):
    """Let five minutes pass since this browser last proved who holds it."""
    session = browser.session
    for record in session["account_authentication_methods"]:
        record["at"] -= 301
    session.save()
    return browser


DEVICES = ["mfa_deactivate_totp", "mfa_add_webauthn", "mfa_generate_recovery_codes", "mfa_view_recovery_codes"]


@pytest.mark.parametrize("name", DEVICES)
def test_a_device_is_changed_after_fresh_proof_alone(person, phone, name):
    phone.post(reverse("account_reauthenticate"), {"password": PASSWORD})
    TOTP.activate(person, "JBSWY3DPEHPK3PXPJBSWY3DPEHPK3PXP")
    RecoveryCodes.activate(person)
    assert phone.get(reverse(name)).status_code == 200
    answer = grown_stale(phone).get(reverse(name))
    assert (answer.status_code, answer.url.split("?")[0]) == (302, reverse("account_reauthenticate"))


def test_an_address_is_changed_after_fresh_proof_alone(person, phone):
    given = {"email": "b@test.example", "action_add": "1"}
    answer = phone.post(reverse("account_email"), given)
    assert (answer.status_code, answer.url.split("?")[0]) == (302, reverse("account_reauthenticate"))
    assert list(EmailAddress.objects.values_list("email", flat=True)) == ["pia@test.example"]
