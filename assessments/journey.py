"""The path of a trainee through an assessment, in order. Attempts, answers and findings are written here only."""

import secrets
from collections.abc import Mapping
from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from typing import Any, Literal
from uuid import UUID

from django.db import transaction
from django.utils.translation import gettext as _

from assessments import filing
from assessments.answers.sheet import joined
from assessments.competence import Deed, changes
from assessments.errors import AnswerRefused, AttemptRefused, RecordChanged, SignatureRefused
from assessments.marking import Marked, mark
from assessments.models import Answer, Attempt, Decision, Evidence, Finding, RuleBook, Scenario
from assessments.record import Record as OnRecord
from assessments.record import deed_for, gathered, judged_text, record_of
from assessments.scenarios.draw import draw, key_of, pictures_of
from assessments.scenarios.fields import Record
from assessments.scenarios.spec import Scenario as Spec
from assessments.scenarios.tasks import Task
from assessments.scenarios.worked import before_and_after, worked
from assessments.shipped import framework
from assessments.signers import signer_of, withdrawer_of
from courses import gallery
from courses.models import Membership, Person
from courses.models.picture import Purpose
from courses.pictures import plan_scenes
from courses.proofs import Proof

BEFORE_AND_AFTER = ("before the plan", "after the plan")
"""How the pictures of a panel that was worked are called among those of an attempt."""
SEEDS = 1_000_000
FRESH = timedelta(minutes=5)
"""How old the proof of who signs may be."""

Fate = Literal["kept", "conflict", "late"]


@dataclass(frozen=True, slots=True)
class Given:
    """An answer on its way in: the key its page made for it, and the newest sequence that page had seen for its task.

    `unheard` are keys of earlier answers of the same page whose acknowledgement never came back.
    """

    task: str
    value: Any
    client_key: UUID
    seen: int
    unheard: frozenset[UUID] = frozenset()

    def was_made_beside(self, counts: Answer) -> bool:
        """Say whether it was given without knowledge of the answer that counts, and differs from it."""
        knew = self.seen >= (counts.sequence or 0) or counts.client_key in self.unheard
        return not knew and counts.value != self.value


@dataclass(frozen=True, slots=True)
class Saved:
    """What became of an answer: kept, stored beside another one, or kept as late."""

    fate: Fate
    answer: Answer
    counts: Answer | None


@transaction.atomic
def open_attempt(person: Person, scenario: Scenario, mode: str, *, now: datetime, seed: int | None = None) -> Attempt:
    """Draw facts for `person` alone and start the clock; an attempt that is already open is returned instead."""
    person = Person.objects.select_for_update().get(pk=person.pk)
    mine = Attempt.objects.by(person).on(scenario.code).filter(mode=mode)
    going_on = mine.open().select_for_update().first()
    if going_on and not going_on.is_due(now):
        return going_on
    if going_on:
        _close(going_on, _deadline(going_on), now)
    spec, seed = scenario.spec, secrets.randbits(128) if seed is None else seed
    facts = draw(spec, str(seed)).facts
    return Attempt.objects.create(
        person=person,
        scenario=scenario,
        scenario_code=scenario.code,
        mode=mode,
        number=mine.count() + 1,
        seed=str(seed),
        facts=facts.as_json(),
        pictures=_hung(person, spec, facts),
        opened_at=now,
        deadline=now + timedelta(minutes=minutes_allowed(person, spec.minutes)) if mode == Attempt.Mode.PAPER else None,
        rule_book=scenario.rule_book,
    )


