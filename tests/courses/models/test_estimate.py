"""Estimates: whose they are, and whose rates are the school's."""

from datetime import UTC, datetime

import pytest

from courses.models import Estimate
from courses.trade.quote import Quote

pytestmark = pytest.mark.django_db
NOON = datetime(2026, 4, 14, 12, tzinfo=UTC)
EMPTY = Quote("T1", 14.16, (), (), None, ())


def made(person, name="Runabout", **fields):
    given = {"made_at": NOON, "asked": {}, "worked": EMPTY.as_json(), **fields}
    return Estimate.objects.create(person=person, name=name, **given)


def test_an_estimate_is_its_persons_own_and_the_newest_stands_first(trainee, other):
    first, theirs = made(trainee), made(other)
    second = made(trainee, made_at=NOON.replace(hour=13))
    assert list(Estimate.objects.by(trainee)) == [second, first]
    assert list(Estimate.objects.by(other)) == [theirs]
    assert str(first) == "Runabout"


def test_those_closed_last_come_first(trainee):
    made(trainee)
    early, late = (made(trainee, used_at=NOON.replace(hour=hour)) for hour in (14, 15))
    assert list(Estimate.objects.by(trainee).closed()) == [late, early]


def test_the_schools_rates_are_those_of_staff(trainee, instructor):
    made(trainee)
    of_staff = made(instructor)
    assert list(Estimate.objects.of_staff()) == [of_staff]


def test_the_quote_is_read_as_it_was_kept(trainee):
    assert made(trainee).quote == EMPTY
