"""The path of an attempt, one test per turning: opened, answered, crossed, late, handed in, closed by the clock."""

import threading
from datetime import timedelta
from uuid import uuid4

import pytest
from django.db import connection, transaction

from assessments import journey
from assessments.competence import Deed
from assessments.errors import AnswerRefused, AttemptRefused, RecordChanged, SignatureRefused
from assessments.journey import Given
from assessments.models import Answer, Attempt, Decision, Finding, Scenario
from assessments.record import gathered, record_of
from courses.proofs import Proof
from tests.factories import MembershipFactory

pytestmark = pytest.mark.django_db
PAPER, PRACTICE = Attempt.Mode.PAPER, Attempt.Mode.PRACTICE


@pytest.fixture
def scenario(shelves):
    return Scenario.objects.get(code="COA-01", version=1)


@pytest.fixture
def paper(trainee, scenario, now):
    return journey.open_attempt(trainee, scenario, PAPER, now=now, seed=7)


@pytest.fixture
def practice(trainee, scenario, now):
    return journey.open_attempt(trainee, scenario, PRACTICE, now=now, seed=7)


def give(attempt, value, now, *, task="dew_point", seen=0, key=None, unheard=()):
    given = Given(task, value, key or uuid4(), seen, frozenset(unheard))
    return journey.save_answer(attempt, given, now=now)


def own_key(attempt):
    from assessments.scenarios.draw import answer_key, key_of

    spec = attempt.scenario.spec
    return answer_key(spec, key_of(spec, journey.facts_of(attempt))).as_json()


class TestOpening:
    """An attempt is opened once, with facts of its own."""

    def test_facts_are_stored_whole_and_the_seed_is_secret_chance(self, trainee, scenario, now):
        first, second = (
            journey.open_attempt(person, scenario, PRACTICE, now=now)
            for person in (trainee, type(trainee).objects.create_user("b@test.example", name="B"))
        )
        assert first.facts.keys() >= {"air_degc", "air_rh", "ir_rail_degc", "forecast"}
        assert first.seed != second.seed
        assert max(int(first.seed), int(second.seed)) > 2**64

    def test_an_open_attempt_is_returned_instead_of_a_second(self, trainee, scenario, practice, now):
        again = journey.open_attempt(trainee, scenario, PRACTICE, now=now + timedelta(hours=1))
        assert (again.pk, Attempt.objects.count()) == (practice.pk, 1)

    def test_practice_and_paper_stand_side_by_side(self, practice, paper):
        assert (practice.deadline, paper.is_open, practice.is_open) == (None, True, True)

    def test_a_paper_ends_after_its_minutes(self, paper, now):
        assert paper.deadline == now + timedelta(minutes=12)

    def test_extra_time_is_the_persons_own(self, trainee, scenario, now):
        trainee.extra_time_percent = 25
        trainee.save()
        assert journey.open_attempt(trainee, scenario, PAPER, now=now).deadline == now + timedelta(minutes=15)

    def test_a_paper_left_behind_is_closed_at_its_deadline_before_the_next(self, trainee, scenario, paper, now):
        fresh = journey.open_attempt(trainee, scenario, PAPER, now=now + timedelta(days=2))
        paper.refresh_from_db()
        assert (fresh.number, paper.closed_at, paper.outcome) == (2, paper.deadline, "cannot_certify")


class TestAnswering:
    """Nothing acknowledged is lost; nothing is overwritten unseen."""

    def test_the_newest_answer_counts_and_the_older_stays(self, practice, now):
        first = give(practice, 9.0, now)
        second = give(practice, 9.4, now, seen=first.answer.sequence)
        assert (first.fate, second.fate, second.answer.sequence) == ("kept", "kept", 2)
        assert journey.answers_of(practice) == {"dew_point": 9.4}
        assert practice.answers.count() == 2

    def test_the_same_answer_sent_twice_is_kept_once(self, practice, now):
        key = uuid4()
        first, second = (give(practice, 9.0, now, key=key) for _time in range(2))
        assert (first.answer, second.fate, practice.answers.count()) == (second.answer, "kept", 1)

    def test_a_key_that_returns_with_another_value_is_refused(self, practice, now):
        key = uuid4()
        give(practice, 9.0, now, key=key)
        with pytest.raises(AnswerRefused, match="carries the mark of another one"):
            give(practice, 8.0, now, key=key)
        assert journey.answers_of(practice) == {"dew_point": 9.0}

    def test_two_tabs_two_answers_both_are_kept_and_the_acknowledged_one_counts(self, practice, now):
        give(practice, 9.0, now)
        crossed = give(practice, 8.0, now)
        assert (crossed.fate, crossed.answer.sequence, crossed.counts.value) == ("conflict", None, 9.0)
        assert journey.answers_of(practice) == {"dew_point": 9.0}
        chosen = give(practice, 8.0, now, seen=crossed.counts.sequence)
        assert (chosen.fate, journey.answers_of(practice)) == ("kept", {"dew_point": 8.0})

    def test_two_tabs_with_the_same_answer_agree(self, practice, now):
        give(practice, 9.0, now)
        assert give(practice, 9.0, now).fate == "kept"

    def test_a_page_whose_acknowledgement_was_lost_is_not_at_odds_with_itself(self, practice, now):
        lost = uuid4()
        give(practice, 9.0, now, key=lost)
        assert give(practice, 9.5, now, unheard=[lost]).fate == "kept"
        assert journey.answers_of(practice) == {"dew_point": 9.5}

    def test_an_answer_can_be_taken_back(self, practice, now):
        give(practice, 9.0, now)
        give(practice, None, now, seen=1)
        assert journey.answers_of(practice) == {"dew_point": None}


