"""Which row a person may have: the row, or 404, so that nothing is told of another's."""

from uuid import UUID

from django.contrib.auth.models import AnonymousUser
from django.core.exceptions import PermissionDenied
from django.db.models import QuerySet
from django.http import Http404
from django.shortcuts import get_object_or_404

from assessments.errors import SignatureRefused
from assessments.models import Attempt, Decision, Draft, Scenario
from assessments.shipped import framework
from assessments.signers import cohorts_of, reaches, signer_of, withdrawer_of
from courses.access import get_person
from courses.models import Cohort, Person, School
from courses.models.enrolment import Role


def scenarios_for(person: Person) -> list[Scenario]:
    """Return the newest version of every scenario that is open to `person` and holds where the school works."""
    school = School.objects.here()
    if school is None or not person.memberships.exists():
        return []
    return Scenario.objects.newest().holding_in(school.jurisdiction)


def get_scenario_for(person: Person, code: str) -> Scenario:
    """Return the scenario if it is open to `person`."""
    for scenario in scenarios_for(person):
        if scenario.code == code:
            return scenario
    raise Http404


def get_attempt_for(person: Person, attempt_id: UUID) -> Attempt:
    """Return the attempt if it is one's own."""
    attempts = Attempt.objects.by(person).select_related("scenario", "rule_book")
    return get_object_or_404(attempts, pk=attempt_id)


def get_verdict_for(reader: Person, attempt_id: UUID) -> Attempt:
    """Return the attempt if it is one's own, or a judged one of a trainee whose record `reader` may see."""
    attempts = Attempt.objects.select_related("scenario", "rule_book", "person")
    attempt = get_object_or_404(attempts, pk=attempt_id)
    if attempt.person_id != reader.pk and not (attempt.outcome and sees(reader, attempt.person)):
        raise Http404
    return attempt


def sees(reader: Person, person: Person) -> bool:
    """Say whether `reader` teaches, examines or manages where `person` learns."""
    cohorts = cohorts_of(person)
    return bool(cohorts) and any(reaches(one, cohorts) for one in reader.memberships.staff())


def get_trainee_for(reader: Person, handle: UUID) -> Person:
    """Return the trainee if it is oneself, or one whose record `reader` may see."""
    person = get_object_or_404(Person, handle=handle)
    if person.pk != reader.pk and not sees(reader, person):
        raise Http404
    return person


def get_own_record(person: Person) -> Person:
    """Return `person` if they learn here."""
    if not person.memberships.filter(role=Role.TRAINEE).exists():
        raise Http404
    return person


def cohorts_for(reader: Person) -> QuerySet[Cohort]:
    """Return the cohorts in which `reader` teaches, examines or manages."""
    held = reader.memberships.staff().values_list("cohort_id", flat=True)
    return Cohort.objects.all() if None in list(held) else Cohort.objects.filter(pk__in=held)


def get_cohort_for(reader: Person, pk: int) -> Cohort:
    """Return the cohort if `reader` teaches, examines or manages in it."""
    return get_object_or_404(cohorts_for(reader), pk=pk)


def get_decision_for(reader: Person, decision_id: UUID) -> Decision:
    """Return the decision if the record it stands on may be seen by `reader`."""
    decisions = Decision.objects.select_related("person", "by", "note", "withdraws")
    decision = get_object_or_404(decisions, pk=decision_id)
    get_trainee_for(reader, decision.person.handle)
    return decision


def permit_signing(signer: Person, person: Person, element: str) -> None:
    """Answer 403 with the reason where `signer` may not decide on `element` for `person`."""
    try:
        signer_of(signer, person, element)
    except SignatureRefused as refusal:
        raise PermissionDenied(str(refusal)) from refusal


def permit_withdrawing(person: Person, signature: Decision) -> None:
    """Answer 403 with the reason where `person` may not withdraw `signature`."""
    try:
        withdrawer_of(person, signature)
    except SignatureRefused as refusal:
        raise PermissionDenied(str(refusal)) from refusal


def get_author(user: Person | AnonymousUser) -> Person:
    """Return the signed-in person if they teach, examine or manage: they read rules, write and review them."""
    person = get_person(user)
    if not person.memberships.staff().exists():
        raise Http404
    return person


def scenarios_authored() -> QuerySet[Scenario]:
    """Return of each scenario the newest version, with the rules that mark it."""
    return Scenario.objects.newest().select_related("rule_book").order_by("code")


def get_scenario_authored(code: str) -> Scenario:
    """Return the newest version of a scenario; for those who write its rules."""
    return get_object_or_404(scenarios_authored(), code=code)


def get_draft(draft_id: UUID) -> Draft:
    """Return the draft of a rule book; for those who write rules."""
    drafts = Draft.objects.select_related("scenario__rule_book", "base", "book", "started_by", "sent_by", "remark_by")
    return get_object_or_404(drafts, pk=draft_id)


def get_element(code: str) -> str:
    """Return the code of an element of competency, if there is one."""
    if not any(code == one.code for unit in framework().units.values() for one in unit.elements):
        raise Http404
    return code
