"""Attempts as lists show them."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime

from django.urls import reverse

from assessments.models import Attempt


@dataclass(frozen=True, slots=True)
class AttemptRow:
    """One attempt in a list: where it leads, when it was, how it came out."""

    title: str
    url: str
    mode: str
    number: int
    when: datetime
    outcome: str


def address_of(attempt: Attempt) -> str:
    """Return the page of an attempt: its paper while it is open, its verdict after."""
    return reverse("attempt-detail" if attempt.is_open else "attempt-verdict", args=[attempt.pk])


def rows(attempts: Iterable[Attempt]) -> list[AttemptRow]:
    """Return the rows of `attempts`, which come with their scenarios and their newest outcome."""
    return [
        AttemptRow(
            one.scenario.title,
            address_of(one),
            one.mode,
            one.number,
            one.closed_at or one.opened_at,
            one.newest_outcome,
        )
        for one in attempts
    ]
