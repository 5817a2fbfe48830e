"""Another rule book looks at what was judged: nothing changes until somebody says so, with a reason."""

import json

import pytest

from assessments import journey, log
from assessments.agreement import first_disagreement
from assessments.models import Evidence, Finding, LogEntry
from assessments.rejudging import RuleChange, apply_change, changes, judged_otherwise
from courses.actions import erase_person
from tests.factories import MembershipFactory

pytestmark = pytest.mark.django_db


def test_what_would_come_out_otherwise_is_shown_and_nothing_is_written(sit_wide, trainee, second_book):
    attempt = sit_wide(trainee)
    before = (Evidence.objects.count(), Finding.objects.count(), LogEntry.objects.count())
    (change,) = changes(second_book)
    assert (change.evidence.attempt, change.was.outcome, change.now.outcome) == (
        attempt,
        "not_yet_satisfactory",
        "satisfactory",
    )
    assert change.rules == (RuleChange("COA-01.2", "not_met", "met"),)
    assert (change.now.points - change.was.points, change.now.of) == (2, change.was.of)
    assert (Evidence.objects.count(), Finding.objects.count(), LogEntry.objects.count()) == before


def test_what_comes_out_the_same_is_no_change(sit, trainee, second_book):
    sit(trainee)
    ticks = []
    assert list(changes(second_book, lambda: ticks.append(1))) == []
    assert (judged_otherwise(second_book).count(), ticks) == (1, [1])


def test_a_change_is_filed_beside_the_first_which_stays(sit_wide, trainee, second_book, now):
    log.begin(now)
    attempt = sit_wide(trainee)
    (change,) = changes(second_book)
    again = apply_change(change, second_book, reason="The margin was too tight.", now=now)
    attempt.refresh_from_db()
    assert (attempt.outcome, again.outcome, again.replaces) == ("not_yet_satisfactory", "satisfactory", change.evidence)
    found = {one.rejudgement_id: one.verdict for one in Finding.objects.filter(attempt=attempt, code="COA-01.2")}
    assert found == {None: "not_met", again.pk: "met"}
    assert (again.rule_book, again.rejudgement.rule_book) == (second_book.digest, second_book)
    assert first_disagreement() is None
    assert list(changes(second_book)) == []


def test_judged_again_by_the_first_book_it_is_compared_with_what_stands_now(sit_wide, trainee, second_book, now):
    attempt = sit_wide(trainee)
    (change,) = changes(second_book)
    apply_change(change, second_book, reason="The margin was too tight.", now=now)
    (back,) = changes(attempt.rule_book)
    assert (back.was.outcome, back.now.outcome) == ("satisfactory", "not_yet_satisfactory")
    assert back.rules == (RuleChange("COA-01.2", "met", "not_met"),)


def test_whoever_was_erased_is_left_as_they_are(sit_wide, trainee, second_book, now):
    sit_wide(trainee)
    erase_person(trainee, by=MembershipFactory(role="manager", cohort=None).person, now=now)
    assert (list(changes(second_book)), judged_otherwise(second_book).count()) == ([], 1)


def test_a_stored_mark_is_reproduced_bit_for_bit(sit, sit_wide, trainee, now):
    for attempt in (sit(trainee), sit_wide(trainee), sit(trainee, answers={}, seed=11)):
        marked = journey.marked_by(attempt.rule_book, attempt)
        assert marked.digest == attempt.digest == attempt.rule_book.digest
        assert json.dumps(marked.trace, sort_keys=True) == json.dumps(attempt.trace, sort_keys=True)
        assert (marked.outcome, marked.points, marked.of) == (attempt.outcome, attempt.points, attempt.of)
        kept = [[one.code, one.verdict, one.points, one.values] for one in attempt.findings.at_first()]
        again = [
            [one.code, one.verdict, one.points, [[each.name, each.value, each.unit] for each in one.values]]
            for one in marked.findings
        ]
        assert json.loads(json.dumps(again)) == kept
        assert attempt.scenario.marker(attempt.rule_book).book.book.digest == attempt.digest
