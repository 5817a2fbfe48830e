"""The sheet of parts is for those who teach or manage, and shows every state."""

import pytest
from django.urls import reverse

from tests.factories import MembershipFactory, PersonFactory


@pytest.fixture
def person(client, school):
    person = PersonFactory()
    client.force_login(person)
    return person


def test_a_trainee_finds_nothing_there(client, person):
    assert client.get(reverse("parts")).status_code == 404


def test_a_developer_sees_it_without_a_role(client, person, settings):
    settings.DEBUG = True
    assert client.get(reverse("parts")).status_code == 200


def test_staff_see_every_state_of_an_answer(client, person):
    MembershipFactory(person=person, role="instructor", cohort=None)
    page = client.get(reverse("parts")).content.decode()
    assert "This was answered in two tabs." in page
    assert "came 40\u00a0s after time" in page
    assert "No signal. Go on working." in page
    assert "not taught here yet" in page
