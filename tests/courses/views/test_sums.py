"""Calculators with and without script."""

import pytest
from django.urls import reverse

from courses.trade.sums import SUMS
from tests.factories import PersonFactory

pytestmark = pytest.mark.django_db


@pytest.fixture
def page(client, school):
    client.force_login(PersonFactory(temperature="degf"))
    return lambda name, **data: client.get(reverse("sum-detail", args=[name]), data)


def test_calculators_ask_who_you_are(client, school):
    pages = [client.get(reverse("sum-list")), client.get(reverse("sum-detail", args=["dew_point"]))]
    assert [page.status_code for page in pages] == [302, 302]


def test_every_sum_has_its_page(page):
    assert [page(name).status_code for name in SUMS] == [200] * len(SUMS)


def test_a_sum_is_worked_out_in_the_readers_units(page):
    """Air 68 °F (20 °C) at 50 %: dew point 9.26 °C, row D17 of the project's table after Alduchov and Eskridge 1996."""
    answer = page("dew_point", air_degc="68", air_rh="50").content.decode()
    assert "48.7\u00a0°F" in answer
    assert "Alduchov" in answer


def test_a_number_may_carry_its_own_unit_and_a_comma(page):
    assert page("dew_point", air_degc="20,0 °C", air_rh="50 %").content.decode().count("48.7\u00a0°F") == 1


@pytest.mark.parametrize(
    ("inputs", "sentence"),
    [
        ({"air_degc": "68", "air_rh": "140"}, "lies outside"),
        ({"air_degc": "warm", "air_rh": "50"}, "is no number"),
        ({"air_degc": "", "air_rh": "50"}, "Enter a value."),
        ({"air_degc": "5 mil", "air_rh": "50"}, "not a temperature"),
    ],
)
def test_what_cannot_be_worked_out_is_said_at_the_field(page, inputs, sentence):
    answer = page("dew_point", **inputs)
    assert answer.status_code == 200
    assert sentence in answer.content.decode()


def test_a_script_gets_the_answer_alone(client, school):
    client.force_login(PersonFactory())
    answer = client.get("/calculators/dew_point/", {"air_degc": "20", "air_rh": "50"}, headers={"HX-Request": "true"})
    assert answer.content.decode().lstrip().startswith('<div class="read"')
    assert "9.3\u00a0°C" in answer.content.decode()
    assert "HX-Request" in answer["Vary"]


def test_an_unknown_sum_is_not_found(page):
    assert page("wind_chill").status_code == 404


@pytest.mark.parametrize("many", [0, 30])
def test_calculators_ask_the_database_as_often_for_many_people(client, school, django_assert_num_queries, many):
    PersonFactory.create_batch(many)
    client.force_login(PersonFactory())
    with django_assert_num_queries(5):
        client.get(reverse("sum-list"))
    with django_assert_num_queries(5):
        client.get(reverse("sum-detail", args=["dew_point"]), {"air_degc": "20", "air_rh": "50"})
