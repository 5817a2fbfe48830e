"""Verbs of the ground floor: what they write, and what they refuse."""

from datetime import timedelta

import pytest

from courses import actions
from courses.errors import InvitationRefused
from courses.models import Course, Invitation, Lesson, Membership, Person
from courses.models.enrolment import Role
from courses.shipped import shelf
from tests.factories import CohortFactory, InvitationFactory, LessonFactory, PersonFactory

pytestmark = pytest.mark.django_db


def accept(invitation, now, **changes):
    given = {"email": "new@test.example", "name": "Nell New", "password": "a long enough one", "metric": True}
    return actions.accept(invitation, now=now, **{**given, **changes})


def test_an_invitation_keeps_only_a_digest_of_its_link(now):
    invitation, token = actions.invite(role="trainee", cohort=CohortFactory(), email="A@test.example", by=None, now=now)
    assert (invitation.email, invitation.expires_at) == ("a@test.example", now + timedelta(days=14))
    assert token not in invitation.digest
    assert len(token) == 32


def test_an_invitation_makes_a_person_with_a_role_and_a_confirmed_address(now):
    invitation = InvitationFactory(expires_at=now + timedelta(days=1))
    person = accept(invitation, now)
    assert list(person.memberships.values_list("role", "cohort")) == [("trainee", invitation.cohort_id)]
    addresses = person.emailaddress_set.values_list("email", "verified", "primary")
    assert list(addresses) == [("new@test.example", True, True)]
    assert (person.temperature, person.film) == ("degc", "um")
    assert person.check_password("a long enough one")


def test_an_invitation_works_once(now):
    invitation = InvitationFactory(expires_at=now + timedelta(days=1))
    accept(invitation, now)
    with pytest.raises(InvitationRefused, match="has been used or has expired"):
        accept(invitation, now, email="second@test.example")
    assert not Person.objects.with_email("second@test.example").exists()


def test_an_invitation_expires(now):
    with pytest.raises(InvitationRefused, match="has been used or has expired"):
        accept(InvitationFactory(expires_at=now), now)


def test_an_invited_address_wins_over_the_one_sent(now):
    invitation = InvitationFactory(email="meant@test.example", expires_at=now + timedelta(days=1))
    assert accept(invitation, now, email="thief@test.example").email == "meant@test.example"


def test_an_address_that_belongs_here_is_not_invited_again(now):
    PersonFactory(email="here@test.example")
    with pytest.raises(InvitationRefused, match="here@test.example already belongs here"):
        actions.invite(role="trainee", cohort=CohortFactory(), email="HERE@test.example", by=None, now=now)
    with pytest.raises(InvitationRefused, match="Sign in instead"):
        accept(InvitationFactory(expires_at=now + timedelta(days=1)), now, email="here@test.example")
    assert Invitation.objects.filter(used_at__isnull=False).count() == 0


def test_a_trainee_is_not_invited_without_a_cohort(now):
    with pytest.raises(InvitationRefused, match="learns in a cohort"):
        actions.invite(role=Role.TRAINEE, cohort=None, email="", by=None, now=now)


def test_a_renewed_password_shuts_the_old_one_out():
    person = actions.renew_password(PersonFactory(password="the old one, long"), "the new one, long")
    person.refresh_from_db()
    assert [person.check_password(word) for word in ("the old one, long", "the new one, long")] == [False, True]


def test_enrolling_twice_leaves_one_membership(now):
    person, cohort = PersonFactory(), CohortFactory()
    for codes in (["INS"], ["INS", "COA2"]):
        actions.enrol(person, "instructor", cohort, now=now, may_sign=codes)
    assert list(Membership.objects.values_list("may_sign", flat=True)) == [["INS", "COA2"]]


def test_publishing_a_course_twice_changes_nothing():
    packs = shelf()
    for _time in range(2):
        lessons = {code: actions.publish_lesson(pack) for code, pack in packs.lessons.items()}
        for course in packs.courses.values():
            actions.publish_course(course, lessons)
    assert Lesson.objects.count() == len(packs.lessons) == 33
    assert [course.modules.count() for course in Course.objects.order_by("code")] == [
        len(packs.courses[code].modules) for code in sorted(packs.courses)
    ]
    assert set(Lesson.objects.taught().values_list("code", flat=True)) == {"L24", "L25"}


def test_reading_a_newer_version_is_remembered(now):
    person, lesson = PersonFactory(), LessonFactory(version=1)
    actions.mark_read(person, lesson, now)
    lesson.version = 2
    read = actions.mark_read(person, lesson, now + timedelta(days=1))
    assert (person.lessons_read.count(), read.version) == (1, 2)
