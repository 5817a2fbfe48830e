"""The path of a trainee through an assessment, in order. Attempts, answers and findings are written here only."""

import secrets
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import Any, Literal
from uuid import UUID

from django.db import transaction
from django.utils.translation import gettext as _

from assessments.errors import AnswerRefused, AttemptRefused
from assessments.marking import Marked, mark
from assessments.models import Answer, Attempt, Finding, Scenario
from assessments.scenarios.draw import draw, key_of
from assessments.scenarios.fields import Record
from courses.models import Person

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
        _close(going_on, _deadline(going_on))
    spec, seed = scenario.spec, secrets.randbits(128) if seed is None else seed
    return Attempt.objects.create(
        person=person,
        scenario=scenario,
        scenario_code=scenario.code,
        mode=mode,
        number=mine.count() + 1,
        seed=str(seed),
        facts=draw(spec, str(seed)).facts.as_json(),
        opened_at=now,
        deadline=now + timedelta(minutes=minutes_allowed(person, spec.minutes)) if mode == Attempt.Mode.PAPER else None,
        rule_book=scenario.rule_book,
    )


@transaction.atomic
def save_answer(attempt: Attempt, given: Given, *, now: datetime) -> Saved:
    """Keep an answer as it is given. Sent twice, it is kept once; given against an older page, both are kept."""
    attempt = Attempt.objects.select_for_update().select_related("scenario", "rule_book").get(pk=attempt.pk)
    if attempt.is_open and attempt.is_due(now):
        _close(attempt, _deadline(attempt))
    counts = attempt.answers.counted().filter(task=given.task).order_by("sequence").last()
    before = attempt.answers.filter(client_key=given.client_key).first()
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
def hand_in(attempt: Attempt, *, now: datetime) -> Attempt:
    """Close `attempt` and mark it, exactly once; handed in again, it is returned as it came out."""
    attempt = Attempt.objects.select_for_update().select_related("scenario", "rule_book").get(pk=attempt.pk)
    if attempt.is_open:
        _close(attempt, _deadline(attempt) if attempt.is_due(now) else now)
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


def _close(attempt: Attempt, at: datetime) -> None:
    marker = attempt.scenario.marker(attempt.rule_book)
    given = {task: value for task, value in answers_of(attempt).items() if value is not None}
    marked = mark(marker, facts_of(attempt), given)
    attempt.closed_at, attempt.outcome = at, marked.outcome
    attempt.points, attempt.of = marked.points, marked.of
    attempt.digest, attempt.trace = marked.digest, dict(marked.trace)
    attempt.save(update_fields=["closed_at", "outcome", "points", "of", "digest", "trace"])
    _file_findings(attempt, marked)


def _file_findings(attempt: Attempt, marked: Marked) -> None:
    Finding.objects.bulk_create(
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
    )


def _again(before: Answer, given: Given, counts: Answer | None) -> Saved:
    if (before.task, before.value) != (given.task, given.value):
        raise AnswerRefused(_("This answer carries the mark of another one. Load the page again and answer once more."))
    fate: Fate = "late" if before.late else "kept" if before.sequence else "conflict"
    return Saved(fate, before, counts)


def _deadline(attempt: Attempt) -> datetime:
    if attempt.deadline is None:
        raise AttemptRefused(_("This attempt has no deadline."))
    return attempt.deadline
