"""People: who signs in, and how they like to read."""

import pytest
from django.db import IntegrityError, transaction

from courses.models import Person
from courses.trade.units import Preferences

pytestmark = pytest.mark.django_db


def test_an_address_is_kept_in_small_letters_and_found_in_any():
    person = Person.objects.create_user(" Pia@Test.Example", "a long enough one", name="Pia")
    assert person.email == "pia@test.example"
    assert Person.objects.with_email("PIA@test.example").get() == Person.objects.get_by_natural_key("Pia@test.example")


def test_the_database_refuses_capitals_and_a_second_person():
    person = Person.objects.create_user("pia@test.example", None, name="Pia")
    with pytest.raises(IntegrityError), transaction.atomic():
        Person.objects.filter(pk=person.pk).update(email="PIA@test.example")
    with pytest.raises(IntegrityError), transaction.atomic():
        Person.objects.create_user("PIA@test.example", None, name="Pia again")


def test_extra_time_is_bounded():
    with pytest.raises(IntegrityError), transaction.atomic():
        Person.objects.create_user("pia@test.example", None, name="Pia", extra_time_percent=301)


def test_units_are_chosen_quantity_by_quantity():
    person = Person(name="Pia", temperature="degf", film="um", volume="ml", length="ft")
    assert person.preferences == Preferences(temperature="degf", film="um", volume="ml", length="ft")
    assert str(person) == "Pia"
