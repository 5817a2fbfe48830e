"""The page of a record, put together."""

from datetime import timedelta

import pytest

from assessments import journey
from assessments.views.recorded import SHOWN, chain_words, events_of, lead, record_page
from courses.proofs import Proof

pytestmark = pytest.mark.django_db


def element(page, code):
    return next(one for unit in page["units"] for one in unit["elements"] if one["code"] == code)


def test_the_hand_is_offered_to_who_may_sign_and_only_when_it_waits(sit, trainee, signer, instructor, now):
    assert element(record_page(signer, trainee, now), "COA2")["hand"] is None
    sit(trainee)
    assert element(record_page(signer, trainee, now), "COA2")["hand"]["words"] == "Look and sign"
    for reader in (trainee, instructor):
        assert element(record_page(reader, trainee, now), "COA2")["hand"] is None


def test_what_cannot_be_gathered_is_named(trainee, now):
    asks = element(record_page(trainee, trainee, now), "SAF1")["asks"]
    assert {one["state"] for one in asks} == {"not_gathered"}
    assert all(one["missing"] for one in asks)


def test_events_run_from_the_newest(sit, trainee, signer, signed, now):
    journey.withdraw(signed, signer, Proof("totp", now), reason="Mixed up.", now=now + timedelta(minutes=1))
    from assessments.record import record_of

    told = [(one["title"], one["symbol"]) for one in events_of(record_of(trainee))]
    assert told[0] == ("COA2: Signature withdrawn", "lapsed")
    assert ("COA2: Signed", "signed") in told
    assert ("Handed in and marked", "met") in told


def test_a_long_record_shows_its_newest_events_first(sit, trainee, now, monkeypatch):
    for _time in range(3):
        sit(trainee, answers={})
    assert record_page(trainee, trainee, now)["more_url"] is None
    monkeypatch.setattr("assessments.views.recorded.SHOWN", 2)
    short, whole = (record_page(trainee, trainee, now, whole=one) for one in (False, True))
    assert (len(short["events"]), short["more_url"], len(whole["events"])) == (2, "?all=1", 3)
    assert SHOWN == 40


@pytest.mark.parametrize(
    ("standings", "words"),
    [
        (["not_started"] * 2, "0 of 2 elements are signed."),
        (["signed", "ready"], "1 of 2 elements is signed. One waits for a signature."),
        (["due", "lapsed", "ready", "ready"], "0 of 4 elements are signed. 2 wait for a signature. 2 are due again."),
    ],
)
def test_the_lead_counts_what_waits(standings, words):
    assert lead(standings) == words


def test_an_altered_record_says_so():
    assert chain_words(1, whole=True) == "1 entry, not altered"
    assert "don't fit together" in chain_words(3, whole=False)
