"""Do the rows agree with the log? Each way in which they might not is named."""

import pytest
from django.db import connection

from assessments import drafting, journey, log
from assessments.agreement import disagreements, first_disagreement
from assessments.competence.log import Broken
from assessments.models import Answer, Decision, Draft, Evidence, Finding, Note, RuleBook, Salt, Scenario
from courses import actions
from courses.models import Membership
from courses.proofs import Proof


@pytest.fixture
def record(school, remote, trainee, signer, now, sit, shown):
    """A log from its beginning: roles, evidence judged twice, a decision of each kind, all with their reasons."""
    log.begin(now)
    proof = Proof("totp", now)
    attempt = sit(trainee)
    journey.judge_again(Evidence.objects.get(), attempt.rule_book, reason="A rule was worded wrongly.", now=now)
    journey.turn_down(signer, trainee, shown(signer, trainee), "declined", reason="Talk me through it.", now=now)
    journey.turn_down(signer, trainee, shown(signer, trainee), "more_asked", reason="One more, outdoors.", now=now)
    signature = journey.sign(signer, trainee, shown(signer, trainee), proof, now=now)
    journey.withdraw(signature, signer, proof, reason="I mixed up two people.", now=now)
    return attempt


def why():
    """Return the sentences of everything that disagrees."""
    return [one.why for one in disagreements()]


def test_a_record_agrees_with_its_log(record):
    assert first_disagreement() is None


@pytest.mark.parametrize(
    ("model", "column", "value"),
    [
        (Evidence, "outcome", "not_yet_satisfactory"),
        (Evidence, "points", 1.0),
        (Evidence, "of", 99.0),
        (Evidence, "mode", "practice"),
        (Evidence, "scenario_code", "COA-09"),
        (Evidence, "scenario_version", 2),
        (Evidence, "rule_book", "ab"),
        (Evidence, "elements", ["COA1"]),
        (Evidence, "substrate", "gel_coat_2"),
        (Evidence, "judged", "ab"),
        (Decision, "element", "COA1"),
        (Decision, "role", "examiner"),
        (Decision, "requirement_version", 9),
        (Decision, "digest", "ab"),
        (Decision, "proof", "other"),
    ],
)
def test_a_row_that_was_changed_is_named_with_what_was_entered(record, unguarded, model, column, value):
    row = model.objects.order_by("pk").first()
    entered = getattr(row, column)
    model.objects.filter(pk=row.pk).update(**{column: value})
    (found,) = disagreements()
    assert found.stream == log.stream_of(row.person)
    name = {"scenario_code": "scenario", "scenario_version": "version", "requirement_version": "requirement"}
    shown = [f"{one:g}" if isinstance(one, float) else one for one in (value, entered)]
    assert found.why == f"Its row has {name.get(column, column)} {shown[0]!r}; {shown[1]!r} was entered."


@pytest.mark.parametrize(("model", "column"), [(Evidence, "happened_at"), (Evidence, "filed_at"), (Decision, "at")])
def test_a_moment_that_was_changed_is_found(record, unguarded, now, model, column):
    row = model.objects.order_by("pk").first()
    model.objects.filter(pk=row.pk).update(**{column: now.replace(year=2020)})
    (words,) = why()
    assert "2020-04-14T14:05:00.000000Z" in words


def test_evidence_of_somebody_else_is_found(other, record, unguarded, trainee):
    Evidence.objects.filter(replaces=None).update(person=other)
    found = first_disagreement()
    assert found.stream == log.stream_of(trainee)
    assert found.why.startswith("Its row has stream ")


def test_a_row_that_is_gone_and_one_that_was_slipped_in_are_found(record, unguarded, trainee, now):
    decision = Decision.objects.get(kind="declined")
    Note.objects.filter(decision=decision).delete()
    Decision.objects.filter(pk=decision.pk).delete()
    assert why() == ["The row it enters is gone."]
    decision.save(force_insert=True)
    assert why() == ["Its reason is gone."]
    Note.objects.create(decision=decision, text="Talk me through it.")
    assert why() == []
    fields = {one.attname: getattr(decision, one.attname) for one in Decision._meta.fields if not one.primary_key}
    slipped = Decision.objects.create(**fields)
    assert list(disagreements()) == [Broken(log.stream_of(trainee), 0, f"The decision {slipped.pk} was never entered.")]


def test_evidence_that_was_slipped_in_is_found(record, unguarded, trainee):
    first = Evidence.objects.get(replaces=None)
    last = Evidence.objects.exclude(replaces=None).get()
    fields = {one.attname: getattr(first, one.attname) for one in Evidence._meta.fields if not one.primary_key}
    slipped = Evidence.objects.create(**{**fields, "replaces_id": last.pk})
    assert why() == [f"The evidence {slipped.pk} was never entered."]


def test_a_row_entered_twice_is_found(record, trainee, now):
    last = log.LogEntry.objects.get(kind="declined")
    from assessments.competence.log import Entry

    log.enter(log.stream_of(trainee), "declined", Entry.of(last.body).what, now=now)
    assert f"Its row was entered already, as entry {last.seq}." in why()


