"""What the ground floor tells, entered in the log: roles that are given, changed and ended, people who are erased."""

from datetime import datetime
from typing import Any

from assessments import append_only, filing, log
from courses.models import Membership, Person


def enter_role(
    sender: object, *, membership: Membership, change: str, by: Person | None, now: datetime, **_: Any
) -> None:
    """Enter that a role was given, changed or ended."""
    log.enter_role(membership, change, by, now)


def enter_erased(sender: object, *, person: Person, by: Person | None, now: datetime, **_: Any) -> None:
    """Remove the words and the salt of a person who was erased, and enter that this happened."""
    filing.forget_words(person)
    log.forget(person)
    log.enter(log.stream_of(person), "erased", {"by": log.stream_of(by) if by else ""}, now=now)


def guard(sender: object, *, using: str, **_: Any) -> None:
    """Put the guard on the tables after every migration: one that rebuilds a table loses it."""
    append_only.guard(using)