@transaction.atomic
def save_answer(attempt: Attempt, given: Given, *, now: datetime) -> Saved:
    """Keep an answer as it is given. Sent twice, it is kept once; given against an older page, both are kept."""
    attempt = Attempt.objects.select_for_update().select_related("scenario", "rule_book").get(pk=attempt.pk)
    if attempt.is_open and attempt.is_due(now):
        _close(attempt, _deadline(attempt), now)
    counts = attempt.answers.counted().filter(task=given.task).order_by("sequence").last()
    before = attempt.answers.filter(client_key=given.client_key).first()
    task = attempt.scenario.spec.task(given.task)
    if task and task.final:
        given = _gone_on(task, given, before or counts)
    if before:
        return _again(before, given, counts)
    late = not attempt.is_open
    differs = counts is not None and given.was_made_beside(counts)
    last = counts.sequence if counts and counts.sequence else 0
    answer = Answer.objects.create(
        attempt=attempt,
        task=given.task,
        client_key=given.client_key,
        value=given.value,
        seen=given.seen,
        sequence=None if late or differs else last + 1,
        late=late,
        received_at=now,
    )
    fate: Fate = "late" if late else "conflict" if differs else "kept"
    return Saved(fate, answer, counts if late or differs else answer)


@transaction.atomic
def describe(attempt: Attempt) -> Attempt:
    """Let the pictures of an open attempt be read in words from here on; the record says so."""
    attempt = Attempt.objects.select_for_update().get(pk=attempt.pk)
    if not attempt.is_open or not attempt.pictures:
        raise AttemptRefused(_("There is no picture here to read in words."))
    if not attempt.described:
        attempt.described = True
        attempt.save(update_fields=["described"])
    return attempt


@transaction.atomic
def hand_in(attempt: Attempt, *, now: datetime) -> Attempt:
    """Close `attempt` and mark it, exactly once; handed in again, it is returned as it came out."""
    attempt = Attempt.objects.select_for_update().select_related("scenario", "rule_book").get(pk=attempt.pk)
    if attempt.is_open:
        _close(attempt, _deadline(attempt) if attempt.is_due(now) else now, now)
    return attempt


@transaction.atomic
def put_away(attempt: Attempt, *, now: datetime) -> Attempt:
    """Close a practice attempt without marking it, so that new facts can be drawn."""
    attempt = Attempt.objects.select_for_update().get(pk=attempt.pk)
    if attempt.is_paper:
        raise AttemptRefused(_("A paper can't be put away. Hand it in."))
    if attempt.is_open:
        attempt.closed_at = now
        attempt.save(update_fields=["closed_at"])
    return attempt


@transaction.atomic
def close_if_due(attempt: Attempt, *, now: datetime) -> Attempt:
    """Close `attempt` at its deadline if time and grace are over; otherwise return it as it stands."""
    if not attempt.is_open or not attempt.is_due(now):
        return attempt
    return hand_in(attempt, now=now)


def close_due(now: datetime, person: Person | None = None) -> int:
    """Close every paper, or every one of `person`, whose time and grace are over; return how many."""
    due = Attempt.objects.due(now)
    late = list(due.by(person) if person else due)
    for attempt in late:
        close_if_due(attempt, now=now)
    return len(late)


@transaction.atomic
def judge_again(evidence: Evidence, book: RuleBook, *, reason: str, now: datetime) -> Evidence:
    """Mark the same answers by another rule book; what that comes to is filed beside what it came to before."""
    why = _reason(reason)
    attempt = Attempt.objects.select_for_update().select_related("scenario", "person").get(pk=evidence.attempt_id)
    if Evidence.objects.filter(replaces=evidence).exists():
        raise AttemptRefused(_("This result has been judged again already. Judge the newest one."))
    marked = marked_by(book, attempt)
    found = _findings(attempt, marked)
    again = filing.file_again(evidence, marked, judged_text(attempt, found), book, reason=why, now=now)
    for one in found:
        one.rejudgement = again.rejudgement
    Finding.objects.bulk_create(found)
    return again


def marked_by(book: RuleBook, attempt: Attempt) -> Marked:
    """Return what the answers that count come to by a rule book; nothing is written."""
    given = {task: value for task, value in answers_of(attempt).items() if value is not None}
    return mark(attempt.scenario.marker(book), facts_of(attempt), given)


