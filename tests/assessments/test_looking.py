"""An attempt with something to look at: pictures hung for one person, readings asked for, the whole read in words."""

from datetime import timedelta
from uuid import uuid4

import pytest

from assessments import journey
from assessments.agreement import disagreements
from assessments.errors import AttemptRefused
from assessments.journey import Given
from assessments.models import Evidence, Scenario
from assessments.record import judged_text
from assessments.views.lines import evidence_line
from courses.models import HungPicture

pytestmark = pytest.mark.django_db


@pytest.fixture
def practice(trainee, shelves, now):
    scenario = Scenario.objects.get(code="INS-02", version=1)
    return journey.open_attempt(trainee, scenario, "practice", now=now, seed=4)


def wrong():
    """Return what is wrong with what was filed; roles made without an entry are no matter here."""
    return [one.why for one in disagreements() if "role" not in one.why]


def ask(attempt, now, *readings, key=None, seen=0):
    return journey.save_answer(attempt, Given("asked", list(readings), key or uuid4(), seen), now=now)


def test_an_attempt_hangs_its_pictures_for_whoever_sits_it(practice, trainee):
    hung = HungPicture.objects.filter(code__in=practice.pictures.values())
    assert practice.pictures.keys() == {one.name for one in practice.scenario.spec.pictures}
    assert {(one.purpose, one.owner) for one in hung} == {("paper", trainee)}
    assert not any(code in text for code in practice.pictures.values() for text in practice.facts)


def test_two_people_with_the_same_facts_have_pictures_of_their_own(practice, other, now):
    theirs = journey.open_attempt(other, practice.scenario, "practice", now=now, seed=4)
    assert theirs.facts == practice.facts
    assert set(theirs.pictures.values()).isdisjoint(practice.pictures.values())


def test_a_reading_that_was_asked_for_stays_asked_for(practice, now):
    ask(practice, now, "wet")
    ask(practice, now, "cloth", seen=1)
    saved = ask(practice, now, seen=2)
    assert saved.answer.value == ["wet", "cloth"]
    assert journey.answers_of(practice)["asked"] == ["wet", "cloth"]


def test_asked_in_two_tabs_both_readings_count(practice, now):
    ask(practice, now, "wet")
    beside = ask(practice, now, "cloth")
    assert (beside.fate, journey.answers_of(practice)["asked"]) == ("kept", ["wet", "cloth"])


def test_sent_twice_a_reading_is_asked_for_once(practice, now):
    key = uuid4()
    ask(practice, now, "wet", key=key)
    ask(practice, now, "cloth", seen=1)
    again = ask(practice, now, "wet", key=key)
    assert (again.fate, again.answer.value) == ("kept", ["wet"])
    assert practice.answers.count() == 2


def test_read_in_words_it_is_said_on_the_record_and_committed_to(trainee, practice, now):
    plain = judged_text(practice)
    practice = journey.describe(practice)
    assert journey.describe(practice).described
    assert judged_text(practice) != plain
    done = journey.hand_in(practice, now=now + timedelta(minutes=3))
    evidence = Evidence.objects.get(attempt=done)
    assert evidence.described
    assert "pictures read in words" in evidence_line(evidence)["words"]
    assert wrong() == []


def test_a_described_attempt_that_is_passed_off_as_seen_is_found_out(practice, now, unguarded):
    journey.describe(practice)
    journey.hand_in(practice, now=now)
    Evidence.objects.update(described=False)
    assert wrong() == ["Its row has described None; 'in words' was entered."]


def test_what_has_no_pictures_or_is_closed_isnt_read_in_words(trainee, practice, now):
    bare = journey.open_attempt(trainee, Scenario.objects.get(code="COA-01"), "practice", now=now)
    journey.put_away(practice, now=now)
    for attempt in (bare, practice):
        with pytest.raises(AttemptRefused, match="no picture here to read in words"):
            journey.describe(attempt)


@pytest.fixture
def trials(trainee, shelves, now):
    scenario = Scenario.objects.get(code="PLN-03", version=1)
    return journey.open_attempt(trainee, scenario, "practice", now=now, seed=4)


def lay(attempt, now, *spots, seen=0):
    return journey.save_answer(attempt, Given("trials", list(spots), uuid4(), seen), now=now)


def test_a_spot_that_was_laid_stays_laid_from_whichever_tab(trials, now):
    cut, sand = {"op": "spot_cut", "sets": "2"}, {"op": "spot_sand", "grade": "P1500"}
    lay(trials, now, cut)
    beside = lay(trials, now, sand)
    assert (beside.fate, journey.answers_of(trials)["trials"]) == ("kept", [cut, sand])
    lay(trials, now, cut, seen=2)
    assert journey.answers_of(trials)["trials"] == [cut, sand]
