"""Proofs of identity: what a code proves, what a passkey proves, and how often."""

import base64
import hashlib
import hmac
import time
from datetime import UTC, datetime, timedelta

import pytest
from allauth.account.internal.flows.login import record_authentication
from allauth.mfa.models import Authenticator
from allauth.mfa.recovery_codes.internal.auth import RecoveryCodes
from allauth.mfa.totp.internal.auth import TOTP
from django.contrib.sessions.backends.db import SessionStore
from django.core.cache import cache

from courses import proofs
from courses.proofs import Proof, ProofRefused
from tests.factories import PersonFactory

pytestmark = pytest.mark.django_db
SECRET = "GEZDGNBVGY3TQOJQGEZDGNBVGY3TQOJQ"  # RFC 6238 appendix B: "12345678901234567890", in base 32
MOMENT = 1111111109
CODE = "081804"  # RFC 6238 appendix B, SHA-1, at 1111111109: 07081804
NEXT = "050471"  # the same, at 1111111111, one step later: 14050471
WRONG = "That code is not right or has been used. Wait for the next one."


@pytest.fixture(autouse=True)
def clock(monkeypatch, settings):
    """Return a function that sets the clock of the sign-in library, and of a cache that reads the same clock."""
    settings.CACHES = {"default": {"BACKEND": "django.core.cache.backends.locmem.LocMemCache"}}
    cache.clear()

    def set_to(seconds):
        monkeypatch.setattr(time, "time", lambda: seconds)
        return datetime.fromtimestamp(seconds, UTC)

    set_to(MOMENT)
    return set_to


@pytest.fixture
def request_of(rf):
    """Return a function that makes a POST of a person with a session of its own, or of one that is given."""

    def make(person, session=None):
        request = rf.post("/")
        request.user, request.session = person, session if session is not None else SessionStore()
        return request

    return make


@pytest.fixture
def signer(school):
    """Somebody with a code device."""
    person = PersonFactory()
    TOTP.activate(person, SECRET)
    return person


@pytest.fixture
def now():
    """The moment of the published code."""
    return datetime.fromtimestamp(MOMENT, UTC)


def refusal(act, *args, **kwargs):
    """Return the sentence with which `act` refuses."""
    with pytest.raises(ProofRefused) as caught:
        act(*args, **kwargs)
    return str(caught.value)


def press(request, at, **changed):
    """Press a passkey at `at`, as the sign-in library remembers it."""
    seconds, time.time = time.time, lambda: at.timestamp()
    record_authentication(
        request, request.user, **{"method": "mfa", "type": "webauthn", "reauthenticated": True, **changed}
    )
    time.time = seconds


@pytest.mark.parametrize("typed", [CODE, "081 804", " 081804 "])
def test_the_code_of_the_device_proves(request_of, signer, now, typed):
    assert proofs.by_code(request_of(signer), typed, now=now) == Proof("totp", now)


def test_a_code_proves_once_even_from_another_session(request_of, signer, now):
    proofs.by_code(request_of(signer), CODE, now=now)
    assert refusal(proofs.by_code, request_of(signer), CODE, now=now) == WRONG


def test_the_next_code_proves_again(request_of, signer, now, clock):
    proofs.by_code(request_of(signer), CODE, now=now)
    later = clock(1111111111)
    assert proofs.by_code(request_of(signer), NEXT, now=later) == Proof("totp", later)


@pytest.mark.parametrize(
    ("typed", "sentence"),
    [
        ("", "Enter the six digits your code device shows."),
        ("12345", "The code has six digits. This one has five."),
        ("1234567", "The code has six digits. This one has seven."),
        ("1" * 40, "The code has six digits. This one has 40."),
        ("12345x", "The code has six digits and nothing else."),
        ("٠٨١٨٠٤", "The code has six digits and nothing else."),
        ("123456", WRONG),
        (NEXT, WRONG),  # of the next step: not yet
    ],
)
def test_what_is_no_code_of_now_is_refused(request_of, signer, now, typed, sentence):
    assert refusal(proofs.by_code, request_of(signer), typed, now=now) == sentence


def test_a_code_of_the_step_before_is_too_late(request_of, signer, now, clock):
    assert refusal(proofs.by_code, request_of(signer), CODE, now=clock(1111111111)) == WRONG


def test_another_persons_code_proves_nothing(request_of, signer, now):
    other = PersonFactory()
    TOTP.activate(other, "JBSWY3DPEHPK3PXPJBSWY3DPEHPK3PXP")
    assert refusal(proofs.by_code, request_of(other), CODE, now=now) == WRONG


def test_without_a_device_the_way_to_one_is_told(request_of, school, now):
    person = PersonFactory()
    assert not proofs.has_device(person)
    assert (
        refusal(proofs.by_code, request_of(person), CODE, now=now)
        == "You have no code device yet. Set one up, then sign."
    )


