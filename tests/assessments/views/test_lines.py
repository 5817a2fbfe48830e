"""Lines that the pages of the record share."""

import pytest

from assessments import journey
from assessments.record import gathered, record_of
from assessments.views.lines import ask_line, evidence_line, notches_of, reason_of, signature_line
from courses.proofs import Proof

pytestmark = pytest.mark.django_db


def test_evidence_leads_to_its_attempt(sit, trainee):
    attempt = sit(trainee)
    line = evidence_line(attempt.evidence.get())
    points = f"{attempt.points:g}"
    assert line["words"] == f"COA-01, paper: {points} of {points} points"
    assert (str(attempt.pk) in line["url"], line["outcome"]) == (True, "satisfactory")


def test_an_ask_says_what_is_missing(trainee, sit, shelves, now):
    record = record_of(trainee)
    standing = record.standing("COA2", now, gathered())
    line = ask_line(standing.asks[0], standing, record)
    assert (line["have"], line["count"], line["state"], line["evidence"]) == (0, 1, "open", [])
    assert line["missing"]
    sit(trainee)
    record = record_of(trainee)
    standing = record.standing("COA2", now, gathered())
    line = ask_line(standing.asks[0], standing, record)
    assert (line["have"], line["state"], line["missing"], len(line["evidence"])) == (1, "met", "", 1)


def test_a_signature_says_who_withdrew_it_and_why(signed, signer, trainee, now):
    assert signature_line(signed, record_of(trainee))["withdrawn"] is None
    taken = journey.withdraw(signed, signer, Proof("totp", now), reason="Wrong person.", now=now)
    line = signature_line(signed, record_of(trainee))
    assert line["withdrawn"] == {"by": "Sigrid Signer", "when": now, "reason": "Wrong person."}
    taken.note.delete()
    taken.refresh_from_db()
    assert reason_of(type(taken).objects.get(pk=taken.pk)) == ""


def test_what_several_elements_ask_for_is_counted_once(trainee, sit, now):
    sit(trainee)
    record = record_of(trainee)
    one, all_five = (
        notches_of([record.standing(code, now, gathered()) for code in codes])
        for codes in (["COA1"], ["COA1", "COA2", "COA3", "COA4", "COA5"])
    )
    assert one["done"] == 1
    assert all_five["done"] == 2
    assert all_five["total"] < 2 * one["total"]
    assert all_five["done"] + all_five["old"] < all_five["total"]
