"""Coming in: published codes, each good once; guessing is slow; a new password keeps the device."""

import time

import pytest
from allauth.mfa.models import Authenticator
from allauth.mfa.recovery_codes.internal.auth import RecoveryCodes
from allauth.mfa.totp.internal.auth import TOTP
from django.core import mail
from django.core.cache import cache
from django.urls import reverse

from tests.factories import PASSWORD, PersonFactory

pytestmark = pytest.mark.django_db
SECRET = "GEZDGNBVGY3TQOJQGEZDGNBVGY3TQOJQ"
"""RFC 6238, appendix B: the key of the SHA-1 rows, "12345678901234567890", in base 32."""

VECTORS = [(59, "94287082"), (1111111109, "07081804"), (1111111111, "14050471"), (1234567890, "89005924")]
VECTORS += [(2000000000, "69279037"), (20000000000, "65353130")]
"""RFC 6238, appendix B: time and code of eight digits, SHA-1. Ours are the last six of them."""


@pytest.fixture
def clock(monkeypatch, settings):
    """Return a function that stops the clock of the sign-in library, and of a cache that reads the same clock."""
    settings.CACHES = {"default": {"BACKEND": "django.core.cache.backends.locmem.LocMemCache"}}
    cache.clear()
    return lambda seconds: monkeypatch.setattr(time, "time", lambda: float(seconds))


@pytest.fixture
def holder(school):
    """Somebody with the code device of the standard."""
    person = PersonFactory(email="pia@test.example")
    TOTP.activate(person, SECRET)
    return person


def sign_in(client, password=PASSWORD):
    return client.post(reverse("account_login"), {"login": "pia@test.example", "password": password})


def give(client, code):
    return client.post(reverse("mfa_authenticate"), {"code": code})


def is_in(client):
    return "_auth_user_id" in client.session


@pytest.mark.parametrize(("seconds", "code"), VECTORS)
def test_the_published_codes_open_the_door_at_their_time(client, holder, clock, seconds, code):
    clock(seconds)
    assert sign_in(client).url == reverse("mfa_authenticate")
    assert not is_in(client)
    give(client, code[-6:])
    assert is_in(client)


@pytest.mark.parametrize("seconds", [1111111079, 1111111110])
def test_a_published_code_opens_nothing_a_step_before_or_after(client, holder, clock, seconds):
    clock(seconds)
    sign_in(client)
    assert "That code is not right or has been used." in give(client, "081804").content.decode()
    assert not is_in(client)


def test_a_code_opens_once(client, holder, clock):
    clock(59)
    for opened in (True, False):
        client.cookies.clear()
        sign_in(client)
        give(client, "287082")
        assert is_in(client) is opened


def test_a_recovery_code_opens_once(client, holder):
    cache.clear()
    code = RecoveryCodes.activate(holder).get_unused_codes()[0]
    for opened in (True, False):
        client.cookies.clear()
        sign_in(client)
        give(client, code)
        assert is_in(client) is opened


def test_the_device_alone_opens_nothing(client, holder, clock):
    clock(59)
    assert give(client, "287082").url == reverse("account_login")
    sign_in(client, "wrong")
    give(client, "287082")
    assert not is_in(client)


def test_guessing_codes_is_slowed_down(client, holder, clock):
    clock(59)
    sign_in(client)
    for _guess in range(5):
        give(client, "000000")
    assert "Too many" in give(client, "287082").content.decode()
    assert not is_in(client)


def test_a_new_password_by_letter_keeps_the_device(client, holder, clock):
    clock(59)
    client.post(reverse("account_reset_password"), {"email": "pia@test.example"})
    link = next(word for word in mail.outbox[-1].body.split() if "/account/password/reset/key/" in word)
    form = client.get("/" + link.split("/", 3)[3]).url
    client.post(form, {"password1": "another shed with doors", "password2": "another shed with doors"})
    assert Authenticator.objects.filter(user=holder, type="totp").exists()
    assert sign_in(client, "another shed with doors").url == reverse("mfa_authenticate")
    assert not is_in(client)
    assert client.get("/" + link.split("/", 3)[3]).context["token_fail"]
