"""Which row a person may have: the row, or 404, so that nothing is told of another's."""

from uuid import UUID

from django.http import Http404
from django.shortcuts import get_object_or_404

from assessments.models import Attempt, Scenario
from courses.models import Person, School


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
