"""The audit trail: one line each, in UTC, without secrets."""

import json
import logging
from datetime import datetime, timedelta

import pytest
from allauth.mfa.totp.internal.auth import TOTP
from django.test import Client
from django.urls import reverse
from django.utils import timezone

from courses.audit import note
from tests.factories import PASSWORD, PersonFactory

pytestmark = pytest.mark.django_db


@pytest.fixture
def trail():
    """The lines written, oldest first."""
    lines = []

    class Keeper(logging.Handler):
        def emit(self, record):
            lines.append(json.loads(record.getMessage()))

    keeper = Keeper()
    logging.getLogger("raking.audit").addHandler(keeper)
    yield lines
    logging.getLogger("raking.audit").removeHandler(keeper)


@pytest.fixture
def person(school):
    """Somebody of the school."""
    return PersonFactory(email="pia@test.example")


def sign_in(client, password=PASSWORD, login="pia@test.example"):
    return client.post(reverse("account_login"), {"login": login, "password": password})


def told(trail):
    """Return what was noted, without time."""
    return [{key: value for key, value in line.items() if key != "at"} for line in trail]


def test_coming_and_going_are_noted(client, person, trail):
    sign_in(client)
    client.post(reverse("account_logout"))
    who = {"person": str(person.handle), "from": "127.0.0.1"}
    assert told(trail) == [{"event": "sign_in", **who, "by": ["password"]}, {"event": "sign_out", **who}]


def test_a_wrong_password_is_noted_with_its_owner_and_without_what_was_typed(client, person, trail):
    sign_in(client, "not this one")
    sign_in(client, "not this one", "nobody@test.example")
    assert [(line["event"], line["person"]) for line in trail] == [
        ("sign_in_failed", str(person.handle)),
        ("sign_in_failed", ""),
    ]
    assert "not this one" not in json.dumps(trail)
    assert "pia@" not in json.dumps(trail)


def test_tries_that_come_too_fast_are_noted(client, person, trail):
    for _try in range(6):
        sign_in(client, "wrong")
    assert [line["event"] for line in trail] == ["sign_in_failed"] * 5 + ["sign_in_throttled"]


def test_a_changed_password_is_noted(client, person, trail):
    client.force_login(person)
    given = {"oldpassword": PASSWORD, "password1": "another shed with doors", "password2": "another shed with doors"}
    client.post(reverse("account_change_password"), given)
    assert [line["event"] for line in trail if line["event"] != "sign_in"] == ["password_changed"]


@pytest.mark.django_db(transaction=True)
def test_devices_are_noted_as_they_come_are_refused_and_go(client, person, trail):
    TOTP.activate(person, "JBSWY3DPEHPK3PXPJBSWY3DPEHPK3PXP")
    client.force_login(person)
    client.post(reverse("account_reauthenticate"), {"password": PASSWORD})
    client.post(reverse("mfa_reauthenticate"), {"code": "000000"})
    client.post(reverse("mfa_generate_recovery_codes"))
    client.post(reverse("mfa_deactivate_totp"))
    heard = [(line["event"], line["device"]) for line in trail if "device" in line]
    assert heard == [
        ("device_refused", "totp"),
        ("device_renewed", "recovery_codes"),
        ("device_removed", "totp"),
        ("device_removed", "recovery_codes"),
    ]
    assert {line["person"] for line in trail if "device" in line} == {str(person.handle)}


def test_a_refusal_is_noted_by_the_name_of_its_page_and_a_404_is_silence(person, trail):
    careful = Client(enforce_csrf_checks=True)
    careful.force_login(person)
    trail.clear()
    assert careful.post("/settings/", {}).status_code == 403
    assert careful.get("/nowhere/").status_code == 404
    who = {"person": str(person.handle), "from": "127.0.0.1"}
    assert told(trail) == [{"event": "denied", **who, "status": 403, "view": "settings", "method": "POST"}]


def test_a_token_in_an_address_is_not_kept(school, trail):
    careful = Client(enforce_csrf_checks=True)
    careful.post(reverse("invitation-accept", args=["secret-token"]), {})
    assert [line["view"] for line in trail] == ["invitation-accept"]
    assert "secret-token" not in json.dumps(trail)


def test_a_line_is_one_line_whatever_is_in_it_and_its_time_is_utc(trail):
    note("tried\nout", None, None, word="a\nb\u2028c")
    (line,) = trail
    at = datetime.fromisoformat(line["at"])
    assert line["at"].endswith("Z")
    assert abs(timezone.now() - at) < timedelta(minutes=1)
    assert "\n" not in json.dumps(line)


def test_the_trail_goes_to_the_journal_of_the_server_bare():
    logger = logging.getLogger("raking.audit")
    assert (logger.level, logger.propagate) == (logging.INFO, False)
    assert [handler.formatter._fmt for handler in logger.handlers if type(handler) is logging.StreamHandler] == [
        "%(message)s"
    ]
