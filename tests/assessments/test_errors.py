"""Refusals carry their sentence, and a changed record what changed."""

from assessments.competence import Change
from assessments.errors import RecordChanged, SignatureRefused


def test_a_changed_record_says_what_changed():
    change = Change("new_evidence", "e")
    refusal = RecordChanged("Look again.", (change,))
    assert (str(refusal), refusal.changes) == ("Look again.", (change,))


def test_any_other_refusal_names_no_change():
    assert SignatureRefused("No.").changes == ()
