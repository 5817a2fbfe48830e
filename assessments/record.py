"""The record of a person, read: evidence, what was decided on it, how they stand, what a signature would cover."""

from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from functools import cached_property
from typing import Any

import rfc8785

from assessments.competence import Decision as Decided
from assessments.competence import Deed, Standing, standing_of
from assessments.competence import Evidence as Shown
from assessments.models import Attempt, Decision, Evidence, Finding, Scenario
from assessments.shipped import framework
from courses.models import Person

KINDS = ("scenario",)
"""Kinds of evidence that can be gathered here."""


@dataclass(frozen=True)
class Record:
    """What is on record of one person: rows for the page, value objects for the judgement."""

    person: Person
    evidence: tuple[Evidence, ...] = ()
    decisions: tuple[Decision, ...] = ()

    @cached_property
    def shown(self) -> tuple[Shown, ...]:
        """Return the evidence as the judgement takes it."""
        return tuple(as_shown(row) for row in self.evidence)

    @cached_property
    def decided(self) -> tuple[Decided, ...]:
        """Return the decisions as the judgement takes them."""
        return tuple(as_decided(row) for row in self.decisions)

    def standing(self, element: str, at: datetime, gathered: Collection[str]) -> Standing:
        """Return how the person stands in an element, by the requirement in force."""
        return standing_of(framework().requirement(element), self.shown, self.decided, at, gathered)

    def decision(self, decision_id: str) -> Decision:
        """Return the row of a decision."""
        return next(row for row in self.decisions if str(row.pk) == decision_id)

    def row(self, evidence_id: str) -> Evidence:
        """Return the row of a piece of evidence."""
        return next(row for row in self.evidence if str(row.pk) == evidence_id)


def gathered() -> frozenset[str]:
    """Return what can be gathered here: kinds, and the scenarios that are open for papers."""
    return frozenset(KINDS) | frozenset(Scenario.objects.published().values_list("code", flat=True))


def records_of(people: Iterable[Person]) -> Mapping[int, Record]:
    """Return the record of each person by their key, in two queries however many they are."""
    rows = {person.pk: person for person in people}
    evidence: dict[int, list[Evidence]] = {key: [] for key in rows}
    decisions: dict[int, list[Decision]] = {key: [] for key in rows}
    for one in Evidence.objects.filter(person__in=rows):
        evidence[one.person_id].append(one)
    for other in Decision.objects.filter(person__in=rows).select_related("by", "note"):
        decisions[other.person_id].append(other)
    return {key: Record(person, tuple(evidence[key]), tuple(decisions[key])) for key, person in rows.items()}


def record_of(person: Person) -> Record:
    """Return the record of one person."""
    return records_of([person])[person.pk]


def as_shown(row: Evidence) -> Shown:
    """Return a piece of evidence as the judgement takes it."""
    return Shown(
        id=str(row.pk),
        kind=row.kind,
        mode=row.mode,
        scenario=row.scenario_code,
        version=row.scenario_version,
        elements=tuple(row.elements),
        outcome=row.outcome,
        at=row.happened_at,
        substrate=row.substrate,
        replaces=str(row.replaces_id) if row.replaces_id else None,
    )


def as_decided(row: Decision) -> Decided:
    """Return a decision as the judgement takes it."""
    return Decided(
        id=str(row.pk),
        kind=row.kind,
        element=row.element,
        by=str(row.by_id),
        at=row.at,
        until=row.until,
        withdraws=str(row.withdraws_id) if row.withdraws_id else None,
    )


def deed_for(record: Record, element: str, signer: Person, at: datetime) -> Deed:
    """Return exactly what `signer` would sign now for an element of the person on record."""
    requirement = framework().requirement(element)
    standing = record.standing(element, at, gathered())
    named = {element}.union(*(ask.elements for ask in requirement.asks))
    return Deed(
        school="1",
        person=str(record.person.handle),
        signer=str(signer.handle),
        element=element,
        requirement_version=requirement.version,
        requirement_digest=requirement.digest,
        asks=tuple(ask.words for ask in requirement.asks),
        evidence=tuple(sorted((one.id, one.outcome) for one in record.shown if named.intersection(one.elements))),
        decisions=tuple(one.id for one in record.decided if one.element == element),
        counted=tuple(one.id for state in standing.asks for one in state.counted),
    )


def judged_text(attempt: Attempt, findings: Sequence[Finding] | None = None) -> str:
    """Return, in canonical JSON, what was judged and what was found: facts, answers that count, findings."""
    found = attempt.findings.at_first() if findings is None else findings
    answers = {task: answer.value for task, answer in attempt.answers.newest().items()}
    whole = {"facts": attempt.facts, "answers": answers, "findings": [_found(one) for one in found]}
    if attempt.pictures:
        whole |= {"pictures": attempt.pictures, "described": attempt.described}
    return rfc8785.dumps(whole).decode()


def _found(one: Finding) -> list[Any]:
    verdict = [one.code, one.verdict, one.severity, one.points, one.of]
    return [*verdict, one.because, one.values, one.lesson, one.source, one.failed]
