"""How people come in: by invitation, never by a form open to the street; and what proves that they are themselves."""

import base64
from typing import Any
from urllib.parse import urlsplit

from allauth.account.adapter import DefaultAccountAdapter
from allauth.mfa.adapter import DefaultMFAAdapter
from allauth.mfa.base.internal.flows import delete_and_cleanup
from allauth.mfa.models import Authenticator
from allauth.mfa.totp.internal.auth import generate_totp_secret
from cryptography.fernet import Fernet, InvalidToken, MultiFernet
from django.conf import settings
from django.contrib import messages
from django.core.exceptions import ValidationError
from django.http import HttpRequest, HttpResponse
from django.utils.crypto import salted_hmac
from django.utils.translation import gettext as _
from django.utils.translation import gettext_lazy

from courses.audit import note
from courses.models import Person, School

WAYS = {
    "reauthenticate": gettext_lazy("Your password"),
    "mfa_reauthenticate": gettext_lazy("A code of your device, or a recovery code"),
    "mfa_reauthenticate:webauthn": gettext_lazy("Your passkey"),
}
TOLD = {
    "totp": gettext_lazy(
        "The key of this site changed; your code device no longer counts. Set it up again in Settings."
    ),
    "recovery_codes": gettext_lazy("The key of this site changed; your recovery codes no longer count."),
}


class InvitedOnly(DefaultAccountAdapter):
    """Sign-up is closed; an invitation link is the door."""

    def is_open_for_signup(self, request: HttpRequest) -> bool:
        """Say no."""
        return False

    def pre_authenticate(self, request: HttpRequest, **credentials: Any) -> None:
        """Refuse a sign-in that comes too soon after too many wrong ones, and note it."""
        try:
            super().pre_authenticate(request, **credentials)
        except ValidationError:
            note("sign_in_throttled", request)
            raise

    def _get_login_attempts_cache_key(self, request: HttpRequest, **credentials: Any) -> str:
        """Count wrong passwords by account and place: a stranger who guesses doesn't shut out the owner."""
        account = super()._get_login_attempts_cache_key(request, **credentials)
        return f"{account}:{self.get_client_ip(request)}"

    def pre_login(self, request: HttpRequest, user: Person, **told: Any) -> HttpResponse | None:
        """Let in whoever is not closed out; devices that this site can't read any more are put away first."""
        if user.is_active:
            put_away_unreadable(request, user)
        refusal: HttpResponse | None = super().pre_login(request, user, **told)
        return refusal

    def get_reauthentication_methods(self, user: Person) -> list[dict[str, Any]]:
        """Return the ways of proving it again, in our words."""
        return [{**way, "description": WAYS[way["id"]]} for way in super().get_reauthentication_methods(user)]


class Devices(DefaultMFAAdapter):
    """Code devices, recovery codes and passkeys: named after the school, secrets sealed with the key of the site."""

    error_messages = {
        **DefaultMFAAdapter.error_messages,
        "incorrect_code": gettext_lazy("That code is not right or has been used. Wait for the next one."),
        "unverified_email": gettext_lazy("Confirm your address first, then set this up."),
    }

    def get_totp_issuer(self) -> str:
        """Return the name that stands beside the code on the device."""
        school = School.objects.here()
        return school.name if school else "Raking Light"

    def get_public_key_credential_rp_entity(self) -> dict[str, str]:
        """Return what passkeys are bound to: the host of this site, by the name it has outside."""
        return {"id": urlsplit(settings.SITE_URL).hostname or "", "name": self.get_totp_issuer()}

    def generate_authenticator_name(self, user: Person, type: str) -> str:  # noqa: A002  the library's name
        """Return a name for a new passkey."""
        count = Authenticator.objects.filter(user=user, type=type).count()
        return _("Passkey %(number)s") % {"number": count + 1}

    def encrypt(self, text: str) -> str:
        """Return `text` sealed with the key of the site."""
        return _seal().encrypt(text.encode()).decode()

    def decrypt(self, encrypted_text: str) -> str:
        """Return the text, or, where the key is another now, a secret that nobody has: no code fits it."""
        try:
            return _seal().decrypt(encrypted_text.encode()).decode()
        except InvalidToken:
            return generate_totp_secret()  # type: ignore[no-any-return]


def put_away_unreadable(request: HttpRequest, person: Person) -> None:
    """Remove what was sealed with a key this site no longer has, and tell its owner; otherwise nobody could sign in."""
    for device in Authenticator.objects.filter(user=person).exclude(type=Authenticator.Type.WEBAUTHN):
        if not _is_readable(device):
            device.user = person
            delete_and_cleanup(request, device)
            messages.warning(request, TOLD[device.type])


def _is_readable(device: Authenticator) -> bool:
    try:
        _seal().decrypt(str(device.data.get("secret") or device.data.get("seed")).encode())
    except InvalidToken:
        return False
    return True


def _seal() -> MultiFernet:
    keys = [settings.SECRET_KEY, *settings.SECRET_KEY_FALLBACKS]
    made = [salted_hmac("raking.devices", "seal", secret=key, algorithm="sha256").digest() for key in keys]
    return MultiFernet([Fernet(base64.urlsafe_b64encode(one)) for one in made])