class TestTheClock:
    """The deadline is the server's; thirty seconds of grace count, no more."""

    @pytest.mark.parametrize(("seconds", "fate"), [(-1, "kept"), (29, "kept"), (30, "kept"), (31, "late")])
    def test_grace_is_thirty_seconds(self, paper, seconds, fate):
        assert give(paper, 9.0, paper.deadline + timedelta(seconds=seconds)).fate == fate

    def test_a_late_answer_is_kept_marked_and_not_counted(self, paper):
        late = give(paper, 9.0, paper.deadline + timedelta(minutes=1))
        paper.refresh_from_db()
        assert (late.answer.late, late.answer.sequence, paper.closed_at) == (True, None, paper.deadline)
        assert journey.answers_of(paper) == {}

    def test_an_answer_to_a_closed_attempt_is_kept_as_late(self, practice, now):
        journey.hand_in(practice, now=now)
        assert give(practice, 9.0, now).fate == "late"

    def test_closing_what_is_due_leaves_the_rest(self, paper, practice, now):
        assert journey.close_due(paper.deadline + timedelta(seconds=30)) == 0
        assert journey.close_due(paper.deadline + timedelta(seconds=31)) == 1
        assert journey.close_due(now + timedelta(days=9)) == 0
        practice.refresh_from_db()
        assert practice.is_open

    def test_handing_in_after_time_counts_at_the_deadline(self, paper, now):
        closed = journey.hand_in(paper, now=now + timedelta(hours=3))
        assert closed.closed_at == paper.deadline


class TestHandingIn:
    """Marked once, with reasons, by the rule book of the day it was opened."""

    def test_the_key_itself_is_satisfactory_with_every_point(self, practice, now):
        for task, value in own_key(practice).items():
            give(practice, value, now, task=task)
        closed = journey.hand_in(practice, now=now)
        assert (closed.outcome, closed.points, closed.closed_at) == ("satisfactory", closed.of, now)
        assert {found.verdict for found in closed.findings.all()} <= {"met", "not_applicable"}

    def test_nothing_answered_cannot_be_certified_and_nothing_is_called_wrong(self, practice, now):
        closed = journey.hand_in(practice, now=now)
        assert closed.outcome == "cannot_certify"
        assert not closed.findings.filter(verdict="not_met").exists()

    def test_it_is_marked_exactly_once(self, practice, now):
        first = journey.hand_in(practice, now=now)
        again = journey.hand_in(practice, now=now + timedelta(hours=1))
        assert (again.closed_at, Finding.objects.count()) == (first.closed_at, first.findings.count())

    def test_the_mark_keeps_the_hash_of_its_rules_and_the_trace(self, practice, now):
        closed = journey.hand_in(practice, now=now)
        assert closed.digest == closed.rule_book.digest == closed.rule_book.book.digest
        assert closed.trace

    def test_the_key_stays_shut_while_it_is_open(self, practice, now):
        with pytest.raises(AttemptRefused, match="stays shut"):
            journey.key_for(practice)
        assert journey.key_for(journey.hand_in(practice, now=now))["decision"]


class TestPuttingAway:
    """Practice may be put away for new facts; a paper may not."""

    def test_practice_is_closed_without_a_verdict(self, practice, now):
        closed = journey.put_away(practice, now=now)
        assert (closed.is_open, closed.outcome, closed.findings.count()) == (False, "", 0)
        assert list(Attempt.objects.kept()) == []

    def test_a_paper_is_handed_in_not_put_away(self, paper, now):
        with pytest.raises(AttemptRefused, match="A paper can't be put away"):
            journey.put_away(paper, now=now)

    def test_what_was_handed_in_stays_as_it_came_out(self, practice, now):
        journey.hand_in(practice, now=now)
        assert journey.put_away(practice, now=now).outcome == "cannot_certify"


def test_the_database_itself_refuses_a_second_open_attempt(practice):
    from django.db import IntegrityError

    practice.pk, practice.number = uuid4(), 2
    with pytest.raises(IntegrityError), transaction.atomic():
        practice.save(force_insert=True)


