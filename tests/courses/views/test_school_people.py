"""The manager's pages about people and the roles they hold."""

from uuid import uuid4

import pytest
from django.db import connection
from django.test import Client
from django.test.utils import CaptureQueriesContext
from django.urls import reverse

from courses.actions import change_role, end_role, erase_person
from courses.forms.school import PersonFindForm
from courses.models import Membership, Person
from courses.views.school_people import people_found
from tests.factories import CohortFactory, MembershipFactory, PersonFactory

pytestmark = pytest.mark.django_db
NAMES = (
    "person-list",
    "person-detail",
    "role-give",
    "role-change",
    "role-end",
    "person-deactivate",
    "person-activate",
    "person-erase",
)
ASKED = NAMES[:5] + NAMES[7:]
"""Pages that are looked at, not only posted to."""


@pytest.fixture
def boss(client, school):
    person = MembershipFactory(role="manager", cohort=None, person=PersonFactory(name="Mara Boss")).person
    client.force_login(person)
    return person


@pytest.fixture
def held(school):
    person = PersonFactory(name="Ivo Instructor", email="ivo@test.example")
    return MembershipFactory(role="instructor", person=person, teaches=["INS"], may_sign=["COA2"])


def address(name, membership):
    handle = membership.person.handle
    if name == "person-list":
        return reverse(name)
    return reverse(name, args=[handle, membership.pk] if name in ("role-change", "role-end") else [handle])


def rows():
    return list(Person.objects.values().order_by("pk")), list(Membership.objects.values().order_by("pk"))


def words(page) -> str:
    return page.content.decode()


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("role", ["trainee", "instructor", "examiner", None])
def test_who_does_not_manage_finds_nothing_and_changes_nothing(client, held, name, role):
    client.force_login(MembershipFactory(role=role).person if role else PersonFactory())
    client.get("/nothing/")
    before, url = rows(), address(name, held)
    given = {"name": "Stolen", "email": "a@test.example", "extra_time_percent": "300", "role": "manager"}
    assert client.post(url, given).status_code == 404
    assert name not in ASKED or client.get(url).status_code == 404
    assert rows() == before


@pytest.mark.parametrize("name", NAMES)
def test_a_stranger_is_led_to_sign_in(client, held, name):
    page = client.post(address(name, held))
    assert (page.status_code, page.url.split("?")[0]) == (302, reverse("account_login"))


@pytest.mark.parametrize("name", ASKED)
def test_a_manager_sees_each_page_with_one_next_act_at_most(client, boss, held, name):
    page = client.get(address(name, held))
    assert page.status_code == 200
    assert words(page).count("btn-primary") <= 1


@pytest.mark.parametrize("name", NAMES[1:])
def test_a_person_who_is_not_here_is_404(client, boss, held, name):
    url = address(name, held).replace(str(held.person.handle), str(uuid4()))
    assert client.post(url).status_code == 404


def test_people_are_found_by_name_address_cohort_and_role(boss, held):
    for given in ({"q": "ivo inst"}, {"q": "IVO@"}, {"cohort": held.cohort_id}, {"role": "instructor"}):
        assert list(people_found(PersonFindForm(given))) == [held.person]
    assert list(people_found(PersonFindForm({"q": "ivo", "role": "manager"}))) == []
    assert list(people_found(PersonFindForm({"cohort": "abc"}))) == [held.person, boss]


def test_what_cannot_be_looked_for_is_said_and_the_list_stays(client, boss, held):
    page = client.get(reverse("person-list"), {"cohort": "abc", "page": "x"})
    assert page.status_code == 422
    assert "There is no such cohort. Choose one of the list." in words(page)
    assert "Ivo Instructor" in words(page)


def test_fifty_people_stand_on_a_page(client, boss):
    for number in range(60):
        PersonFactory(name=f"Anna {number:02}")
    first, last = (words(client.get(reverse("person-list"), {"q": "anna", "page": page})) for page in (1, 99))
    assert [first.count("@test.example"), last.count("@test.example")] == [50, 10]
    assert "?q=anna&amp;page=2" in first


def test_a_person_is_kept_and_an_address_of_another_is_not(client, boss, held):
    url = address("person-detail", held)
    given = {"name": "Ivo New", "email": "new@test.example", "extra_time_percent": "25"}
    assert client.post(url, given).status_code == 302
    held.person.refresh_from_db()
    assert (held.person.name, held.person.email, held.person.extra_time_percent) == ("Ivo New", "new@test.example", 25)
    page = client.post(url, {**given, "name": "Ivo Other", "email": boss.email})
    assert page.status_code == 422
    assert f"{boss.email} belongs to somebody else here." in words(page)
    assert "<h1>Ivo New</h1>" in words(page)


