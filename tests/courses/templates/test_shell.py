"""The shell of every page: the lighting is written by the server, nothing dead is shown, refusals say what to do."""

import pytest
from django.template.loader import render_to_string
from django.test import Client
from django.urls import reverse

from tests.factories import MembershipFactory, PersonFactory

TABS = ("Today", "Lessons", "Scenarios")


@pytest.fixture
def signed_in(client, school):
    person = PersonFactory(name="Test Hand")
    client.force_login(person)
    return person


def page_of(response) -> str:
    return response.content.decode()


def test_a_stranger_sees_no_tabs_and_no_menu(client, school):
    page = page_of(client.get(reverse("account_login")))
    assert 'class="tabs"' not in page
    assert 'class="who"' not in page
    assert "Test Yard" in page


def test_who_is_signed_in_sees_three_tabs_with_the_open_one_marked(client, signed_in):
    page = page_of(client.get(reverse("lesson-list")))
    assert all(name in page for name in TABS)
    assert page.count('aria-current="page"') == 1
    assert "Test Hand" in page


@pytest.mark.parametrize(
    ("role", "more"),
    [
        ("trainee", ["Record"]),
        ("instructor", ["Cohorts"]),
        ("examiner", ["Cohorts"]),
        ("manager", ["Cohorts", "School"]),
    ],
)
def test_tabs_follow_the_roles_of_who_reads(client, signed_in, role, more):
    MembershipFactory(person=signed_in, role=role, **({} if role == "trainee" else {"cohort": None}))
    page = page_of(client.get(reverse("home"))).partition("</nav>")[0]
    shown = [name for name in (*TABS, "Record", "Cohorts", "School") if f"</svg>{name}</a>" in page]
    assert shown == [*TABS, *more]


def test_the_server_writes_the_lighting_that_was_chosen(client, signed_in):
    assert "data-theme" not in page_of(client.get(reverse("sum-list"))).partition(">")[2].partition(">")[0]
    client.post(reverse("display-set"), {"theme": "sunlight", "next": "/"})
    assert '<html lang="en-us" data-theme="sunlight">' in page_of(client.get(reverse("sum-list")))


def test_an_address_with_nothing_behind_it_says_so_in_our_words(client, school):
    response = client.get("/nothing-here/")
    assert response.status_code == 404
    assert "There is nothing at this address" in page_of(response)


def test_a_form_that_is_too_old_says_what_to_do(school):
    response = Client(enforce_csrf_checks=True).post(reverse("display-set"), {"theme": "dark"})
    assert response.status_code == 403
    assert "This form is too old" in page_of(response)


@pytest.mark.parametrize("name", ["400.html", "403.html", "429.html"])
def test_every_refusal_has_a_heading_a_sentence_and_a_way_out(name, school, rf):
    request = rf.get("/")
    request.session = {}
    page = render_to_string(name, {"school": school}, request)
    assert page.count("<h1>") == 1
    assert 'class="lead"' in page
    assert 'class="links"' in page


def test_the_page_for_a_broken_server_needs_nothing_from_it():
    page = render_to_string("500.html")
    assert "Something broke here" in page
    assert "csrf" not in page


@pytest.mark.parametrize(
    "name",
    ["account_login", "account_reset_password", "account_reset_password_done", "account_inactive", "account_signup"],
)
def test_account_pages_wear_our_shell(client, school, name):
    page = page_of(client.get(reverse(name)))
    assert 'class="skip"' in page
    assert page.count("<h1>") == 1
    assert "Please" not in page
