"""Coming in is by invitation; signing in is limited; mail waits in a folder."""

import pytest
from django.core import mail
from django.urls import reverse

from courses.models import Person
from tests.factories import PASSWORD, PersonFactory

pytestmark = pytest.mark.django_db


def sign_in(client, email="pia@test.example", password=PASSWORD):
    return client.post(reverse("account_login"), {"login": email, "password": password})


def test_the_street_door_is_shut(client, school):
    form = {"email": "new@test.example", "password1": "a long enough one"}
    pages = [client.get(reverse("account_signup")), client.post(reverse("account_signup"), form)]
    assert all("invitation" in page.content.decode() for page in pages)
    assert not Person.objects.exists()


def test_a_person_signs_in_by_address_whatever_its_capitals(client, school):
    PersonFactory(email="pia@test.example")
    answer = sign_in(client, "PIA@test.example")
    assert (answer.status_code, answer.url) == (302, "/")


def test_a_wrong_password_says_nothing_of_whether_the_address_belongs_here(client, school):
    PersonFactory(email="pia@test.example")
    pages = [sign_in(client, password="wrong"), sign_in(client, "nobody@test.example", "wrong")]
    said = [page.context["form"].non_field_errors() for page in pages]
    assert said[0] == said[1]
    assert said[0]


def test_too_many_wrong_passwords_shut_the_door_for_a_while(client, school):
    PersonFactory(email="pia@test.example")
    for _try in range(6):
        sign_in(client, password="wrong")
    page = sign_in(client)
    assert page.status_code == 200
    assert "Too many" in page.content.decode()


def test_a_person_who_left_cannot_sign_in(client, school):
    PersonFactory(email="pia@test.example", is_active=False)
    sign_in(client)
    assert client.get(reverse("home")).status_code == 302


def test_a_new_session_begins_at_sign_in_and_ends_at_sign_out(client, school):
    PersonFactory(email="pia@test.example")
    client.get(reverse("account_login"))
    client.session["kept"] = 1
    before = client.session.session_key
    sign_in(client)
    assert client.session.session_key != before
    client.post(reverse("account_logout"))
    assert client.get(reverse("home")).status_code == 302


def test_a_forgotten_password_sends_a_link_and_tells_no_stranger(client, school):
    PersonFactory(email="pia@test.example")
    answers = [
        client.post(reverse("account_reset_password"), {"email": email})
        for email in ("pia@test.example", "nobody@test.example")
    ]
    assert answers[0].url == answers[1].url
    (letter,) = [one for one in mail.outbox if one.to == ["pia@test.example"]]
    assert "/account/password/reset/key/" in letter.body
