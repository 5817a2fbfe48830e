"""What the ground floor tells, once for each change and inside its transaction."""

import pytest
from django.db import transaction

from courses.actions import enrol
from courses.models import Membership
from courses.signals import role_changed
from tests.factories import CohortFactory, PersonFactory

pytestmark = pytest.mark.django_db


@pytest.fixture
def told():
    heard = []

    def hear(sender, *, membership, change, by, now, **_more):
        assert transaction.get_connection().in_atomic_block
        heard.append((membership.role, change, by, now))

    role_changed.connect(hear)
    yield heard
    role_changed.disconnect(hear)


def test_a_role_is_told_as_it_is_given_and_changed_and_not_otherwise(told, school, now):
    person, manager = PersonFactory(), PersonFactory()
    for codes in (["INS"], ["INS"], ["INS", "COA2"]):
        enrol(person, "instructor", None, now=now, by=manager, may_sign=codes)
    assert told == [("instructor", "given", manager, now), ("instructor", "changed", manager, now)]


def test_a_listener_that_fails_takes_the_role_back(school, now):
    def fail(sender, **_told):
        raise RuntimeError("the log is full")

    role_changed.connect(fail)
    try:
        with pytest.raises(RuntimeError):
            enrol(PersonFactory(), "trainee", CohortFactory(), now=now)
    finally:
        role_changed.disconnect(fail)
    assert Membership.objects.count() == 0
