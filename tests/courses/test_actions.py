"""Verbs of the ground floor: what they write, and what they refuse."""

from datetime import timedelta
from threading import Barrier, Thread

import pytest
from allauth.mfa.models import Authenticator
from django.contrib.sessions.models import Session
from django.db import connection

from courses import actions
from courses.errors import CohortRefused, InvitationRefused, PersonRefused, RoleRefused
from courses.models import Course, Invitation, Lesson, Membership, Person
from courses.models.enrolment import Role
from courses.shipped import shelf
from courses.signals import person_erased, role_changed
from tests.factories import (
    CohortFactory,
    CourseFactory,
    InvitationFactory,
    LessonFactory,
    MembershipFactory,
    PersonFactory,
    SchoolFactory,
)

pytestmark = pytest.mark.django_db


@pytest.fixture
def told():
    """Everything the ground floor says while a test runs: what changed, whose, who did it and when."""
    heard = []

    def hear(sender, **said):
        subject = said["membership"].pk if "membership" in said else said["person"].pk
        heard.append((said.get("change", "erased"), subject, said["by"], said["now"]))

    role_changed.connect(hear)
    person_erased.connect(hear)
    yield heard
    role_changed.disconnect(hear)
    person_erased.disconnect(hear)


def manager(**fields):
    return MembershipFactory(role="manager", cohort=None, person=PersonFactory(**fields))


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
    taught = {code for code, pack in packs.lessons.items() if pack.text}
    assert {"L01", "L24", "L29"} <= taught
    assert set(Lesson.objects.taught().values_list("code", flat=True)) == taught


def test_reading_a_newer_version_is_remembered(now):
    person, lesson = PersonFactory(), LessonFactory(version=1)
    actions.mark_read(person, lesson, now)
    lesson.version = 2
    read = actions.mark_read(person, lesson, now + timedelta(days=1))
    assert (person.lessons_read.count(), read.version) == (1, 2)


def test_a_role_given_twice_is_said_once(now, told):
    person, cohort, boss = PersonFactory(), CohortFactory(), manager().person
    roles = [actions.enrol(person, "trainee", cohort, now=now, by=boss) for _time in range(2)]
    assert roles[0] == roles[1]
    assert told == [("given", roles[0].pk, boss, now)]


@pytest.mark.parametrize(
    ("role", "codes", "sentence"),
    [("trainee", {"may_sign": ["COA2"]}, "signs nothing"), ("trainee", {"teaches": ["INS"]}, "teaches nothing")],
)
def test_a_trainee_is_given_nothing_to_sign_or_teach(now, told, role, codes, sentence):
    with pytest.raises(RoleRefused, match=sentence):
        actions.enrol(PersonFactory(), role, CohortFactory(), now=now, **codes)
    assert (told, Membership.objects.count()) == ([], 0)


def test_a_role_is_changed_and_said_once(now, told):
    held, boss, cohort = MembershipFactory(role="instructor", may_sign=["INS"]), manager().person, CohortFactory()
    codes = {"cohort": cohort, "teaches": ["WAD"], "may_sign": ["COA2"], "by": boss, "now": now}
    held = actions.change_role(held, **codes)
    actions.change_role(held, **codes)
    assert list(Membership.objects.filter(pk=held.pk).values_list("cohort", "teaches", "may_sign")) == [
        (cohort.pk, ["WAD"], ["COA2"])
    ]
    assert told == [("changed", held.pk, boss, now)]


def test_a_role_changed_by_another_meanwhile_is_not_written_over(now, told):
    held = MembershipFactory(role="instructor", may_sign=["INS", "COA"])
    stale = Membership.objects.get(pk=held.pk)
    actions.change_role(held, cohort=held.cohort, teaches=[], may_sign=["INS"], by=None, now=now)
    with pytest.raises(RoleRefused, match="changed this role meanwhile"):
        actions.change_role(stale, cohort=None, teaches=[], may_sign=["INS", "COA"], by=None, now=now)
    held.refresh_from_db()
    assert (held.may_sign, len(told)) == (["INS"], 1)


def test_a_role_ended_by_another_meanwhile_is_neither_changed_nor_ended_again(now, told):
    held = MembershipFactory(role="instructor")
    actions.end_role(Membership.objects.get(pk=held.pk), by=None, now=now)
    with pytest.raises(RoleRefused, match="ended this role meanwhile"):
        actions.change_role(held, cohort=None, teaches=["INS"], may_sign=[], by=None, now=now)
    with pytest.raises(RoleRefused, match="ended this role meanwhile"):
        actions.end_role(held, by=None, now=now)
    assert told == [("ended", held.pk, None, now)]


def test_a_role_is_not_changed_into_one_that_is_held(now):
    here = MembershipFactory(role="instructor")
    there = MembershipFactory(role="instructor", person=here.person)
    with pytest.raises(RoleRefused, match="there already"):
        actions.change_role(there, cohort=here.cohort, teaches=[], may_sign=[], by=None, now=now)
    with pytest.raises(RoleRefused, match="learns in a cohort"):
        actions.change_role(MembershipFactory(), cohort=None, teaches=[], may_sign=[], by=None, now=now)


def test_a_manager_does_not_end_their_own_last_role_as_one(now):
    mine, other = manager(), manager()
    with pytest.raises(RoleRefused, match="Another manager has to end it"):
        actions.end_role(mine, by=mine.person, now=now)
    second = MembershipFactory(role="manager", person=mine.person)
    actions.end_role(second, by=mine.person, now=now)
    actions.end_role(other, by=mine.person, now=now)
    assert list(Membership.objects.managing()) == [mine]


