"""Coming in by invitation, and one's own settings."""

import re
from datetime import timedelta

import pytest
from django.urls import reverse
from django.utils import timezone

from courses.models import Person
from tests.factories import InvitationFactory, PersonFactory, SchoolFactory

pytestmark = pytest.mark.django_db
GIVEN = {"email": "nell@test.example", "name": "Nell New", "password": "a long enough one", "units": "us"}


@pytest.fixture
def link(school):
    return reverse("invitation-accept", args=[InvitationFactory().pk and "token-of-a-test"])


def test_an_invitation_names_the_school_and_asks_for_units(client, link):
    page = client.get(link)
    assert page.status_code == 200
    assert "Test Yard" in page.content.decode()


def test_taking_up_an_invitation_signs_in_and_leads_home(client, link):
    page = client.post(link, GIVEN)
    person = Person.objects.with_email("nell@test.example").get()
    assert (page.status_code, page.url) == (302, "/")
    assert client.session["_auth_user_id"] == str(person.pk)
    assert person.temperature == "degf"


def test_a_link_is_gone_once_used(client, link):
    client.post(link, GIVEN)
    client.logout()
    assert client.get(link).status_code == 410
    assert client.post(link, {**GIVEN, "email": "b@test.example"}).status_code == 410
    assert Person.objects.count() == 1


def test_an_expired_or_invented_link_is_gone_alike(client, school):
    InvitationFactory(expires_at=timezone.now() - timedelta(seconds=1))
    pages = [client.get(reverse("invitation-accept", args=[token])) for token in ("token-of-a-test", "never-made")]
    assert [page.status_code for page in pages] == [410, 410]
    words = [re.sub(r'value="[^"]*"', "", page.content.decode()) for page in pages]
    assert words[0].replace("token-of-a-test", "") == words[1].replace("never-made", "")


@pytest.mark.parametrize(
    ("field", "value", "sentence"),
    [
        ("password", "short", "at least 12 characters"),
        ("password", "1qaz2wsx3edc", "too common"),
        ("email", "no address", "Write it like name@example.org"),
        ("name", "", "Enter your name."),
        ("units", "furlongs", "valid choice"),
    ],
)
def test_what_cannot_be_kept_is_said_at_the_field_and_the_rest_stays(client, link, field, value, sentence):
    page = client.post(link, {**GIVEN, field: value})
    assert page.status_code == 422
    assert sentence in page.content.decode()
    assert Person.objects.count() == 0
    if field != "name":
        assert "Nell New" in page.content.decode()


def test_an_address_that_belongs_here_is_sent_to_sign_in(client, link):
    PersonFactory(email="nell@test.example")
    page = client.post(link, GIVEN)
    assert page.status_code == 422
    assert "already belongs here" in page.content.decode()


def test_settings_ask_who_you_are(client, school):
    assert client.get(reverse("settings")).status_code == 302


def test_settings_are_kept_for_oneself_alone(client, school):
    person, other = PersonFactory(), PersonFactory()
    client.force_login(person)
    given = {
        "name": "Pia Plain",
        "temperature": "degf",
        "film": "um",
        "volume": "fl_oz",
        "length": "ft",
        "language": "en-gb",
        "zone": "Europe/Lisbon",
        "extra_time_percent": "200",
        "is_active": "",
    }
    assert client.post(reverse("settings"), given).status_code == 302
    person.refresh_from_db()
    other.refresh_from_db()
    assert (person.name, person.temperature, person.film, person.zone) == ("Pia Plain", "degf", "um", "Europe/Lisbon")
    assert (person.extra_time_percent, person.is_active) == (0, True)
    assert other.temperature == "degc"


def test_all_units_are_set_at_one_press(client, school):
    person = PersonFactory()
    client.force_login(person)
    client.post(reverse("settings"), {"all": "us"})
    person.refresh_from_db()
    assert (person.temperature, person.film, person.volume, person.length) == ("degf", "mil", "fl_oz", "ft")


def test_a_time_zone_nobody_keeps_is_refused(client, school):
    person = PersonFactory()
    client.force_login(person)
    page = client.post(reverse("settings"), {"name": "P", "zone": "Mars/Base"})
    assert page.status_code == 422


def test_dates_follow_the_language_chosen(client):
    SchoolFactory()
    person = PersonFactory(language="en-gb")
    client.force_login(person)
    assert '<html lang="en-gb"' in client.get(reverse("settings")).content.decode()


@pytest.mark.parametrize("many", [0, 30])
def test_pages_ask_the_database_as_often_however_many_belong_here(client, link, django_assert_num_queries, many):
    for number in range(many):
        InvitationFactory(token=f"token-{number}", invited_by=PersonFactory())
    with django_assert_num_queries(1):
        client.get(reverse("account_login"))
    with django_assert_num_queries(3):
        client.get(link)
    client.force_login(PersonFactory())
    with django_assert_num_queries(5):
        client.get(reverse("settings"))