def test_a_reason_that_was_rewritten_or_added_is_found(record):
    Note.objects.filter(decision__kind="declined").update(text="Well done.")
    Note.objects.create(decision=Decision.objects.get(kind="signed"), text="In a hurry.")
    assert sorted(why()) == ["Its reason is not the one that was given.", "Its row has a reason; none was entered."]


ALTERED = "The facts, answers or findings of its attempt are not what was judged."


@pytest.mark.parametrize("model", [Answer, type(None)])
def test_answers_and_facts_that_were_altered_are_found_wherever_they_were_judged(record, model):
    if model is Answer:
        Answer.objects.filter(attempt=record, task="decision").update(value="wait_a_bit")
    else:
        record.facts = {**record.facts, "air_degc": 5.0}
        record.save()
    assert why() == [ALTERED, ALTERED]


@pytest.mark.parametrize("again", [False, True])
def test_a_finding_that_was_altered_is_found_where_it_was_found(record, again):
    Finding.objects.filter(attempt=record, place=1, rejudgement__isnull=not again).update(verdict="not_met")
    broken = list(disagreements())
    kinds = [log.LogEntry.objects.get(seq=one.seq).kind for one in broken]
    assert ([one.why for one in broken], kinds) == ([ALTERED], ["rejudged" if again else "evidence"])


def test_a_salt_that_was_taken_from_somebody_who_is_here_is_found(record):
    Salt.objects.all().delete()
    assert "The facts, answers or findings of its attempt are not what was judged." in why()


def test_of_somebody_who_was_erased_nothing_can_be_told_and_nothing_is_held_against_the_log(record, trainee, now):
    actions.erase_person(trainee, by=None, now=now)
    assert (first_disagreement(), Note.objects.count(), Evidence.objects.count()) == (None, 0, 2)


def test_a_role_that_was_changed_slipped_in_or_taken_away_is_found(record, signer, remote, trainee, now):
    Membership.objects.filter(person=signer).update(may_sign=["COA"])
    assert why() == ["Its row has may_sign ['COA']; ['COA2'] was entered."]
    Membership.objects.filter(person=signer).update(may_sign=["COA2"])
    slipped = Membership.objects.create(person=trainee, role="manager")
    assert [(one.seq, one.why) for one in disagreements()] == [(0, f"The role {slipped} was never entered.")]
    slipped.delete()
    Membership.objects.filter(person=signer).delete()
    assert why() == ["The role it gives is gone, and no entry ends it."]


def test_a_role_that_was_ended_and_stands_is_found(record, signer, now):
    role = Membership.objects.get(person=signer)
    actions.end_role(role, by=None, now=now)
    assert first_disagreement() is None
    with connection.cursor() as cursor:
        columns = "id, person_id, role, cohort_id, teaches, may_sign"
        values = [role.pk or 1, signer.pk, "examiner", None, "[]", "[]"]
        cursor.execute(f"INSERT INTO courses_membership ({columns}) VALUES (%s, %s, %s, %s, %s, %s)", values)
    assert len(why()) == 1


@pytest.fixture
def published(record, draft, changed, author, reviewer, now):
    """The record, and a rule book that was written and reviewed here."""
    log.enter_role(author.memberships.get(), "given", None, now)
    log.enter_role(reviewer.memberships.get(), "given", None, now)
    drafting.send_to_review(changed(draft, points=3), author, now=now)
    return drafting.publish_draft(draft, reviewer, now=now)


def test_a_published_book_agrees_with_its_entry(published):
    assert why() == []


@pytest.mark.parametrize(
    ("change", "said"),
    [
        (
            lambda book, other: RuleBook.objects.filter(pk=book.pk).update(
                text=book.text.replace("points = 3", "points = 9")
            ),
            "The rule book COA-01@2 is not what its digest says.",
        ),
        (
            lambda book, other: RuleBook.objects.filter(pk=book.pk).update(text="no book at all"),
            "The rule book COA-01@2 is not what its digest says.",
        ),
        (
            lambda book, other: RuleBook.objects.filter(pk=book.pk).update(reviewed_by=other),
            "The rule book COA-01@2 is not the one that was entered.",
        ),
    ],
)
def test_a_rule_book_that_was_altered_is_found(published, unguarded, other, change, said):
    change(published, other)
    assert said in why()
    assert [one.stream for one in disagreements() if one.why == said] == ["school"]


def test_a_rule_book_slipped_in_or_taken_away_is_found(published, unguarded, author, reviewer, now):
    RuleBook.objects.create(
        code="COA-01",
        version=3,
        scenario_version=1,
        digest="ab",
        text=published.text,
        published_at=now,
        written_by=author,
        reviewed_by=reviewer,
    )
    assert "The rule book COA-01@3 was never entered." in why()
    RuleBook.objects.filter(version=3).delete()
    Scenario.objects.filter(code="COA-01").update(rule_book=RuleBook.objects.get(code="COA-01", version=1))
    Draft.objects.update(book=None)
    published.delete()
    assert why() == ["The rule book it enters is gone."]
