"""Who may decide on whom: the membership that lets them, or the sentence that says why not."""

from collections.abc import Collection, Sequence

from django.utils.translation import gettext as _

from assessments.errors import SignatureRefused
from assessments.models import Decision
from assessments.shipped import framework
from courses.models import Membership, Person, School
from courses.models.enrolment import Role

DECIDING = (Role.INSTRUCTOR, Role.EXAMINER)


def cohorts_of(person: Person) -> frozenset[int]:
    """Return the cohorts in which `person` learns."""
    learning = person.memberships.filter(role=Role.TRAINEE).values_list("cohort_id", flat=True)
    return frozenset(one for one in learning if one is not None)


def reaches(membership: Membership, cohorts: Collection[int]) -> bool:
    """Say whether a membership holds in the whole school or in one of `cohorts`."""
    return membership.cohort_id is None or membership.cohort_id in cohorts


def may_sign(membership: Membership, cohorts: Collection[int], element: str) -> bool:
    """Say whether a membership lets its holder sign `element` or its unit for who learns in `cohorts`."""
    named = any(framework().covers(code, element) for code in membership.may_sign)
    return membership.role in DECIDING and named and reaches(membership, cohorts)


def teaches(membership: Membership, cohorts: Collection[int], element: str) -> bool:
    """Say whether its holder teaches the unit of `element` where the trainee learns."""
    unit = framework().unit_of(element).code
    named = any(framework().covers(code, element) or framework().covers(unit, code) for code in membership.teaches)
    return named and reaches(membership, cohorts)


def may_decide(held: Sequence[Membership], cohorts: Collection[int], element: str, *, independence: bool) -> bool:
    """Say whether whoever holds these memberships may sign `element` for a trainee of `cohorts`."""
    letting = any(may_sign(one, cohorts, element) for one in held)
    return letting and not (independence and any(teaches(one, cohorts, element) for one in held))


def signer_of(signer: Person, person: Person, element: str) -> Membership:
    """Return the membership by which `signer` decides on `element` for `person`; refuse whoever may not."""
    if signer.pk == person.pk:
        raise SignatureRefused(_("Nobody signs for themself."))
    cohorts, held = cohorts_of(person), list(signer.memberships.all())
    letting = [one for one in held if may_sign(one, cohorts, element)]
    if not cohorts or not letting:
        raise SignatureRefused(
            _("You may not sign %(element)s for %(name)s. A manager can give you that.")
            % {"element": element, "name": person.name}
        )
    school = School.objects.here()
    if school and school.independence and any(teaches(one, cohorts, element) for one in held):
        raise SignatureRefused(
            _("You teach %(unit)s to %(name)s, and this school lets nobody sign what they taught.")
            % {"unit": framework().unit_of(element).title, "name": person.name}
        )
    return letting[0]


def withdrawer_of(person: Person, decision: Decision) -> str:
    """Return the role in which `person` may withdraw a signature: its signer's own or examiner; refuse anybody else."""
    if decision.by_id == person.pk:
        return decision.role
    cohorts = cohorts_of(decision.person)
    examines = person.memberships.filter(role=Role.EXAMINER)
    if decision.person_id != person.pk and any(reaches(one, cohorts) for one in examines):
        return Role.EXAMINER
    raise SignatureRefused(_("Only who signed it, or an examiner, can withdraw a signature."))