def test_the_school_keeps_a_manager_who_can_sign_in(now):
    last, shut = manager(), manager(is_active=False)
    for act in (
        lambda: actions.end_role(last, by=shut.person, now=now),
        lambda: actions.deactivate(last.person, by=shut.person),
        lambda: actions.erase_person(last.person, by=None, now=now),
    ):
        with pytest.raises((RoleRefused, PersonRefused), match="needs a manager who can sign in"):
            act()
    assert Membership.objects.managing().filter(person__is_active=True).count() == 1


@pytest.mark.django_db(transaction=True)
def test_two_managers_who_end_each_other_at_once_leave_one(now):
    SchoolFactory()
    pair, gate, said = [manager(), manager()], Barrier(2), []

    def end(mine, other):
        gate.wait()
        try:
            actions.end_role(other, by=mine.person, now=now)
        except RoleRefused as refusal:
            said.append(str(refusal))
        finally:
            connection.close()

    threads = [Thread(target=end, args=both) for both in (pair, pair[::-1])]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert Membership.objects.managing().count() == 1
    assert len(said) == 1
    assert "needs a manager" in said[0]


def test_a_person_is_kept_with_an_address_that_counts_as_confirmed():
    person = PersonFactory(email="old@test.example")
    kept = actions.keep_person(person, {"name": "Nell", "email": " New@test.example ", "extra_time_percent": 25})
    assert (kept.name, kept.email, kept.extra_time_percent) == ("Nell", "new@test.example", 25)
    addresses = person.emailaddress_set.values_list("email", "verified", "primary")
    assert list(addresses) == [("new@test.example", True, True)]


def test_an_address_of_somebody_else_is_refused():
    person = PersonFactory(email="mine@test.example")
    other = PersonFactory(email="other@test.example")
    other.emailaddress_set.create(email="second@test.example", verified=True)
    for email in ("OTHER@test.example", "second@test.example"):
        with pytest.raises(PersonRefused, match="belongs to somebody else"):
            actions.keep_person(person, {"email": email})
    person.refresh_from_db()
    assert person.email == "mine@test.example"


def test_a_person_is_shut_out_and_let_in_again(client):
    person, boss = PersonFactory(), manager().person
    client.force_login(person)
    actions.deactivate(person, by=boss)
    assert (Person.objects.get(pk=person.pk).is_active, Session.objects.count()) == (False, 0)
    assert actions.activate(person).is_active is True


def test_nobody_shuts_themself_out(now):
    boss = manager().person
    manager()
    with pytest.raises(PersonRefused, match="shut yourself out"):
        actions.deactivate(boss, by=boss)
    with pytest.raises(PersonRefused, match="shut yourself out"):
        actions.erase_person(boss, by=boss, now=now)


def test_an_erased_person_leaves_no_name_no_address_and_no_way_in(now, told, client):
    boss, person = manager().person, PersonFactory(email="nell@test.example", name="Nell", extra_time_percent=25)
    roles = [MembershipFactory(person=person), MembershipFactory(person=person)]
    other = PersonFactory(email="stays@test.example")
    for one in (person, other):
        Authenticator.objects.create(user=one, type="totp", data={})
    InvitationFactory(token="a", email="nell@test.example", used_at=now, used_by=person)
    InvitationFactory(token="b", email="nell@test.example")
    InvitationFactory(token="c", email="else@test.example")
    client.force_login(person)
    keys = [role.pk for role in roles]
    erased = actions.erase_person(person, by=boss, now=now)
    person.refresh_from_db()
    assert (person.name, person.email) == ("Erased person", f"{person.handle}@erased.invalid")
    assert (person.is_active, person.has_usable_password(), person.extra_time_percent) == (False, False, 0)
    assert (person.emailaddress_set.count(), person.memberships.count(), Session.objects.count()) == (0, 0, 0)
    assert list(Authenticator.objects.values_list("user", flat=True)) == [other.pk]
    assert set(Invitation.objects.values_list("email", flat=True)) == {"", "else@test.example"}
    assert not Invitation.objects.filter(used_at__isnull=True, email="").exists()
    assert told == [("ended", key, boss, now) for key in keys] + [("erased", person.pk, boss, now)]
    assert actions.is_erased(erased)
    assert not actions.is_erased(other)


def test_nothing_of_an_erased_person_is_changed(now, told):
    person = PersonFactory()
    actions.erase_person(person, by=None, now=now)
    del told[:]
    for act in (
        lambda: actions.erase_person(person, by=None, now=now),
        lambda: actions.keep_person(person, {"name": "Back"}),
        lambda: actions.activate(person),
        lambda: actions.enrol(person, "examiner", now=now),
    ):
        with pytest.raises(PersonRefused, match="was erased"):
            act()
    assert told == []


def test_a_cohort_is_made_and_changed_but_never_two_of_a_name():
    course = CourseFactory()
    quay = actions.keep_cohort(None, name="Quay", mode="remote", course=course)
    kept = actions.keep_cohort(quay, name="QUAY", mode="in_person", course=course)
    assert (kept.pk, kept.name, kept.mode) == (quay.pk, "QUAY", "in_person")
    with pytest.raises(CohortRefused, match="There is a cohort quay already"):
        actions.keep_cohort(None, name="quay", mode="remote", course=course)


def test_an_ended_invitation_opens_nothing_and_a_used_one_is_not_ended(now):
    invitation = InvitationFactory(expires_at=now + timedelta(days=1))
    actions.revoke_invitation(invitation, now=now)
    with pytest.raises(InvitationRefused, match="has been used or has expired"):
        accept(invitation, now)
    used = InvitationFactory(token="used", expires_at=now + timedelta(days=1))
    accept(used, now)
    with pytest.raises(InvitationRefused, match="came in by this invitation"):
        actions.revoke_invitation(used, now=now)
