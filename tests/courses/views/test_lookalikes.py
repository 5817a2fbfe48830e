"""The page of look-alikes: two panels under one lamp, what tells them apart, and the form that chooses them."""

import re

import pytest
from django.urls import reverse

from courses import gallery
from courses.models import HungPicture
from courses.pictures import LIGHTS
from courses.shipped import catalogue
from courses.views.lookalikes import told

pytestmark = pytest.mark.django_db
URL = "/lessons/look-alikes/"


def page(client, person, **chosen):
    """Return the page with these choices, everything else as it is at first."""
    client.force_login(person)
    query = {"a": "swirl", "b": "hologram", "colour": "dark", "light": "point", **chosen} if chosen else {}
    return client.get(URL, query)


def addresses(answer):
    """Return the code of every picture on a page, in order."""
    return re.findall(r'src="/pictures/([\w-]{32})/\d+\.webp"', answer.content.decode())


def test_everybody_of_the_school_may_compare(client, outsider, instructor):
    for person in (outsider, instructor):
        assert page(client, person).status_code == 200


def test_at_first_swirls_stand_beside_holograms_under_a_moving_lamp(client, outsider):
    answer = page(client, outsider)
    assert [frame.caption for frame in answer.context["frame"].all] == ["Swirl marks", "Holograms (buffer trails)"]
    assert len(addresses(answer)) == 2 * 7
    assert answer.content.decode().count('type="radio" name="lamp-') == 7


@pytest.mark.parametrize("light", LIGHTS)
def test_every_choice_is_hung(client, outsider, light):
    gallery.hang_shipped()
    kinds = [*catalogue().kinds, "clean"]
    for colour in ("dark", "mid", "white"):
        for a, b in zip(kinds[::2], [*kinds[1::2], *kinds[:1]][: len(kinds[::2])], strict=True):
            codes = set(addresses(page(client, outsider, a=a, b=b, colour=colour, light=light)))
            assert HungPicture.objects.filter(code__in=codes).count() == 2


def test_under_the_panels_stands_what_tells_them_apart(client, outsider):
    kind = catalogue().kind("hologram")
    words = page(client, outsider, light="point").content.decode()
    assert kind.seen["point"][1:] in words
    assert f"When the lamp moves: {kind.moved}." in words


@pytest.mark.parametrize("light", LIGHTS)
def test_each_kind_is_told_in_two_short_lines(light):
    for code in (*catalogue().kinds, "clean"):
        lines = told(code, light).lines
        assert len(lines) == 2
        assert all(line.endswith(".") and len(line) < 160 for line in lines), code


def test_a_light_that_hides_a_kind_or_shows_it_best_is_named():
    assert told("swirl", "diffuse").lines[1] == "This light hides it. Best seen in: one lamp, square on."
    assert told("oxidation", "diffuse").lines[1] == "This light shows it best."
    assert told("swirl", "raking").lines[1] == "Best seen in: one lamp, square on."


@pytest.mark.parametrize(
    "wrong", [{"a": "nothing"}, {"light": "sun"}, {"colour": "#123456"}, {"b": "swirl"}, {"a": "\x00" * 9}]
)
def test_a_choice_that_isnt_offered_shows_no_panel_and_says_so(client, outsider, wrong):
    answer = page(client, outsider, **wrong)
    assert (answer.status_code, addresses(answer)) == (200, [])
    assert 'class="invalid-feedback"' in answer.content.decode()


def test_nothing_is_written_by_looking(client, outsider):
    page(client, outsider)
    assert not HungPicture.objects.exists()


@pytest.mark.parametrize("chosen", [{}, {"light": "diffuse"}])
def test_the_page_asks_the_database_as_often_whatever_is_chosen(client, outsider, django_assert_num_queries, chosen):
    client.force_login(outsider)
    with django_assert_num_queries(5):
        client.get(reverse("look-alikes"), chosen and {"a": "clean", "b": "swirl", "colour": "mid", **chosen})


def test_lessons_lead_to_it(client, outsider):
    client.force_login(outsider)
    assert f'href="{URL}"' in client.get(reverse("lesson-list")).content.decode()
