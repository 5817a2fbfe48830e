"""A hung picture: for everybody, or for one person and whoever answers for them."""

import pytest
from django.db import IntegrityError

from courses.models import HungPicture
from courses.models.picture import Purpose
from tests.factories import PersonFactory

pytestmark = pytest.mark.django_db


def hung(code="a", purpose=Purpose.LESSON, owner=None):
    """Hang a picture without looking at its scene."""
    return HungPicture.objects.create(
        code=code, scene={}, light="point", lamps=[[0.5, 0.42]], renderer=1, purpose=purpose, owner=owner
    )


def test_a_picture_of_a_lesson_is_for_everybody(trainee, outsider):
    row = hung()
    assert all(row.is_for(person) for person in (trainee, outsider))


def test_a_picture_of_an_attempt_is_for_its_owner_and_for_staff(trainee, other, instructor, outsider):
    row = hung(purpose=Purpose.PAPER, owner=trainee)
    assert [row.is_for(person) for person in (trainee, instructor, other, outsider)] == [True, True, False, False]


def test_a_picture_hangs_once_under_its_code(school):
    hung()
    with pytest.raises(IntegrityError):
        hung()


@pytest.mark.parametrize(("purpose", "owned"), [(Purpose.PAPER, False), (Purpose.LESSON, True)])
def test_only_a_picture_of_an_attempt_has_an_owner_and_it_always_has_one(school, purpose, owned):
    with pytest.raises(IntegrityError):
        hung(purpose=purpose, owner=PersonFactory() if owned else None)


def test_a_picture_is_called_by_its_code(school):
    assert str(hung("k3y")) == "k3y"