def test_a_role_is_given_with_its_codes(client, boss, held):
    given = {"role": "examiner", "may_sign": ["INS", "COA2"]}
    assert client.post(address("role-give", held), given).status_code == 302
    role = held.person.memberships.get(role="examiner")
    assert (role.cohort, role.teaches, role.may_sign) == (None, [], ["INS", "COA2"])


def test_a_trainee_is_not_given_anything_to_sign(client, boss, held):
    page = client.post(address("role-give", held), {"role": "trainee", "cohort": held.cohort_id, "may_sign": ["COA2"]})
    assert page.status_code == 422
    assert "A trainee teaches nothing and signs nothing." in words(page)
    assert held.person.memberships.count() == 1


def test_a_role_is_changed_as_it_was_shown(client, boss, held):
    url, cohort = address("role-change", held), CohortFactory()
    shown = client.get(url).context["form"]["seen"].value()
    given = {"seen": shown, "cohort": cohort.pk, "teaches": ["WAD"], "may_sign": []}
    assert client.post(url, given).status_code == 302
    held.refresh_from_db()
    assert (held.cohort, held.teaches, held.may_sign) == (cohort, ["WAD"], [])


def test_what_another_manager_changed_meanwhile_is_not_written_over(client, boss, held, now):
    url = address("role-change", held)
    shown = client.get(url).context["form"]["seen"].value()
    change_role(held, cohort=held.cohort, teaches=[], may_sign=[], by=None, now=now)
    page = client.post(url, {"seen": shown, "may_sign": ["COA2"]})
    assert page.status_code == 422
    assert "Somebody changed this role meanwhile." in words(page)
    assert Membership.objects.get(pk=held.pk).may_sign == []


def test_a_role_that_another_manager_ended_meanwhile_is_gone(client, boss, held, now):
    urls = [address(name, held) for name in ("role-change", "role-end")]
    end_role(held, by=None, now=now)
    assert [client.post(url).status_code for url in urls] == [404, 404]


def test_a_person_whom_another_manager_erased_meanwhile_is_not_written_to(client, boss, held, now):
    erase_person(held.person, by=None, now=now)
    page = client.post(address("role-give", held), {"role": "examiner"})
    assert page.status_code == 422
    assert "This person was erased." in words(page)
    page = words(client.get(address("person-detail", held)))
    assert "gone for good" in page
    assert "<form" not in page.partition("<main")[2].partition("</main")[0]


def test_a_role_ends_after_it_was_asked(client, boss, held):
    assert "End it" in words(client.get(address("role-end", held)))
    assert held.person.memberships.count() == 1
    assert "The role is ended." in words(client.post(address("role-end", held), follow=True))
    assert held.person.memberships.count() == 0


def test_a_manager_stays_a_manager_who_can_sign_in(client, boss):
    mine = boss.memberships.get()
    said = [words(client.post(address(name, mine), follow=True)) for name in ("role-end", *NAMES[5::2])]
    assert "Another manager has to end it." in said[0]
    assert all("You can’t shut yourself out." in one for one in said[1:])
    boss.refresh_from_db()
    assert (boss.name, boss.is_active, boss.memberships.count()) == ("Mara Boss", True, 1)
    assert "What erasing takes" not in words(client.get(address("person-detail", mine)))


def test_who_is_shut_out_is_signed_out_at_once_and_let_in_again(client, boss, held):
    theirs = Client()
    theirs.force_login(held.person)
    assert theirs.get(reverse("settings")).status_code == 200
    client.post(address("person-deactivate", held))
    assert theirs.get(reverse("settings")).status_code == 302
    client.post(address("person-activate", held))
    theirs.force_login(held.person)
    assert theirs.get(reverse("settings")).status_code == 200


def test_an_erased_person_is_found_by_their_new_name_alone(client, boss, held):
    page = client.get(address("person-erase", held))
    assert ("What goes" in words(page), "What stays" in words(page)) == (True, True)
    assert client.post(address("person-erase", held)).status_code == 302
    assert "Erased person" not in words(client.get(reverse("person-list")))
    assert "Erased person" in words(client.get(reverse("person-list"), {"q": "erased"}))
    assert "Ivo" not in words(client.get(reverse("person-list"), {"q": "erased"}))


def test_pages_ask_the_database_as_often_however_many_belong_here(client, boss, held):
    counts = []
    for size in (1, 40):
        for _number in range(size):
            MembershipFactory(person=MembershipFactory(role="examiner").person)
            MembershipFactory(person=held.person)
        counts.append([asked(client, address(name, held)) for name in ASKED])
    assert counts[0] == counts[1]
    assert max(counts[0]) <= 11


def asked(client, url) -> int:
    client.get(url)
    with CaptureQueriesContext(connection) as queries:
        assert client.get(url).status_code == 200
    return len(queries)
