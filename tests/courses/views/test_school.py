"""The manager's pages about the school, its cohorts and its invitations."""

import re

import pytest
from django import forms
from django.db import connection
from django.test.utils import CaptureQueriesContext
from django.urls import reverse

from courses.errors import CohortRefused
from courses.models import Cohort, Invitation, School
from courses.views.school import went_through
from tests.factories import CohortFactory, CourseFactory, InvitationFactory, MembershipFactory, PersonFactory

pytestmark = pytest.mark.django_db
SCHOOL = {"name": "New Yard", "zone": "UTC", "jurisdiction": "uk", "independence": "on"}
PAGES = ("school-detail", "school-cohorts", "cohort-make", "invitation-list", "invitation-make")


@pytest.fixture
def boss(client, school):
    person = MembershipFactory(role="manager", cohort=None, person=PersonFactory(name="Mara Boss")).person
    client.force_login(person)
    return person


def words(page) -> str:
    return page.content.decode()


def address(name):
    if name == "cohort-change":
        return reverse(name, args=[CohortFactory().pk])
    return reverse(name, args=[InvitationFactory(token=name).pk] if name == "invitation-end" else [])


@pytest.mark.parametrize("name", [*PAGES, "cohort-change", "invitation-end"])
@pytest.mark.parametrize("role", ["trainee", "instructor", "examiner", None])
def test_who_does_not_manage_finds_nothing_here(client, school, name, role):
    client.force_login(MembershipFactory(role=role).person if role else PersonFactory())
    url = address(name)
    posted = {**SCHOOL, "mode": "remote", "course": CourseFactory().pk, "role": "manager"}
    before = (School.objects.values().get(), Cohort.objects.count(), list(Invitation.objects.values()))
    assert client.post(url, posted).status_code == 404
    assert name == "invitation-end" or client.get(url).status_code == 404
    assert (School.objects.values().get(), Cohort.objects.count(), list(Invitation.objects.values())) == before


@pytest.mark.parametrize("name", [*PAGES, "cohort-change", "invitation-end"])
def test_a_stranger_is_led_to_sign_in(client, school, name):
    page = client.post(address(name))
    assert (page.status_code, page.url.split("?")[0]) == (302, reverse("account_login"))


@pytest.mark.parametrize("name", [*PAGES, "cohort-change"])
def test_a_manager_sees_each_page_with_one_next_act(client, boss, name):
    page = client.get(address(name))
    assert page.status_code == 200
    assert words(page).count("btn-primary") == 1


def test_the_school_is_kept_and_a_broken_clock_is_not(client, boss):
    assert client.post(reverse("school-detail"), SCHOOL).status_code == 302
    kept = School.objects.get()
    assert (kept.name, kept.zone, kept.jurisdiction, kept.metric, kept.independence) == (
        "New Yard",
        "UTC",
        "uk",
        False,
        True,
    )
    page = client.post(reverse("school-detail"), {**SCHOOL, "name": "Other", "zone": "Mars/Base"})
    assert page.status_code == 422
    assert "There is no such time zone" in words(page)
    assert School.objects.get().name == "New Yard"


def test_a_cohort_is_made_changed_and_never_doubled(client, boss):
    course = CourseFactory()
    given = {"name": "Quay", "mode": "remote", "course": course.pk}
    assert client.post(reverse("cohort-make"), given).status_code == 302
    quay = Cohort.objects.get()
    assert client.post(reverse("cohort-change", args=[quay.pk]), {**given, "mode": "in_person"}).status_code == 302
    quay.refresh_from_db()
    assert quay.mode == "in_person"
    page = client.post(reverse("cohort-make"), {**given, "name": "quay"})
    assert page.status_code == 422
    assert "There is a cohort quay already. Choose another name." in words(page)
    assert Cohort.objects.count() == 1


def test_the_link_of_an_invitation_stands_in_one_answer_and_nowhere_else(client, boss):
    cohort = CohortFactory(name="Quay")
    given = {"role": "trainee", "cohort": cohort.pk, "email": "Nell@test.example"}
    page = client.post(reverse("invitation-make"), given)
    token = re.search(r'value="http://testserver/come-in/([\w-]{32})/"', words(page))[1]
    assert (page.status_code, "no-store" in page["Cache-Control"]) == (200, True)
    assert token not in page.request["PATH_INFO"]
    assert token not in str(client.cookies) + str(dict(client.session)) + str(list(Invitation.objects.values()))
    assert token not in words(client.get(reverse("invitation-list")))
    row = Invitation.objects.get()
    assert (row.email, row.role, row.cohort, row.invited_by) == ("nell@test.example", "trainee", cohort, boss)
    client.logout()
    assert client.get(reverse("invitation-accept", args=[token])).status_code == 200


def test_an_invitation_that_cannot_be_made_says_why_and_makes_none(client, boss):
    page = client.post(reverse("invitation-make"), {"role": "examiner", "email": boss.email})
    assert page.status_code == 422
    assert f"{boss.email} already belongs here" in words(page)
    assert "come-in" not in words(page)
    assert Invitation.objects.count() == 0


def test_the_list_says_who_made_an_invitation_and_drops_it_once_ended(client, boss):
    invitation = InvitationFactory(email="nell@test.example", invited_by=boss)
    page = words(client.get(reverse("invitation-list")))
    assert "nell@test.example" in page
    assert "Made by Mara Boss on" in page
    ended = client.post(reverse("invitation-end", args=[invitation.pk]), follow=True)
    assert "Its link opens nothing any more." in words(ended)
    assert "nell@test.example" not in words(ended)


def test_an_invitation_used_meanwhile_is_not_ended(client, boss, now):
    invitation = InvitationFactory(used_at=now)
    page = client.post(reverse("invitation-end", args=[invitation.pk]), follow=True)
    assert "Somebody came in by this invitation meanwhile." in words(page)
    assert client.get(reverse("invitation-end", args=[invitation.pk])).status_code == 405
    assert client.post(reverse("invitation-end", args=[10**30])).status_code == 404


def test_what_a_verb_refuses_is_said_where_it_belongs():
    class NameForm(forms.Form):
        name = forms.CharField()

    def refuse():
        raise CohortRefused("Taken.")

    right, wrong = NameForm({"name": "a"}), NameForm({})
    assert went_through(right, refuse, "name") is None
    assert right.errors == {"name": ["Taken."]}
    assert went_through(wrong, lambda: "never asked") is None
    assert went_through(NameForm({"name": "a"}), lambda: "made") == "made"


def queries(client, url) -> int:
    client.get(url)
    with CaptureQueriesContext(connection) as asked:
        assert client.get(url).status_code == 200
    return len(asked)


def test_pages_ask_the_database_as_often_however_long_their_lists_are(client, boss):
    counts = []
    for size in (1, 30):
        for number in range(size):
            cohort = MembershipFactory().cohort
            InvitationFactory(token=f"{size}-{number}", cohort=cohort, invited_by=PersonFactory())
        counts.append([queries(client, reverse(name)) for name in PAGES])
    assert counts[0] == counts[1]
    assert max(counts[0]) <= 9
