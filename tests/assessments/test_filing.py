"""What is filed: evidence with the verdict, decisions with their reason, each with its entry; what can be forgotten."""

import json

import pytest
from django.db import IntegrityError, transaction

from assessments import drafting, filing, journey
from assessments.errors import AttemptRefused, SignatureRefused
from assessments.models import Answer, Decision, Evidence, LogEntry, Note, TreeHead
from courses.proofs import Proof

pytestmark = pytest.mark.django_db


def entries(person, kind):
    found = LogEntry.objects.filter(stream=str(person.handle), kind=kind)
    return [json.loads(one.body)["what"] for one in found]


def test_a_judged_attempt_is_evidence_at_once(sit, trainee, now):
    attempt = sit(trainee)
    filed = Evidence.objects.get()
    told = (filed.attempt, filed.mode, filed.outcome, filed.points, filed.elements, filed.happened_at)
    assert told == (attempt, "paper", "satisfactory", attempt.points, ["COA2"], now)
    (what,) = entries(trainee, "evidence")
    assert (what["evidence"], what["outcome"], what["points"]) == (str(filed.pk), "satisfactory", f"{attempt.points:g}")


def test_handing_in_again_files_nothing_more(sit, trainee, now):
    journey.hand_in(sit(trainee), now=now)
    assert Evidence.objects.count() == len(entries(trainee, "evidence")) == 1


def test_an_unsatisfactory_attempt_is_evidence_too(sit, trainee):
    sit(trainee, answers={})
    assert Evidence.objects.get().outcome == "cannot_certify"


def test_evidence_and_verdict_stand_or_fall_together(sit, trainee, now):
    def file_twice():
        with transaction.atomic():
            filing.file_evidence(sit(trainee), "{}", now=now)

    with pytest.raises(IntegrityError):
        file_twice()
    assert (Evidence.objects.count(), trainee.attempts.count(), len(entries(trainee, "evidence"))) == (0, 0, 0)


def test_judged_again_it_is_filed_beside_the_first(sit, trainee, now):
    attempt = sit(trainee)
    first = Evidence.objects.get()
    second = journey.judge_again(first, attempt.rule_book, reason="A rule was worded wrongly.", now=now)
    first.refresh_from_db()
    assert (Evidence.objects.count(), second.replaces, first.outcome) == (2, first, "satisfactory")
    assert second.note.text == "A rule was worded wrongly."
    assert second.rejudgement.findings.count() == attempt.findings.at_first().count() == 15
    assert (second.rejudgement.rule_book, second.rejudgement.trace) == (attempt.rule_book, attempt.trace)
    (what,) = entries(trainee, "rejudged")
    assert (what["replaces"], "worded" in json.dumps(what)) == (str(first.pk), False)
    with pytest.raises(AttemptRefused, match="judged again already"):
        journey.judge_again(first, attempt.rule_book, reason="Once more.", now=now)
    with pytest.raises(SignatureRefused, match="Say why"):
        journey.judge_again(second, attempt.rule_book, reason=" ", now=now)


def test_a_decision_keeps_its_reason_apart_from_the_log(sit, signer, trainee, shown, now):
    sit(trainee)
    journey.turn_down(signer, trainee, shown(signer, trainee), "declined", reason=" Talk me through it. ", now=now)
    decision = Decision.objects.get()
    assert decision.note.text == "Talk me through it."
    (what,) = entries(trainee, "declined")
    assert len(what["reason"]) == 64
    assert "Talk" not in LogEntry.objects.get(kind="declined").body


def test_words_are_forgotten_and_judgements_stay(sit, signed, trainee, signer, now):
    journey.withdraw(signed, signer, Proof("totp", now), reason="I mixed up two people.", now=now)
    filing.forget_words(trainee)
    assert (Note.objects.count(), Decision.objects.count(), Evidence.objects.count()) == (0, 2, 1)
    written = [one.id for one in trainee.attempts.get().scenario.spec.tasks if one.kind == "text"]
    assert written
    assert set(Answer.objects.filter(task__in=written).values_list("value", flat=True)) == {None}
    assert Answer.objects.exclude(task__in=written).exclude(value=None).exists()


def test_what_came_out_before_there_was_a_record_is_filed_once(unguarded, sit, trainee, now):
    attempt = sit(trainee)
    for rows in (Evidence, LogEntry, TreeHead):
        rows.objects.all().delete()
    for _time in range(2):
        filing.catch_up(now)
    assert (attempt.evidence.get().outcome, attempt.evidence.count()) == ("satisfactory", 1)
    assert len(entries(trainee, "role_given")) == len(entries(trainee, "evidence")) == 1


def test_a_remark_on_a_draft_is_forgotten_with_whoever_made_it(draft, changed, author, reviewer, now):
    drafting.send_to_review(changed(draft, points=3), author, now=now)
    drafting.give_back(draft, reviewer, "Ask Pat, who fell ill.")
    filing.forget_words(author)
    draft.refresh_from_db()
    assert draft.remark == "Ask Pat, who fell ill."
    filing.forget_words(reviewer)
    draft.refresh_from_db()
    assert (draft.remark, draft.rows[1]["points"]) == ("", 3)
