"""What is filed on the record, each row with its entry in the log. The journey calls these inside its transactions."""

from dataclasses import dataclass
from datetime import datetime
from typing import Any

from django.db import transaction

from assessments import log
from assessments.competence import Deed
from assessments.competence.log import stamp
from assessments.marking import Marked
from assessments.models import Answer, Attempt, Decision, Draft, Evidence, Note, Rejudgement, RuleBook
from assessments.record import judged_text
from courses.models import Person


@dataclass(frozen=True, slots=True)
class Decider:
    """Who decides on whom, and in which role."""

    person: Person
    by: Person
    role: str


def file_evidence(attempt: Attempt, judged: str, *, now: datetime) -> Evidence:
    """File what a judged attempt showed; `judged` is the text of what was judged and found."""
    evidence = Evidence.objects.create(
        person=attempt.person,
        attempt=attempt,
        kind="scenario",
        mode=attempt.mode,
        scenario_code=attempt.scenario_code,
        scenario_version=attempt.scenario.version,
        rule_book=attempt.digest,
        elements=list(attempt.scenario.spec.elements),
        substrate=str(attempt.facts.get("substrate") or ""),
        described=attempt.described,
        outcome=attempt.outcome,
        points=attempt.points,
        of=attempt.of,
        judged=log.commitment(attempt.person, "judged", judged),
        happened_at=attempt.closed_at or now,
        filed_at=now,
    )
    _enter_evidence("evidence", evidence, "", now)
    return evidence


def _enter_evidence(kind: str, evidence: Evidence, reason: str, now: datetime) -> None:
    what = {
        "evidence": str(evidence.pk),
        "attempt": str(evidence.attempt_id),
        "scenario": evidence.scenario_code,
        "version": evidence.scenario_version,
        "mode": evidence.mode,
        "rule_book": evidence.rule_book,
        "elements": evidence.elements,
        "substrate": evidence.substrate,
        "outcome": evidence.outcome,
        "points": f"{evidence.points:g}",
        "of": f"{evidence.of:g}",
        "judged": evidence.judged,
        "happened_at": stamp(evidence.happened_at),
        "replaces": str(evidence.replaces_id or ""),
        "reason": reason,
    }
    if evidence.described:
        what["described"] = "in words"
    log.enter(log.stream_of(evidence.person), kind, what, now=now)


def file_again(
    before: Evidence, marked: Marked, judged: str, book: RuleBook, *, reason: str, now: datetime
) -> Evidence:
    """File what the same answers came to when they were judged again by `book`, beside the first."""
    person = before.person
    again = Evidence(
        **{one.attname: getattr(before, one.attname) for one in Evidence._meta.fields if not one.primary_key}
    )
    again.outcome, again.points, again.of, again.rule_book = marked.outcome, marked.points, marked.of, marked.digest
    again.judged, again.replaces, again.filed_at = log.commitment(person, "judged", judged), before, now
    again.save(force_insert=True)
    Rejudgement.objects.create(evidence=again, rule_book=book, trace=dict(marked.trace))
    Note.objects.create(evidence=again, text=reason)
    _enter_evidence("rejudged", again, log.commitment(person, "reason", reason), now)
    return again


def decide(kind: str, who: Decider, deed: Deed, *, reason: str, now: datetime, **fields: Any) -> Decision:
    """Keep a decision on what `deed` says was shown; `fields` are its proof, its end, what it withdraws."""
    decision = Decision.objects.create(
        person=who.person,
        element=deed.element,
        kind=kind,
        by=who.by,
        role=who.role,
        requirement_version=deed.requirement_version,
        deed=deed.as_json(),
        digest=deed.digest(),
        at=now,
        **fields,
    )
    if reason:
        Note.objects.create(decision=decision, text=reason)
    _enter_decision(decision, reason, now)
    return decision


def _enter_decision(decision: Decision, reason: str, now: datetime) -> None:
    what = {
        "decision": str(decision.pk),
        "element": decision.element,
        "by": str(decision.by.handle),
        "role": decision.role,
        "requirement": decision.requirement_version,
        "digest": decision.digest,
        "proof": decision.proof,
        "proved_at": stamp(decision.proved_at) if decision.proved_at else "",
        "until": stamp(decision.until) if decision.until else "",
        "withdraws": str(decision.withdraws_id or ""),
        "reason": log.commitment(decision.person, "reason", reason) if reason else "",
        "name": log.commitment(decision.person, "name", decision.person.name),
        "by_name": log.commitment(decision.by, "name", decision.by.name),
    }
    log.enter(log.stream_of(decision.person), decision.kind, what, now=now)


@transaction.atomic
def forget_words(person: Person) -> None:
    """Remove for good what was written of and by `person` in free words; what was judged and decided stays."""
    Note.objects.filter(decision__person=person).delete()
    Note.objects.filter(evidence__person=person).delete()
    Draft.objects.filter(remark_by=person).update(remark="")
    for attempt in Attempt.objects.by(person).select_related("scenario"):
        written = [task.id for task in attempt.scenario.spec.tasks if task.kind == "text"]
        Answer.objects.filter(attempt=attempt, task__in=written).update(value=None)


@transaction.atomic
def catch_up(now: datetime) -> None:
    """File what came out, and enter the roles that were held, before there was a record and a log."""
    log.begin(now)
    unfiled = Attempt.objects.judged().filter(evidence__isnull=True).select_related("scenario", "person")
    for attempt in unfiled.order_by("closed_at"):
        file_evidence(attempt, judged_text(attempt), now=now)
