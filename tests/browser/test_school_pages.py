"""The manager's pages in three lightings, on a desk, on a phone and on a narrow phone."""

import pytest

from courses.models import Person
from tests.browser.stage import Stage, at, look, press
from tests.factories import InvitationFactory, MembershipFactory, PersonFactory

pytestmark = [pytest.mark.browser, pytest.mark.looks, pytest.mark.django_db(transaction=True)]


@pytest.fixture
def office(open_page, site, sign_in, trainee):
    """A manager who also teaches, with a trainee and an open invitation in the school."""
    manager = PersonFactory(email="manager@test.example", name="Maud Manager")
    for role in ("manager", "instructor"):
        MembershipFactory(person=manager, role=role, cohort=None)
    InvitationFactory(cohort=trainee.memberships.get().cohort, invited_by=manager)
    return Stage(sign_in(open_page(), manager), site, manager)


def of_trainee(name: str, *, with_role: bool = False):
    """Return how a page about the trainee is reached."""

    def reach(stage: Stage) -> None:
        person = Person.objects.get(email="trainee@test.example")
        stage.go(name, person.handle, *([person.memberships.get().pk] if with_role else []))

    return reach


def of_cohort(stage: Stage) -> None:
    """Change the trainee's cohort."""
    stage.go("cohort-change", Person.objects.get(email="trainee@test.example").memberships.get().cohort_id)


def give_wrongly(stage: Stage) -> None:
    """Give the role of a trainee without a cohort."""
    of_trainee("role-give")(stage)
    stage.page.select_option("[name=role]", "trainee")
    press(stage.page, "main form .btn-primary")


def invite(stage: Stage) -> None:
    """Make an invitation and read its link."""
    stage.go("invitation-make")
    stage.page.select_option("[name=role]", "examiner")
    press(stage.page, "main form .btn-primary")


PAGES = {
    "school": at("school-detail"),
    "people": at("person-list"),
    "people, none found": at("person-list", query="?q=nobody"),
    "person": of_trainee("person-detail"),
    "give a role": of_trainee("role-give"),
    "give a role, refused": give_wrongly,
    "change a role": of_trainee("role-change", with_role=True),
    "end a role": of_trainee("role-end", with_role=True),
    "erase a person": of_trainee("person-erase"),
    "cohorts": at("school-cohorts"),
    "make a cohort": at("cohort-make"),
    "change a cohort": of_cohort,
    "invitations": at("invitation-list"),
    "invite": at("invitation-make"),
    "invited": invite,
}


@pytest.mark.parametrize("name", PAGES)
def test_a_page_of_a_manager(screens, office, name):
    screens.allow("status of 422")
    assert look(office, PAGES[name]) == []
