"""What the database itself refuses of the record."""

import uuid

import pytest
from django.db import IntegrityError, transaction

from assessments.models import Decision, Evidence, Note

pytestmark = pytest.mark.django_db


def copy(row, **changed):
    fields = {one.attname: getattr(row, one.attname) for one in row._meta.fields if not one.primary_key}
    return type(row)(**{**fields, "id": uuid.uuid4(), **changed})


@pytest.mark.parametrize(
    "changed",
    [
        {"proved_at": None},
        {"until": None},
        {"kind": "withdrawn"},
    ],
)
def test_a_signature_without_proof_or_end_and_a_withdrawal_of_nothing(signed, changed):
    with pytest.raises(IntegrityError), transaction.atomic():
        copy(signed, **changed).save(force_insert=True)
    assert Decision.objects.count() == 1


def test_nobody_decides_on_themself(signed):
    with pytest.raises(IntegrityError), transaction.atomic():
        copy(signed, by_id=signed.person_id).save(force_insert=True)


def test_an_attempt_is_filed_once(signed):
    with pytest.raises(IntegrityError), transaction.atomic():
        copy(Evidence.objects.get()).save(force_insert=True)


def test_a_signature_is_withdrawn_once(signed):
    taken = copy(signed, kind="withdrawn", withdraws_id=signed.pk)
    taken.save(force_insert=True)
    with pytest.raises(IntegrityError), transaction.atomic():
        copy(taken).save(force_insert=True)


def test_a_note_goes_with_one_row(signed):
    with pytest.raises(IntegrityError), transaction.atomic():
        Note.objects.create(text="of nothing")
    assert str(Note(decision=signed, text="Why.")) == "Why."
    assert (str(signed), str(Evidence.objects.get())) == ("COA2 signed", "COA-01 satisfactory")