def test_a_recovery_code_never_signs(request_of, signer, now):
    codes = RecoveryCodes.activate(signer).get_unused_codes()
    assert (
        refusal(proofs.by_code, request_of(signer), codes[0], now=now) == "The code has six digits. This one has eight."
    )
    assert RecoveryCodes.activate(signer).get_unused_codes() == codes


def test_guessing_is_slowed_down_and_the_right_code_waits_too(request_of, signer, now):
    for _guess in range(10):
        assert refusal(proofs.by_code, request_of(signer), "000000", now=now) == WRONG
    too_many = "Too many codes in a short time. Wait a minute, then use the one shown then."
    assert refusal(proofs.by_code, request_of(signer), CODE, now=now) == too_many


def test_right_codes_are_never_too_many(request_of, signer, clock):
    for step in range(12):
        later = clock(MOMENT + 30 * step)
        assert proofs.by_code(request_of(signer), code_at(later), now=later).at == later


def code_at(moment):
    """Return the code of `moment`, worked out after RFC 4226, section 5.3."""
    mac = hmac.new(base64.b32decode(SECRET), int(moment.timestamp() // 30).to_bytes(8, "big"), hashlib.sha1).digest()
    place = mac[-1] & 15
    return f"{(int.from_bytes(mac[place : place + 4], 'big') & 0x7FFFFFFF) % 10**6:06d}"


def test_a_press_of_the_passkey_proves_once(request_of, signer, now):
    request = request_of(signer)
    press(request, now)
    assert proofs.passkey_is_fresh(request, now=now)
    assert proofs.by_passkey(request, now=now) == Proof("webauthn", now)
    assert not proofs.passkey_is_fresh(request, now=now)
    used = "That press of your passkey has signed already. Press it again."
    assert refusal(proofs.by_passkey, request, now=now) == used


def test_two_requests_of_one_session_share_one_press(request_of, signer, now):
    first = request_of(signer)
    press(first, now)
    second = request_of(signer, SessionStore())
    second.session.update(dict(first.session.items()))
    proofs.by_passkey(first, now=now)
    assert "has signed already" in refusal(proofs.by_passkey, second, now=now)


def test_a_new_press_proves_again(request_of, signer, now):
    request = request_of(signer)
    press(request, now)
    proofs.by_passkey(request, now=now)
    press(request, now + timedelta(seconds=2))
    assert proofs.by_passkey(request, now=now + timedelta(seconds=3)).at == now + timedelta(seconds=2)


@pytest.mark.parametrize("age", [timedelta(0), timedelta(minutes=5)])
def test_a_press_lasts_five_minutes(request_of, signer, now, age):
    request = request_of(signer)
    press(request, now - age)
    assert proofs.by_passkey(request, now=now) == Proof("webauthn", now - age)


@pytest.mark.parametrize("age", [timedelta(minutes=5, milliseconds=1), timedelta(seconds=-1)])
def test_a_press_out_of_its_time_proves_nothing(request_of, signer, now, age):
    request = request_of(signer)
    press(request, now - age)
    old = "Your passkey was pressed more than 5 minutes ago. Press it again."
    assert refusal(proofs.by_passkey, request, now=now) == old
    assert not proofs.passkey_is_fresh(request, now=now)


@pytest.mark.parametrize(
    "changed",
    [{"method": "password", "type": None}, {"type": "totp"}, {"type": "recovery_codes"}, {"reauthenticated": None}],
    ids=["password", "code", "recovery code", "signed in with it"],
)
def test_only_a_passkey_pressed_again_counts(request_of, signer, now, changed):
    request = request_of(signer)
    press(request, now, **changed)
    assert refusal(proofs.by_passkey, request, now=now) == "Press your passkey first."


def test_a_press_of_somebody_else_in_the_same_browser_counts_for_nobody(request_of, signer, now):
    request = request_of(signer)
    press(request, now)
    request.user = PersonFactory()
    assert refusal(proofs.by_passkey, request, now=now) == "Press your passkey first."


def test_passkeys_are_offered_where_the_site_has_a_name(signer, settings):
    Authenticator(user=signer, type=Authenticator.Type.WEBAUTHN, data={}).save()
    settings.MFA_SUPPORTED_TYPES = ["totp", "recovery_codes", "webauthn"]
    assert (proofs.passkeys_are_offered(), proofs.has_passkey(signer)) == (True, True)
    settings.MFA_SUPPORTED_TYPES = ["totp", "recovery_codes"]
    assert (proofs.passkeys_are_offered(), proofs.has_passkey(signer)) == (False, False)


def test_the_ways_to_set_up_lead_back():
    assert proofs.setup_url("/record/a?b=1&c").endswith("/totp/activate/?next=%2Frecord%2Fa%3Fb%3D1%26c")
