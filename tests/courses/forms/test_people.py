"""Forms about a person."""

import pytest

from courses.forms.people import ComeInForm, SettingsForm
from tests.factories import InvitationFactory, PersonFactory

pytestmark = pytest.mark.django_db
GIVEN = {"email": "nell@test.example", "name": "Nell", "password": "a long enough one", "units": "metric"}


def test_an_invited_address_cannot_be_changed():
    form = ComeInForm(InvitationFactory(email="meant@test.example"), {**GIVEN, "email": "thief@test.example"})
    assert form.is_valid()
    assert form.cleaned_data["email"] == "meant@test.example"


def test_a_password_may_hold_any_sign_and_keeps_its_spaces():
    form = ComeInForm(InvitationFactory(), {**GIVEN, "password": "  döck — 海 rail  "})
    assert form.is_valid()
    assert form.cleaned_data["password"] == "  döck — 海 rail  "


@pytest.mark.parametrize("password", ["eleven char", "nell nell nell@test", "x" * 129])
def test_a_password_that_is_short_like_oneself_or_endless_is_refused(password):
    form = ComeInForm(InvitationFactory(), {**GIVEN, "email": "nell.nell.nell@test.example", "password": password})
    assert "password" in form.errors


def test_settings_change_nothing_but_how_a_person_reads():
    person = PersonFactory(name="Pia")
    form = SettingsForm(
        {
            "name": "Pia P",
            "temperature": "degc",
            "film": "mil",
            "volume": "ml",
            "length": "m",
            "language": "en-us",
            "zone": "",
        },
        instance=person,
    )
    assert form.is_valid()
    assert form.chosen() == {
        "name": "Pia P",
        "temperature": "degc",
        "film": "mil",
        "volume": "ml",
        "length": "m",
        "language": "en-us",
        "zone": "",
    }


def test_zones_are_towns_that_a_person_may_live_in():
    zones = dict(SettingsForm(instance=PersonFactory()).fields["zone"].choices)
    assert zones["America/New_York"] == "America/New York"
    assert not any(zone.startswith(("Etc/", "SystemV/")) for zone in zones)
