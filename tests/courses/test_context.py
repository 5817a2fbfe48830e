"""What every page knows of its reader."""

import pytest
from django.contrib.auth.models import AnonymousUser

from courses.context import reader
from courses.trade.units import Preferences
from tests.factories import MembershipFactory, PersonFactory

pytestmark = pytest.mark.django_db


def known(rf, user, session=None):
    request = rf.get("/")
    request.user, request.session = user, session or {}
    return reader(request)


def test_a_person_is_read_to_in_their_own_units_and_light(rf, school):
    found = known(rf, PersonFactory(theme="dark"))
    assert (found["theme"], found["prefs"], found["school"].name) == ("dark", Preferences.metric(), "Test Yard")


def test_a_visitor_has_the_light_of_the_session(rf, school):
    assert known(rf, AnonymousUser(), {"theme": "sunlight"})["theme"] == "sunlight"
    assert known(rf, AnonymousUser())["theme"] == "auto"


def test_roles_are_asked_for_once_and_only_when_used(rf, school, django_assert_num_queries):
    person = PersonFactory()
    MembershipFactory(person=person)
    MembershipFactory(person=person)
    MembershipFactory(person=person, role="instructor", cohort=None)
    with django_assert_num_queries(0):
        found = known(rf, person)
    with django_assert_num_queries(1):
        assert "trainee" in found["roles"]
        assert "manager" not in found["roles"]
        assert len(found["roles"]) == 2


def test_a_visitor_has_no_role(rf, school, django_assert_num_queries):
    with django_assert_num_queries(0):
        assert known(rf, AnonymousUser())["roles"] == frozenset()
