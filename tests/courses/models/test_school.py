"""One installation is one school."""

import pytest
from django.db import IntegrityError, transaction

from courses.models import School

pytestmark = pytest.mark.django_db


def test_there_is_one_school_at_most():
    assert School.objects.here() is None
    school = School.objects.create(name="Our school")
    assert (School.objects.here(), str(school)) == (school, "Our school")
    with pytest.raises(IntegrityError), transaction.atomic():
        School.objects.create(pk=2, name="Another")
