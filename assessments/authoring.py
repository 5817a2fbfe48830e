"""Scenarios and rule books are published here: a version once out never changes."""

import hashlib
from dataclasses import dataclass
from datetime import datetime

from django.db import transaction
from django.utils.translation import gettext as _

from assessments import log
from assessments.errors import PublishingRefused
from assessments.models import RuleBook, Scenario
from assessments.rules import RuleBook as Book
from assessments.scenarios.spec import Scenario as Spec
from courses.models import Person


@dataclass(frozen=True, slots=True)
class Hands:
    """Who wrote a rule book, and who else reviewed it."""

    written_by: Person
    reviewed_by: Person


@transaction.atomic
def publish_book(book: Book, text: str, shared: str, *, now: datetime, hands: Hands | None = None) -> RuleBook:
    """Publish a rule book, or return its row if it is out; refuses other rules under a version that is out."""
    row = RuleBook.objects.filter(code=book.code, version=book.version).first()
    if row is None:
        row = RuleBook.objects.create(
            code=book.code,
            version=book.version,
            scenario_version=book.scenario_version or book.version,
            digest=book.digest,
            text=text,
            shared=shared,
            published_at=now,
            written_by=hands.written_by if hands else None,
            reviewed_by=hands.reviewed_by if hands else None,
        )
        if hands:
            _enter(row, "book_published", hands, now)
    elif row.book != book:
        raise PublishingRefused(
            _("Rule book %(code)s version %(version)d is published and can't change. Give new rules another version.")
            % {"code": book.code, "version": book.version}
        )
    return row


@transaction.atomic
def publish_scenario(spec: Spec, text: str, book: RuleBook, *, now: datetime) -> Scenario:
    """Publish a version of a scenario, marked by `book` unless a newer one marks it already.

    Refuses another text under a version that is out.
    """
    digest = hashlib.sha256(text.encode()).hexdigest()
    row = Scenario.objects.filter(code=spec.code, version=spec.version).first()
    if row is None:
        return Scenario.objects.create(
            code=spec.code,
            version=spec.version,
            title=spec.title,
            digest=digest,
            text=text,
            rule_book=book,
            published_at=now,
        )
    if row.digest != digest:
        raise PublishingRefused(
            _("%(code)s version %(version)d is published and can't change. Give the new text version %(next)d.")
            % {"code": spec.code, "version": spec.version, "next": spec.version + 1}
        )
    if not RuleBook.objects.filter(code=book.code, version__gte=book.version, scenarios=row).exists():
        mark_by(row, book)
    return row


def mark_by(scenario: Scenario, book: RuleBook) -> None:
    """Let a rule book mark new attempts at a scenario from here on; what is open goes on by the book it began with."""
    scenario.rule_book = book
    scenario.save(update_fields=["rule_book"])


@transaction.atomic
def put_in_use(book: RuleBook, by: Person, *, now: datetime) -> Scenario:
    """Let an earlier version mark again; the one in use retires, and nothing that was judged changes."""
    scenario = Scenario.objects.select_for_update().get(code=book.code, version=book.scenario_version)
    if scenario.rule_book_id == book.pk:
        raise PublishingRefused(_("Version %(version)d is in use already.") % {"version": book.version})
    mark_by(scenario, book)
    _enter(book, "book_in_use", Hands(by, by), now)
    return scenario


def _enter(book: RuleBook, kind: str, hands: Hands, now: datetime) -> None:
    what = {
        "book": book.code,
        "version": book.version,
        "scenario_version": book.scenario_version,
        "digest": book.digest,
        "by": log.stream_of(hands.written_by),
        "reviewed_by": log.stream_of(hands.reviewed_by),
    }
    log.enter(log.SCHOOL, kind, what, now=now)
