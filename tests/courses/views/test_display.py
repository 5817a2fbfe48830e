"""How the screen is lit."""

import pytest
from django.urls import reverse

from tests.factories import PersonFactory

pytestmark = pytest.mark.django_db


def test_a_person_keeps_their_lighting(client, school):
    person = PersonFactory()
    client.force_login(person)
    answer = client.post(reverse("display-set"), {"theme": "sunlight", "next": "/settings/"})
    assert (answer.status_code, answer.url) == (302, "/settings/")
    assert 'data-theme="sunlight"' in client.get("/settings/").content.decode()


def test_a_visitor_keeps_it_in_the_session(client, school):
    client.post(reverse("display-set"), {"theme": "dark", "next": "/account/login/"})
    assert 'data-theme="dark"' in client.get("/account/login/").content.decode()


def test_following_the_device_leaves_no_mark(client, school):
    assert "data-theme" not in client.get("/account/login/").content.decode()


def test_an_unknown_lighting_is_refused(client, school):
    assert client.post(reverse("display-set"), {"theme": "disco"}).status_code == 400


@pytest.mark.parametrize("back", ["https://elsewhere.example/", "//elsewhere.example", "javascript:alert(1)", ""])
def test_it_never_leads_to_another_host(client, school, back):
    answer = client.post(reverse("display-set"), {"theme": "dark", "next": back})
    assert answer.url == reverse("home")


def test_it_is_not_changed_by_looking(client, school):
    assert client.get(reverse("display-set")).status_code == 405
