"""Which row a person may have: the row, or 404."""

from datetime import timedelta
from uuid import uuid4

import pytest
from django.contrib.auth.models import AnonymousUser
from django.http import Http404

from courses import access, gallery
from tests.factories import CohortFactory, InvitationFactory, MembershipFactory, PersonFactory

pytestmark = pytest.mark.django_db


def test_a_picture_is_had_by_its_code_alone_and_anothers_is_not_there(outsider, instructor):
    scene = {"size": [96, 64], "defects": []}
    row = gallery.hang(scene, "point", [(0.5, 0.42)], "paper", owner=outsider)
    assert access.get_picture_for(outsider, row.code) == access.get_picture_for(instructor, row.code) == row
    for person, code in [(PersonFactory(), row.code), (outsider, row.code[:-1]), (outsider, "")]:
        with pytest.raises(Http404):
            access.get_picture_for(person, code)


def test_a_course_is_found_by_its_cohort_and_by_staff(trainee, instructor, outsider):
    assert access.get_course_for(trainee, "remote") == access.get_course_for(instructor, "remote")
    for person, code in [(trainee, "in_person"), (outsider, "remote"), (trainee, "no-such")]:
        with pytest.raises(Http404):
            access.get_course_for(person, code)


def test_a_lesson_is_found_if_taught_and_in_a_course_of_ones_own(trainee, outsider):
    assert access.get_lesson_for(trainee, "dew-point").code == "L24"
    for person, slug in [(outsider, "dew-point"), (trainee, "lay-and-level"), (trainee, "no-such")]:
        with pytest.raises(Http404):
            access.get_lesson_for(person, slug)


def test_an_invitation_is_found_by_its_token_while_it_is_open(now):
    invitation = InvitationFactory(expires_at=now)
    assert access.get_invitation("token-of-a-test", now - timedelta(seconds=1)) == invitation
    for token, moment in [("token-of-a-test", now), ("another", now - timedelta(seconds=1))]:
        with pytest.raises(Http404):
            access.get_invitation(token, moment)


def test_nobody_is_not_a_person(trainee):
    assert access.get_person(trainee) == trainee
    with pytest.raises(Http404):
        access.get_person(AnonymousUser())


def test_only_who_manages_is_a_manager(db):
    boss = MembershipFactory(role="manager", cohort=None).person
    assert access.get_manager(boss) == boss
    others = [MembershipFactory(role=role).person for role in ("trainee", "instructor", "examiner")]
    for person in (*others, PersonFactory(), AnonymousUser()):
        with pytest.raises(Http404):
            access.get_manager(person)


def test_a_role_is_found_under_the_person_who_holds_it():
    role, other = MembershipFactory(), MembershipFactory()
    assert access.get_role_of(role.person, role.pk) == role
    for person, pk in [(role.person, other.pk), (other.person, role.pk), (role.person, 10**30)]:
        with pytest.raises(Http404):
            access.get_role_of(person, pk)


def test_people_cohorts_and_invitations_are_found_by_their_key():
    person, cohort, invitation = PersonFactory(), CohortFactory(), InvitationFactory()
    assert access.get_person_managed(person.handle) == person
    assert access.get_cohort(cohort.pk) == cohort
    assert access.get_invitation_made(invitation.pk) == invitation
    for get, key in [
        (access.get_person_managed, uuid4()),
        (access.get_cohort, 10**30),
        (access.get_invitation_made, 10**30),
    ]:
        with pytest.raises(Http404):
            get(key)
