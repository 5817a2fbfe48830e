"""What no page of ours sends: forms without their token, markup in names, probes, fields that are nobody's to set."""

import re

import pytest
from django.apps import apps
from django.contrib.sessions.models import Session
from django.core.cache import cache
from django.test import Client
from django.urls import URLPattern, get_resolver, reverse

from courses.models import Person
from tests.factories import MembershipFactory, PersonFactory

pytestmark = pytest.mark.django_db
MARKUP = "<script>alert(1)</script>\"'><img src=x onerror=alert(1)>"
PROBES = [
    "' OR '1'='1",
    "1; DROP TABLE courses_person --",
    "{{7919*7907}}",
    "${7919*7907}",
    "../../etc/passwd",
    "%00",
    "\x00",
    "é" * 3000,
]
SAMPLES = {"int": "1", "uuid": "00000000-0000-4000-8000-000000000000", "str": "x", "slug": "x"}


def addresses():
    """Yield every address of the site with a sample in each of its places."""

    def walk(patterns, before=""):
        for one in patterns:
            here = before + str(one.pattern)
            if isinstance(one, URLPattern):
                yield here
            else:
                yield from walk(one.url_patterns, here)

    for route in walk(get_resolver().url_patterns):
        plain = re.sub(r"\(\?P<\w+>[^)]*\)", "x", route)
        plain = re.sub(r"<(?:(\w+):)?\w+>", lambda found: SAMPLES[found[1] or "str"], plain)
        plain = re.sub(r"\^|\$|\\Z", "", plain)
        yield "/" + plain


ADDRESSES = sorted(set(addresses()))


@pytest.fixture
def manager(school):
    """Somebody who may do most."""
    cache.clear()
    return MembershipFactory(cohort=None, role="manager", person=PersonFactory(name=MARKUP)).person


def rows():
    """Return everything that stands in the database, sessions apart."""
    models = [one for one in apps.get_models() if one is not Session]
    return {one._meta.label: list(one.objects.order_by("pk").values()) for one in models}


@pytest.mark.parametrize("address", ADDRESSES)
def test_a_form_without_its_token_is_refused_everywhere(manager, address):
    careful = Client(enforce_csrf_checks=True)
    careful.force_login(manager)
    before = rows()
    assert careful.post(address, {"name": "changed"}).status_code == 403
    assert rows() == before


@pytest.mark.parametrize("address", ADDRESSES)
def test_looking_changes_nothing(manager, client, address):
    client.force_login(manager)
    before = rows()
    assert client.get(address).status_code < 500
    assert rows() == before


@pytest.mark.parametrize("address", [one for one in ADDRESSES if "x" not in one.split("/") and "0000" not in one])
def test_a_script_in_a_name_is_shown_and_does_nothing(manager, client, address):
    client.force_login(manager)
    answer = client.get(address)
    if "html" in answer.get("Content-Type", ""):
        assert b"<script>alert(1)" not in answer.content
        assert b"<img src=x" not in answer.content


def test_that_name_really_stands_on_a_page(manager, client):
    client.force_login(manager)
    assert b"&lt;script&gt;alert(1)&lt;/script&gt;" in client.get(reverse("settings")).content


@pytest.mark.parametrize("probe", PROBES)
def test_probes_in_addresses_and_queries_break_nothing(manager, client, probe):
    client.force_login(manager)
    names = ["lesson-list", "sum-list", "scenario-list", "person-list", "settings", "mfa_index"]
    for name in names:
        answer = client.get(reverse(name), {"q": probe, "page": probe, "next": probe, "sort": probe, "role": probe})
        assert answer.status_code in (200, 422)
        assert b"62615533" not in answer.content
    assert client.get(reverse("sum-detail", args=["dew_point"]), {"air_degc": probe}).status_code in (200, 422)
    for name in ("sum-detail", "scenario-detail", "invitation-accept"):
        assert client.get(reverse(name, args=["x"]).replace("/x/", f"/{probe}/")).status_code in (301, 400, 404, 410)
    assert Person.objects.filter(pk=manager.pk).exists()


@pytest.mark.parametrize("probe", PROBES)
def test_probes_at_the_door_open_nothing(client, school, probe):
    cache.clear()
    client.post(reverse("account_login"), {"login": f"{probe}@test.example", "password": probe})
    client.post(reverse("account_reset_password"), {"email": probe})
    assert "_auth_user_id" not in client.session


def test_fields_that_are_nobodys_to_set_are_left_alone(client, school):
    person = PersonFactory(email="pia@test.example", name="Pia")
    client.force_login(person)
    units = {"temperature": "degc", "film": "um", "volume": "ml", "length": "m", "language": "en-gb", "zone": ""}
    more = {
        "email": "boss@test.example",
        "is_active": "0",
        "extra_time_percent": "300",
        "password": "x",
        "handle": "x",
        "id": "1",
    }
    client.post(reverse("settings"), {"name": "Pia P", "keep": "1", **units, **more})
    after = Person.objects.get(pk=person.pk)
    assert after.name == "Pia P"
    kept = ("email", "is_active", "extra_time_percent", "password", "handle")
    assert [getattr(after, name) for name in kept] == [getattr(person, name) for name in kept]


def test_a_broken_server_tells_nothing_of_its_inside(client, school, settings):
    settings.ROOT_URLCONF = "tests.safety.broken_urls"
    client.raise_request_exception = False
    answer = client.get("/breaks/")
    page = answer.content.decode()
    assert (answer.status_code, settings.DEBUG) == (500, False)
    for word in ("the-inside-of-the-server", "ZeroDivisionError", "Traceback", "tests/safety"):
        assert word not in page


def test_seeds_are_128_bits_of_chance(trainee, remote, now):
    from assessments import journey
    from assessments.models import Scenario

    scenario = Scenario.objects.get(code="COA-01")
    seeds = set()
    for _turn in range(12):
        attempt = journey.open_attempt(trainee, scenario, "practice", now=now)
        seeds.add(int(attempt.seed))
        journey.put_away(attempt, now=now)
    assert len(seeds) == 12
    assert max(seeds).bit_length() > 120
    assert max(seeds) < 2**128
