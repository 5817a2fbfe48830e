"""The rows of the log."""

import pytest
from django.db import IntegrityError, transaction

from assessments import log
from assessments.models import LogEntry, Salt, TreeHead
from tests.factories import PersonFactory


def test_a_row_says_what_it_is(school, now):
    entry = log.enter(log.SCHOOL, "noted", {}, now=now)
    head = TreeHead.objects.get()
    person = PersonFactory()
    assert (str(entry), str(head)) == ("1 noted", f"1 {head.root[:12]}")
    assert str(Salt.objects.create(person=person, value="ab")) == f"salt of {person.pk}"


def test_a_stream_has_one_entry_of_a_number(school, now):
    first = log.enter(log.SCHOOL, "noted", {}, now=now)
    fields = {one.attname: getattr(first, one.attname) for one in LogEntry._meta.fields}
    with pytest.raises(IntegrityError), transaction.atomic():
        LogEntry.objects.create(**{**fields, "seq": 2})
