"""The page speaks the reader's language and keeps the reader's clock."""

import pytest
from django.utils import timezone, translation

from courses.middleware import zone_of
from courses.models import School
from tests.factories import PersonFactory

pytestmark = pytest.mark.django_db


@pytest.mark.parametrize(
    ("own", "of_school", "zone"),
    [
        ("Europe/Lisbon", "America/New_York", "Europe/Lisbon"),
        ("", "America/New_York", "America/New_York"),
        ("Mars/Base", "America/New_York", "UTC"),
        ("", "Mars/Base", "UTC"),
    ],
)
def test_the_clock_is_ones_own_else_the_schools(school, own, of_school, zone):
    School.objects.update(zone=of_school)
    assert zone_of(PersonFactory(zone=own)).key == zone


def test_without_a_school_the_clock_is_utc():
    assert zone_of(PersonFactory()).key == "UTC"


def test_the_readers_clock_does_not_leak_into_the_next_request(client, school):
    client.force_login(PersonFactory(zone="Asia/Tokyo", language="en-gb"))
    page = client.get("/settings/")
    assert 'lang="en-gb"' in page.content.decode()
    assert timezone.get_current_timezone_name() == "UTC"
    client.logout()
    assert 'lang="en-us"' in client.get("/account/login/").content.decode()
    translation.activate("en-us")
