"""What is signed, in words."""

import pytest

from assessments.record import deed_for, record_of
from assessments.views.deeds import decision_page, deed_words, fingerprint, sign_page, taught_words
from courses.models import Membership

pytestmark = pytest.mark.django_db


def test_the_words_name_person_element_version_and_end(sit, signer, trainee, now):
    sit(trainee)
    deed = deed_for(record_of(trainee), "COA2", signer, now)
    words = deed_words(deed, signer, trainee, now, None)
    assert (
        "<b>COA2 Read the day</b>, requirement version 0, on April\u00a014, 2026, until April\u00a014, 2028." in words
    )


def test_a_name_is_no_markup(sit, signer, trainee, now):
    sit(trainee)
    trainee.name = "<script>alert(1)</script>"
    deed = deed_for(record_of(trainee), "COA2", signer, now)
    assert "<script>" not in deed_words(deed, signer, trainee, now, None)


def test_a_fingerprint_is_read_in_fours():
    assert fingerprint("0123456789abcdef" * 4) == "0123 4567 89ab cdef"


def test_what_the_signer_taught_is_told(signer, trainee):
    assert taught_words(signer, trainee, "COA2") == "none of this"
    Membership.objects.filter(person=signer).update(teaches=["COA"])
    assert taught_words(signer, trainee, "COA2") == "Coat and cure"


def test_evidence_that_did_not_count_stands_beside_what_did(sit, signer, trainee, now):
    sit(trainee)
    sit(trainee, answers={})
    page = sign_page(signer, trainee, "COA2", now)
    assert (page["standing"], page["deed"]["count"], len(page["others"])) == ("ready", 2, 1)
    assert [one.letter for one in page["criteria"]] == ["a", "b", "c", "d"]


def test_a_decision_is_shown_as_it_was_made(signed, signer, trainee):
    page = decision_page(signer, signed)
    assert (page["decision"]["by"], page["withdrawn"]) == ("Sigrid Signer", None)
    assert "COA2 Read the day" in page["deed_words"]
    assert page["decision"]["withdraw_url"]
    assert decision_page(trainee, signed)["decision"]["withdraw_url"] is None