@transaction.atomic
def sign(signer: Person, person: Person, shown: Deed, proof: Proof, *, now: datetime) -> Decision:
    """Sign exactly what was `shown`; refused where the record, the right to sign or the proof no longer holds."""
    person = Person.objects.select_for_update().get(pk=person.pk)
    _refuse_stale(proof, now)
    membership = refuse_signature(signer, person, shown, now=now)
    return filing.decide(
        Decision.Kind.SIGNED,
        filing.Decider(person, signer, membership.role),
        shown,
        reason="",
        now=now,
        proof=proof.method,
        proved_at=proof.at,
        until=framework().requirement(shown.element).until(now),
    )


def refuse_signature(signer: Person, person: Person, shown: Deed, *, now: datetime) -> Membership:
    """Return the membership by which `signer` may sign exactly what was `shown`, or refuse; nothing is written."""
    membership = signer_of(signer, person, shown.element)
    record = record_of(person)
    _refuse_twice(record, shown, signer)
    _refuse_changed(shown, deed_for(record, shown.element, signer, now))
    if any(state.state != "met" for state in record.standing(shown.element, now, gathered()).asks):
        words = _("%(element)s is not ready to sign. Look at what is missing.")
        raise SignatureRefused(words % {"element": shown.element})
    return membership


@transaction.atomic
def turn_down(signer: Person, person: Person, shown: Deed, kind: str, *, reason: str, now: datetime) -> Decision:
    """Decline what was `shown`, or ask for more, with a reason; new evidence opens the way again."""
    person = Person.objects.select_for_update().get(pk=person.pk)
    membership = signer_of(signer, person, shown.element)
    deed = deed_for(record_of(person), shown.element, signer, now)
    _refuse_changed(shown, deed)
    return filing.decide(kind, filing.Decider(person, signer, membership.role), deed, reason=_reason(reason), now=now)


@transaction.atomic
def withdraw(signature: Decision, by: Person, proof: Proof, *, reason: str, now: datetime) -> Decision:
    """Withdraw a signature, with a reason; both stay visible."""
    person = Person.objects.select_for_update().get(pk=signature.person_id)
    if signature.kind != Decision.Kind.SIGNED:
        raise SignatureRefused(_("Only a signature can be withdrawn."))
    if Decision.objects.filter(withdraws=signature).exists():
        raise SignatureRefused(_("This signature has been withdrawn already."))
    role = withdrawer_of(by, signature)
    _refuse_stale(proof, now)
    return filing.decide(
        Decision.Kind.WITHDRAWN,
        filing.Decider(person, by, role),
        Deed.of(signature.deed),
        reason=_reason(reason),
        now=now,
        proof=proof.method,
        proved_at=proof.at,
        withdraws=signature,
    )


def facts_of(attempt: Attempt) -> Record:
    """Return the facts as they were drawn."""
    return Record.of(attempt.scenario.spec.facts, attempt.facts)


def key_for(attempt: Attempt) -> Record:
    """Return the key of a closed attempt; while it is open there is none to be had."""
    if attempt.is_open:
        raise AttemptRefused(_("The key stays shut until the attempt is handed in."))
    return key_of(attempt.scenario.spec, facts_of(attempt))


