"""The audit trail: who came in, who was turned away, what changed in how somebody signs in.

One line of JSON each, in UTC, to the logger `raking.audit`. No secret, no mail address, no token of a link: people
by their handle, pages by the name of their address.
"""

import json
import logging
from collections.abc import Callable
from datetime import UTC, datetime
from typing import Any

from allauth.account import signals as account
from allauth.account.internal.flows.login import get_authentication_records
from allauth.core.internal.httpkit import get_client_ip
from allauth.mfa import signals as mfa
from django.contrib.auth import signals as auth
from django.dispatch import Signal, receiver
from django.http import HttpRequest, HttpResponse

from courses.models import Person

trail = logging.getLogger("raking.audit")
DENIALS = (400, 403, 429)

CHANGES: dict[str, Signal] = {
    "password_changed": account.password_changed,
    "password_reset": account.password_reset,
    "address_added": account.email_added,
    "address_changed": account.email_changed,
    "address_removed": account.email_removed,
}
DEVICES: dict[str, Signal] = {
    "device_added": mfa.authenticator_added,
    "device_removed": mfa.authenticator_removed,
    "device_renewed": mfa.authenticator_reset,
    "device_used": mfa.authenticator_used,
    "device_refused": mfa.authentication_failed,
}


def note(event: str, request: HttpRequest | None, person: object = None, **more: object) -> None:
    """Write one line: when, what, who, from where."""
    line = {
        "at": datetime.now(UTC).isoformat(timespec="milliseconds").replace("+00:00", "Z"),
        "event": event,
        "person": str(person.handle) if isinstance(person, Person) else "",
        "from": (get_client_ip(request) or "") if request else "",
        **more,
    }
    trail.info(json.dumps(line))


@receiver(auth.user_logged_in)
def came_in(request: HttpRequest, user: Person, **_told: Any) -> None:
    """Note a sign-in and what proved it."""
    records = get_authentication_records(request, user)
    note("sign_in", request, user, by=[record.get("type") or record["method"] for record in records])


@receiver(auth.user_login_failed)
def was_refused(credentials: dict[str, Any], request: HttpRequest | None = None, **_told: Any) -> None:
    """Note a wrong password; an address of nobody is not kept, since a password may have been typed there."""
    address = str(credentials.get("email") or credentials.get("username") or "")
    note("sign_in_failed", request, Person.objects.with_email(address).first())


@receiver(auth.user_logged_out)
def went(request: HttpRequest, user: Person | None, **_told: Any) -> None:
    """Note a sign-out."""
    note("sign_out", request, user)


def listen() -> None:
    """Note every change of password, address and device from here on."""
    for event, signal in CHANGES.items():
        signal.connect(_change(event), weak=False, dispatch_uid=f"audit.{event}")
    for event, signal in DEVICES.items():
        signal.connect(_device(event), weak=False, dispatch_uid=f"audit.{event}")


def _change(event: str) -> Callable[..., None]:
    def heard(request: HttpRequest, user: Person, **_told: Any) -> None:
        note(event, request, user)

    return heard


def _device(event: str) -> Callable[..., None]:
    def heard(request: HttpRequest, user: Any, authenticator: Any, **told: Any) -> None:
        again = bool(told.get("reauthenticated") or told.get("reauthentication"))
        owner = user if user.pk == authenticator.user_id else authenticator.user
        note(event, request, owner, device=str(authenticator.type), again=again)

    return heard


def denials_middleware(answer: Callable[[HttpRequest], HttpResponse]) -> Callable[[HttpRequest], HttpResponse]:
    """Return `answer` with every refusal noted; a page that is not there for somebody (404) is silence."""

    def middleware(request: HttpRequest) -> HttpResponse:
        response = answer(request)
        if response.status_code in DENIALS:
            view = request.resolver_match.view_name if request.resolver_match else ""
            note("denied", request, request.user, status=response.status_code, view=view, method=request.method or "")
        return response

    return middleware
