"""Proofs of identity for one act: a code typed for it, or a passkey pressed for it. Recovery codes never sign."""

from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from urllib.parse import urlencode

from allauth.account.internal.flows.login import get_authentication_records
from allauth.core import ratelimit
from allauth.mfa import signals
from allauth.mfa.models import Authenticator
from allauth.mfa.totp.internal.auth import TOTP
from django.conf import settings
from django.core.cache import cache
from django.http import HttpRequest
from django.urls import reverse
from django.utils.translation import gettext as _

from courses.errors import Refused
from courses.models import Person

LIFE = timedelta(minutes=5)
DIGITS = 6
SPENT = "proofs.spent_press"


class ProofRefused(Refused):
    """A proof that doesn't prove; the message says what would."""


@dataclass(frozen=True, slots=True)
class Proof:
    """How somebody proved to be themselves, and when: `totp` or `webauthn`."""

    method: str
    at: datetime


def has_device(person: Person) -> bool:
    """Say whether `person` has set up a code device."""
    return _device(person) is not None


def has_passkey(person: Person) -> bool:
    """Say whether `person` has a passkey that this site can ask for."""
    keys = Authenticator.objects.filter(user=person, type=Authenticator.Type.WEBAUTHN)
    return passkeys_are_offered() and keys.exists()


def passkeys_are_offered() -> bool:
    """Say whether this site has a name that passkeys can be bound to."""
    return Authenticator.Type.WEBAUTHN in settings.MFA_SUPPORTED_TYPES


def passkey_url(back: str) -> str:
    """Return where the passkey is pressed, leading on to `back`."""
    return f"{reverse('mfa_reauthenticate_webauthn')}?{urlencode({'next': back})}"


def setup_url(back: str) -> str:
    """Return where a code device is set up, leading on to `back`."""
    return f"{reverse('mfa_activate_totp')}?{urlencode({'next': back})}"


def by_code(request: HttpRequest, code: str, *, now: datetime) -> Proof:
    """Return the proof that the code of the person's device gives; the code is used up, whatever follows.

    Call it outside the transaction of the act, or a refused act gives the code back.
    """
    person = _person(request)
    digits = "".join(code.split())
    _refuse_misread(digits)
    device = _device(person)
    if device is None:
        raise ProofRefused(_("You have no code device yet. Set one up, then sign."))
    if not ratelimit.consume(request, action="reauthenticate", user=person):
        raise ProofRefused(_("Too many codes in a short time. Wait a minute, then use the one shown then."))
    told = {"sender": Authenticator, "request": request, "user": person, "authenticator": device}
    if not TOTP(device).validate_code(digits):
        signals.authentication_failed.send(**told, reauthentication=True)
        raise ProofRefused(_("That code is not right or has been used. Wait for the next one."))
    device.record_usage()
    ratelimit.clear(request, action="reauthenticate", user=person)
    signals.authenticator_used.send(**told, reauthenticated=True, passwordless=False)
    return Proof("totp", now)


def by_passkey(request: HttpRequest, *, now: datetime) -> Proof:
    """Return the proof of the newest press of a passkey in this session; it proves one act, within five minutes."""
    at = _pressed_at(request)
    if at is None:
        raise ProofRefused(_("Press your passkey first."))
    if not timedelta(0) <= now - at <= LIFE:
        raise ProofRefused(_("Your passkey was pressed more than 5 minutes ago. Press it again."))
    if not _is_unused(request, at) or not cache.add(_mark(request, at), "used", LIFE.total_seconds() * 2):
        raise ProofRefused(_("That press of your passkey has signed already. Press it again."))
    request.session[SPENT] = at.timestamp()
    ratelimit.clear(request, action="reauthenticate", user=_person(request))
    return Proof("webauthn", at)


def passkey_is_fresh(request: HttpRequest, *, now: datetime) -> bool:
    """Say whether `by_passkey` would prove at `now`; nothing is used up."""
    at = _pressed_at(request)
    fresh = at is not None and timedelta(0) <= now - at <= LIFE
    return fresh and at is not None and _is_unused(request, at) and _mark(request, at) not in cache


def _person(request: HttpRequest) -> Person:
    if not isinstance(request.user, Person):
        raise ProofRefused(_("Sign in first."))
    return request.user


def _device(person: Person) -> Authenticator | None:
    return Authenticator.objects.filter(user=person, type=Authenticator.Type.TOTP).first()


def _refuse_misread(digits: str) -> None:
    if not digits:
        raise ProofRefused(_("Enter the six digits your code device shows."))
    if not (digits.isascii() and digits.isdigit()):
        raise ProofRefused(_("The code has six digits and nothing else."))
    if len(digits) != DIGITS:
        count = {1: _("one"), 2: _("two"), 3: _("three"), 4: _("four"), 5: _("five"), 7: _("seven"), 8: _("eight")}
        how_many = count.get(len(digits), str(len(digits)))
        raise ProofRefused(_("The code has six digits. This one has %(count)s.") % {"count": how_many})


def _pressed_at(request: HttpRequest) -> datetime | None:
    wanted = {"method": "mfa", "type": "webauthn", "reauthenticated": True}
    for record in reversed(get_authentication_records(request, _person(request))):
        if all(record.get(name) == value for name, value in wanted.items()):
            return datetime.fromtimestamp(record["at"], UTC)
    return None


def _is_unused(request: HttpRequest, at: datetime) -> bool:
    return bool(at.timestamp() > request.session.get(SPENT, 0))


def _mark(request: HttpRequest, at: datetime) -> str:
    """The cache sees two requests of one session that come at once; the session alone would not."""
    return f"proofs.press?person={_person(request).pk}&at={at.timestamp()}"
