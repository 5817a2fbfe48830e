"""The record, read: rows to value objects, and exactly what a signature would cover."""

import hashlib
import json

import pytest

from assessments.record import deed_for, gathered, judged_text, record_of, records_of

pytestmark = pytest.mark.django_db


def test_what_can_be_gathered_are_scenarios_that_stand_open(shelves, now):
    from assessments.models import Scenario

    assert gathered() == {"scenario", *Scenario.objects.values_list("code", flat=True)}
    assert {"COA-01", "INS-01"} < gathered()
    Scenario.objects.update(retired_at=now)
    assert gathered() == {"scenario"}


def test_records_come_in_two_queries_however_many(sit, trainee, other, signed, django_assert_num_queries):
    sit(other)
    with django_assert_num_queries(2):
        records = records_of([trainee, other])
        found = {key: (len(one.shown), [row.by.name for row in one.decisions]) for key, one in records.items()}
    assert found == {trainee.pk: (1, ["Sigrid Signer"]), other.pk: (1, [])}


def test_the_standing_follows_the_path(trainee, sit, signer, signed, now):
    assert record_of(trainee).standing("COA2", now, gathered()).code == "signed"
    assert record_of(trainee).standing("INS1", now, gathered()).code == "not_started"


def test_a_deed_holds_ids_and_no_name(sit, trainee, signer, now):
    sit(trainee)
    sit(trainee, answers={})
    deed = deed_for(record_of(trainee), "COA2", signer, now)
    told = json.dumps(deed.as_json())
    assert (len(deed.evidence), len(deed.counted)) == (2, 1)
    assert not any(word in told for word in (trainee.name, trainee.email, signer.name))


def test_what_was_judged_reads_the_same_from_the_rows(sit, trainee):
    attempt = sit(trainee)
    text = judged_text(attempt)
    fresh = judged_text(type(attempt).objects.get(pk=attempt.pk))
    assert (text, list(json.loads(text))) == (fresh, ["answers", "facts", "findings"])
    attempt.answers.filter(task="dew_point").update(value=99)
    assert hashlib.sha256(judged_text(attempt).encode()) != hashlib.sha256(text.encode())
    assert '"dew_point":99' in judged_text(attempt)
