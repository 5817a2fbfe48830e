"""Scenarios and rule books are published here: a version once out never changes."""

import hashlib
from datetime import datetime

from django.db import transaction
from django.utils.translation import gettext as _

from assessments.errors import PublishingRefused
from assessments.models import RuleBook, Scenario
from assessments.rules import RuleBook as Book
from assessments.scenarios.spec import Scenario as Spec


@transaction.atomic
def publish_book(book: Book, text: str, shared: str, *, now: datetime) -> RuleBook:
    """Publish a rule book, or return its row if this very text is out."""
    row = RuleBook.objects.filter(digest=book.digest).first()
    if row:
        return row
    return RuleBook.objects.create(
        code=book.code, version=book.version, digest=book.digest, text=text, shared=shared, published_at=now
    )


@transaction.atomic
def publish_scenario(spec: Spec, text: str, book: RuleBook, *, now: datetime) -> Scenario:
    """Publish a version of a scenario; refuses another text under a version that is out."""
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
    if row.rule_book_id != book.pk:
        row.rule_book = book
        row.save(update_fields=["rule_book"])
    return row
