"""Forms of those who manage the school."""

import pytest

from courses.forms.school import (
    CohortForm,
    InvitationForm,
    PersonFindForm,
    PersonForm,
    RoleChangeForm,
    RoleForm,
    SchoolForm,
)
from tests.factories import CohortFactory, CourseFactory, MembershipFactory, PersonFactory, SchoolFactory

pytestmark = pytest.mark.django_db


def seen(membership):
    return {"seen": RoleChangeForm(membership)["seen"].value()}


def test_a_school_keeps_a_clock_that_people_live_by():
    given = {"name": "Yard", "zone": "America/New_York", "jurisdiction": "eu", "independence": "on"}
    form = SchoolForm(given, instance=SchoolFactory())
    assert form.is_valid()
    assert form.cleaned_data == {**given, "place": "", "about": "", "metric": False, "independence": True}
    form = SchoolForm({**given, "zone": "Mars/Base"}, instance=SchoolFactory())
    assert form.errors == {"zone": ["There is no such time zone. Choose one of the list."]}


@pytest.mark.parametrize("percent", ["", "-1", "301", "99999", "half"])
def test_extra_time_is_a_whole_number_from_0_to_300(percent):
    form = PersonForm({"name": "N", "email": "n@test.example", "extra_time_percent": percent})
    assert form.errors == {"extra_time_percent": ["Enter a whole number from 0 to 300, 0 for none."]}


def test_a_person_keeps_an_address_in_small_letters():
    form = PersonForm({"name": "N", "email": "N@Test.Example", "extra_time_percent": "300"})
    assert form.is_valid()
    assert form.cleaned_data == {"name": "N", "email": "n@test.example", "extra_time_percent": 300}


def test_what_cannot_be_looked_for_is_named_at_its_field():
    form = PersonFindForm({"q": "a", "cohort": "abc", "role": "king"})
    assert set(form.errors) == {"cohort", "role"}


def test_a_role_shows_what_it_holds_unit_by_unit():
    held = MembershipFactory(role="instructor", teaches=["INS"], may_sign=["INS2", "COA2"])
    ticked = [(unit.unit.code, unit.taught, unit.signed) for unit in RoleChangeForm(held).units]
    assert len(ticked) == 7
    assert [line for line in ticked if line[1] or line[2]] == [("INS", "INS", "INS2"), ("COA", "", "COA2")]


def test_a_role_is_changed_to_codes_that_there_are():
    held = MembershipFactory(role="instructor")
    form = RoleChangeForm(held, {**seen(held), "teaches": ["INS"], "may_sign": ["COA2"]})
    assert form.is_valid()
    assert form.chosen() == {"cohort": None, "teaches": ["INS"], "may_sign": ["COA2"]}
    form = RoleChangeForm(held, {**seen(held), "may_sign": ["XYZ9"]})
    assert form.errors == {"may_sign": ["There is no unit or element XYZ9. Take it out."]}


def test_a_role_shown_before_another_changed_it_is_refused():
    held = MembershipFactory(role="instructor", may_sign=["COA"])
    stale = seen(held)
    held.may_sign = []
    for given in (stale, {"seen": "forged"}, {}):
        form = RoleChangeForm(held, {**given, "may_sign": ["COA"]})
        assert "changed this role meanwhile" in form.errors["__all__"][0]


def test_a_trainee_is_not_moved_out_of_every_cohort():
    held = MembershipFactory()
    assert "cohort" in RoleChangeForm(held, seen(held)).errors


def test_a_role_is_given_once():
    held = MembershipFactory()
    form = RoleForm(held.person, {"role": "trainee", "cohort": held.cohort_id})
    assert form.errors == {"role": ["They hold this role there already. Change that one."]}
    assert RoleForm(held.person, {"role": "trainee", "cohort": CohortFactory().pk}).is_valid()


@pytest.mark.parametrize(
    ("given", "field", "sentence"),
    [
        ({}, "role", "Choose a role."),
        ({"role": "king"}, "role", "There is no such role. Choose one of the list."),
        ({"role": "trainee"}, "cohort", "A trainee learns in a cohort. Choose one."),
        ({"role": "manager", "cohort": "9"}, "cohort", "There is no such cohort. Choose one of the list."),
    ],
)
def test_a_role_and_an_invitation_say_what_is_missing_at_its_field(given, field, sentence):
    assert RoleForm(PersonFactory(), given).errors == {field: [sentence]}
    assert InvitationForm(given).errors == {field: [sentence]}


def test_an_invitation_to_no_address_is_for_whoever_has_the_link():
    assert InvitationForm({"role": "examiner"}).is_valid()
    assert InvitationForm({"role": "examiner", "email": "nowhere"}).errors == {
        "email": ["This is no address. Write it like name@example.org."]
    }


def test_a_cohort_has_a_name_a_mode_and_a_course():
    form = CohortForm({"name": "Quay", "mode": "remote", "course": CourseFactory().pk})
    assert form.is_valid()
    assert CohortForm({"mode": "orbit", "course": "0"}).errors == {
        "name": ["Enter a name."],
        "mode": ["Choose one of the list."],
        "course": ["Choose one of the list."],
    }
