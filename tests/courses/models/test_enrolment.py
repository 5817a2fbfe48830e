"""Cohorts, memberships, invitations."""

from datetime import timedelta

import pytest
from django.db import IntegrityError, transaction

from courses.models import Invitation, Membership
from tests.factories import CohortFactory, InvitationFactory, MembershipFactory, PersonFactory

pytestmark = pytest.mark.django_db


def test_a_role_is_held_once_even_for_the_whole_school():
    held = MembershipFactory(cohort=None, role="examiner")
    with pytest.raises(IntegrityError), transaction.atomic():
        MembershipFactory(person=held.person, cohort=None, role="examiner")


def test_a_trainee_learns_in_a_cohort():
    with pytest.raises(IntegrityError), transaction.atomic():
        MembershipFactory(cohort=None, role="trainee")


def test_staff_are_all_but_trainees():
    rows = [MembershipFactory(role=role) for role in ("trainee", "instructor", "examiner", "manager")]
    assert set(Membership.objects.staff()) == set(rows[1:])
    assert list(Membership.objects.managing()) == rows[3:]


def test_an_invitation_is_open_until_it_expires_or_is_used(now):
    fresh = InvitationFactory(expires_at=now + timedelta(seconds=1))
    InvitationFactory(token="old", expires_at=now)
    InvitationFactory(token="used", expires_at=now + timedelta(days=1), used_at=now)
    assert list(Invitation.objects.open_at(now)) == [fresh]


def test_rows_say_what_they_are():
    cohort, membership = CohortFactory(name="Quay"), MembershipFactory(person=PersonFactory())
    invitation = InvitationFactory(email="new@test.example")
    assert [str(cohort), str(membership), str(invitation)] == [
        "Quay",
        f"{membership.person_id} trainee",
        "trainee new@test.example",
    ]