@pytest.mark.django_db(transaction=True)
def test_two_requests_at_once_open_one_attempt(trainee, scenario, now):
    found, start = [], threading.Barrier(6)

    def open_it():
        start.wait()
        found.append(journey.open_attempt(trainee, scenario, PAPER, now=now).pk)
        connection.close()

    threads = [threading.Thread(target=open_it) for _ in range(6)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert (len(found), len(set(found)), Attempt.objects.count()) == (6, 1, 1)


@pytest.mark.django_db(transaction=True)
def test_two_hand_ins_at_once_mark_once(practice, now):
    start = threading.Barrier(6)

    def hand_in():
        start.wait()
        journey.hand_in(practice, now=now)
        connection.close()

    threads = [threading.Thread(target=hand_in) for _ in range(6)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    codes = list(Finding.objects.values_list("code", flat=True))
    assert len(codes) == len(set(codes)) > 0
    assert Answer.objects.count() == 0


class TestSigning:
    """A signature stands on exactly what was shown, by who may, proved now."""

    def test_it_keeps_who_when_how_and_what(self, signed, signer, trainee, now):
        kept = (signed.kind, signed.by, signed.role, signed.proof, signed.proved_at, signed.requirement_version)
        assert kept == ("signed", signer, "instructor", "totp", now, 0)
        assert signed.until == now.replace(year=now.year + 2)
        assert signed.deed["evidence"] == [[str(trainee.evidence.get().pk), "satisfactory"]]

    @pytest.mark.parametrize("minutes", [-1, 6])
    def test_a_stale_proof_signs_nothing(self, sit, signer, trainee, shown, now, minutes):
        sit(trainee)
        proof = Proof("totp", now - timedelta(minutes=minutes))
        with pytest.raises(SignatureRefused, match="older than five minutes"):
            journey.sign(signer, trainee, shown(signer, trainee), proof, now=now)
        assert Decision.objects.count() == 0

    def test_a_record_that_changed_since_it_was_shown_is_refused_with_what_changed(
        self, sit, signer, trainee, shown, now
    ):
        sit(trainee)
        deed = shown(signer, trainee)
        sit(trainee, answers={}, at=now + timedelta(minutes=1))
        with pytest.raises(RecordChanged, match="changed since you opened") as refusal:
            journey.sign(signer, trainee, deed, Proof("totp", now), now=now + timedelta(minutes=2))
        assert [one.why for one in refusal.value.changes] == ["new_evidence"]

    def test_the_same_is_signed_once(self, signed, signer, trainee, now):
        with pytest.raises(SignatureRefused, match="signed exactly this already"):
            journey.sign(signer, trainee, Deed.of(signed.deed), Proof("totp", now), now=now)

    def test_what_is_not_ready_is_not_signed(self, sit, signer, trainee, shown, now):
        sit(trainee, mode="practice")
        with pytest.raises(SignatureRefused, match="COA2 is not ready to sign"):
            journey.sign(signer, trainee, shown(signer, trainee), Proof("totp", now), now=now)

    def test_another_element_is_not_ones_own_to_sign(self, sit, signer, trainee, shown, now):
        with pytest.raises(SignatureRefused, match="may not sign COA3"):
            journey.sign(signer, trainee, shown(signer, trainee, "COA3"), Proof("totp", now), now=now)

    def test_a_membership_ended_between_page_and_signature_is_refused(self, sit, signer, trainee, shown, now):
        sit(trainee)
        deed = shown(signer, trainee)
        signer.memberships.all().delete()
        with pytest.raises(SignatureRefused, match="may not sign"):
            journey.sign(signer, trainee, deed, Proof("totp", now), now=now)

    def test_two_instructors_at_once_leave_one_signature(self, sit, signer, trainee, remote, shown, now):
        second = MembershipFactory(role="instructor", cohort=remote, may_sign=["COA"]).person
        sit(trainee)
        first, other = shown(signer, trainee), shown(second, trainee)
        journey.sign(signer, trainee, first, Proof("totp", now), now=now)
        with pytest.raises(RecordChanged) as refusal:
            journey.sign(second, trainee, other, Proof("totp", now), now=now)
        assert [one.why for one in refusal.value.changes] == ["decided"]

    def test_declined_it_waits_for_new_evidence(self, sit, signer, trainee, shown, now):
        sit(trainee)
        journey.turn_down(signer, trainee, shown(signer, trainee), "declined", reason="Say why.", now=now)
        assert record_of(trainee).standing("COA2", now, gathered()).code == "building"
        later = now + timedelta(days=1)
        sit(trainee, at=later)
        assert record_of(trainee).standing("COA2", later, gathered()).code == "ready"

    def test_a_reason_is_asked(self, sit, signer, trainee, shown, now):
        sit(trainee)
        with pytest.raises(SignatureRefused, match="Say why"):
            journey.turn_down(signer, trainee, shown(signer, trainee), "declined", reason="  ", now=now)

    def test_withdrawn_both_stay_and_it_is_ready_again(self, signed, signer, trainee, now):
        taken = journey.withdraw(signed, signer, Proof("totp", now), reason="Wrong person.", now=now)
        assert (taken.withdraws, taken.element, Decision.objects.count()) == (signed, "COA2", 2)
        assert record_of(trainee).standing("COA2", now, gathered()).code == "ready"
        for again in (signed, taken):
            with pytest.raises(SignatureRefused, match="withdrawn"):
                journey.withdraw(again, signer, Proof("totp", now), reason="Again.", now=now)
