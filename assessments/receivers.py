"""What the ground floor tells, entered in the log: roles that are given, changed and ended, people who are erased."""

from datetime import datetime
from typing import Any

from assessments import log
from courses.models import Membership, Person


def enter_role(
    sender: object, *, membership: Membership, change: str, by: Person | None, now: datetime, **_: Any
) -> None:
    """Enter that a role was given, changed or ended, in the stream of whoever holds it."""
    what = {**role_said(membership), "by": log.stream_of(by) if by else ""}
    log.enter(log.stream_of(membership.person), f"role_{change}", what, now=now)


def role_said(membership: Membership) -> dict[str, object]:
    """Return what an entry says of a role."""
    return {
        "membership": membership.pk,
        "role": membership.role,
        "cohort": membership.cohort_id or 0,
        "teaches": list(membership.teaches),
        "may_sign": list(membership.may_sign),
    }


def enter_erased(sender: object, *, person: Person, by: Person | None, now: datetime, **_: Any) -> None:
    """Drop the salt of a person who was erased, and enter that this happened."""
    log.forget(person)
    log.enter(log.stream_of(person), "erased", {"by": log.stream_of(by) if by else ""}, now=now)
