"""The sentences of the record."""

from datetime import UTC, datetime

import pytest

from assessments.competence import Change, Missing, Stuck
from assessments.competence.evidence import KINDS
from assessments.views.wording import change_words, kind_words, missing_words, stuck_words
from tests.assessments.competence.pieces import NOON, ask, decision


@pytest.mark.parametrize(
    ("why", "asked", "have", "said"),
    [
        ("none", ask(), 0, "One paper-mode attempt at COA-01 is still to be done."),
        ("none", ask(scenarios=("A-1", "A-2")), 0, "One paper-mode attempt at A-1 or A-2 is still to be done."),
        ("none", ask(scenarios=()), 0, "One paper-mode attempt is still to be done."),
        ("too_few", ask(count=5), 2, "3 paper-mode attempts are still to be done."),
        ("too_few", ask(count=5, mode=""), 2, "3 attempts are still to be done."),
        ("none", ask(mode=""), 0, "One attempt at COA-01 is still to be done."),
        ("none", ask(mode="", scenarios=()), 0, "One attempt is still to be done."),
        ("none", ask(kind="oral"), 0, "1 is still to be done."),
        ("too_few", ask(kind="log", count=3), 1, "2 are still to be done."),
        ("one_day", ask(count=2, days=2), 2, "It has to be spread over 2 days."),
        ("one_substrate", ask(count=2, substrates=2), 2, "It has to be done on more than one surface."),
        ("wrong_witness", ask(witness=("X",)), 0, "It was done, but not seen by the right person."),
        ("not_gathered", ask(kind="bench"), 0, "This site can't gather bench practicals yet."),
        ("not_gathered", ask(), 0, "COA-01 can't be taken on this site yet."),
        ("not_gathered", ask(scenarios=()), 0, "This site has no such scenario yet."),
        ("too_old", ask(), 0, "It is too old."),
    ],
)  # fmt: skip
def test_what_is_missing_is_said(why, asked, have, said):
    assert missing_words(Missing(why, asked, have, None)) == said


def test_since_when_it_is_too_old_is_said():
    missing = Missing("too_old", ask(), 0, None, datetime(2027, 10, 14, 12, tzinfo=UTC))
    assert missing_words(missing) == "It is too old since 14 October 2027."


@pytest.mark.parametrize(
    ("kind", "reason", "said"),
    [
        ("declined", "No lamp was moved.", "Declined by Ines: No lamp was moved."),
        ("declined", "", "Declined by Ines."),
        ("more_asked", "One more.", "More asked for by Ines: One more."),
    ],
)
def test_who_turned_it_down_and_why_is_said(kind, reason, said):
    missing = Missing("turned_down", None, 0, decision(kind, NOON))
    assert missing_words(missing, by="Ines", reason=reason) == said


@pytest.mark.parametrize(
    "why",
    ["new_evidence", "gone", "rearranged", "rejudged", "counts", "no_longer_counts", "decided", "requirement",
     "someone_else"],
)  # fmt: skip
def test_every_change_has_its_own_sentence(why):
    said = change_words(Change(why, "e1"))
    assert said.endswith(".")
    assert "e1" not in said


def test_a_new_result_is_said_to_be_new():
    assert change_words(Change("new_evidence", "e1")) == "A new result was filed since you opened this page."


def test_every_kind_has_a_name_of_its_own():
    assert len({kind_words(one) for one in KINDS}) == len(KINDS)


def test_on_what_somebody_is_stuck_is_said():
    assert stuck_words(Stuck("rule", "R41", times=3)) == "R41: not met the last 3 times."
    assert stuck_words(Stuck("quiet", days=15)) == "Nothing for 15 days."