def minutes_allowed(person: Person, minutes: int) -> int:
    """Return the minutes of a paper for `person`, with the extra time the school grants, rounded up."""
    return -(-minutes * (100 + person.extra_time_percent) // 100)


def answers_of(attempt: Attempt) -> Mapping[str, Any]:
    """Return task id to value of the answers that count."""
    return {task: answer.value for task, answer in attempt.answers.newest().items()}


def _hung(person: Person, spec: Spec, facts: Record) -> dict[str, str]:
    """Hang the pictures of these facts for `person`; return the code of each by its name."""
    shown = pictures_of(spec, facts)
    return {
        name: gallery.hang(one.scene, one.light, one.lamps, Purpose.PAPER, person).code for name, one in shown.items()
    }


def _hung_with_plan(attempt: Attempt) -> dict[str, str]:
    """Hang the panel before and after the plan that was handed in; nothing where there is none."""
    spec, facts = attempt.scenario.spec, facts_of(attempt)
    planned = spec.the("plan")
    plan = answers_of(attempt).get(planned.id) if planned else None
    if plan is None:
        return {}
    light, scenes = before_and_after(spec, facts, worked(spec, facts, plan), attempt.pk.int % SEEDS)
    lamps = plan_scenes.LAMPS[light]
    rows = [gallery.sheet(scene, light, lamps, Purpose.PAPER, attempt.person) for scene in scenes]
    gallery.hang_all(rows)
    return {name: one.code for name, one in zip(BEFORE_AND_AFTER, rows, strict=True)}


def _gone_on(task: Task, given: Given, before: Answer | None) -> Given:
    """Return what was asked or tried with all that was before: no reading is given back, and none is lost."""
    if before is None or given.value is None:
        return given if before is None else replace(given, value=before.value, seen=before.sequence or given.seen)
    return replace(given, value=joined(task, before.value, given.value), seen=max(given.seen, before.sequence or 0))


def _close(attempt: Attempt, at: datetime, now: datetime) -> None:
    marked = marked_by(attempt.rule_book, attempt)
    attempt.pictures = {**attempt.pictures, **_hung_with_plan(attempt)}
    if attempt.pictures:
        gallery.gather(attempt.pictures.values())
    attempt.closed_at, attempt.outcome = at, marked.outcome
    attempt.points, attempt.of = marked.points, marked.of
    attempt.digest, attempt.trace = marked.digest, dict(marked.trace)
    attempt.save(update_fields=["closed_at", "outcome", "points", "of", "digest", "trace", "pictures"])
    findings = Finding.objects.bulk_create(_findings(attempt, marked))
    filing.file_evidence(attempt, judged_text(attempt, findings), now=now)


def _findings(attempt: Attempt, marked: Marked) -> list[Finding]:
    return [
        Finding(
            attempt=attempt,
            place=place,
            code=found.code,
            sentence=found.sentence,
            verdict=found.verdict,
            severity=found.severity,
            points=found.points,
            of=found.of,
            because=found.because,
            values=[[one.name, one.value, one.unit] for one in found.values],
            lesson=found.lesson or "",
            source=found.source,
            failed=found.failed or "",
        )
        for place, found in enumerate(marked.findings, start=1)
    ]


def _refuse_stale(proof: Proof, now: datetime) -> None:
    if not timedelta(0) <= now - proof.at <= FRESH:
        raise SignatureRefused(_("Your proof is older than five minutes. Prove again that it is you."))


def _refuse_changed(shown: Deed, deed: Deed) -> None:
    if shown.digest() != deed.digest():
        raise RecordChanged(
            _("The record changed since you opened this page. Nothing was signed. Look again."), changes(shown, deed)
        )


def _refuse_twice(record: OnRecord, shown: Deed, signer: Person) -> None:
    mine = [one for one in record.decisions if one.kind == Decision.Kind.SIGNED and one.by_id == signer.pk]
    if any(one.digest == shown.digest() for one in mine):
        raise SignatureRefused(_("You have signed exactly this already. Once is enough."))


def _reason(words: str) -> str:
    kept = words.strip()
    if not kept:
        raise SignatureRefused(_("Say why. The reason stays on the record."))
    return kept


def _again(before: Answer, given: Given, counts: Answer | None) -> Saved:
    if (before.task, before.value) != (given.task, given.value):
        raise AnswerRefused(_("This answer carries the mark of another one. Load the page again and answer once more."))
    fate: Fate = "late" if before.late else "kept" if before.sequence else "conflict"
    return Saved(fate, before, counts)


def _deadline(attempt: Attempt) -> datetime:
    if attempt.deadline is None:
        raise AttemptRefused(_("This attempt has no deadline."))
    return attempt.deadline
