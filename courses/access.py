"""Which row a person may have: the row, or 404, so that nothing is told of another's."""

from datetime import datetime
from uuid import UUID

from django.contrib.auth.models import AnonymousUser
from django.http import Http404
from django.shortcuts import get_object_or_404

from courses.models import Cohort, Course, Estimate, HungPicture, Invitation, Lesson, Membership, Person
from courses.tokens import digest_of


def get_person(user: Person | AnonymousUser) -> Person:
    """Return the signed-in person."""
    if not isinstance(user, Person):
        raise Http404
    return user


def get_course_for(person: Person, code: str) -> Course:
    """Return the course if a cohort of `person` follows it, or if they teach or manage."""
    return get_object_or_404(Course.objects.open_to(person), code=code)


def get_lesson_for(person: Person, slug: str) -> Lesson:
    """Return the lesson if it is taught and stands in a course of `person`."""
    return get_object_or_404(Lesson.objects.open_to(person), slug=slug)


def get_picture_for(person: Person, code: str) -> HungPicture:
    """Return the picture that hangs under `code`, if it is for everybody, or for `person`."""
    row = get_object_or_404(HungPicture, code=code)
    if not row.is_for(person):
        raise Http404
    return row


def get_estimate_for(person: Person, pk: int) -> Estimate:
    """Return the estimate if `person` made it."""
    return get_object_or_404(Estimate.objects.by(person), pk=pk)


def get_invitation(token: str, now: datetime) -> Invitation:
    """Return the invitation that `token` opens at `now`."""
    invitations = Invitation.objects.select_related("cohort", "invited_by")
    return get_object_or_404(invitations.open_at(now), digest=digest_of(token))


def get_manager(user: Person | AnonymousUser) -> Person:
    """Return the signed-in person if they manage the school."""
    person = get_person(user)
    if not person.memberships.managing().exists():
        raise Http404
    return person


def get_person_managed(handle: UUID) -> Person:
    """Return whoever belongs to the school under `handle`; for those who manage it."""
    return get_object_or_404(Person, handle=handle)


def get_role_of(person: Person, pk: int) -> Membership:
    """Return a role of `person`."""
    return get_object_or_404(person.memberships.select_related("cohort"), pk=pk)


def get_cohort(pk: int) -> Cohort:
    """Return a cohort; for those who manage the school."""
    return get_object_or_404(Cohort, pk=pk)


def get_invitation_made(pk: int) -> Invitation:
    """Return an invitation, open or not; for those who manage the school."""
    return get_object_or_404(Invitation, pk=pk)
