"""What `setup` puts on the shelves."""

import pytest

from assessments.management import shelves
from assessments.models import RuleBook, Scenario
from courses.models import Course, Lesson, Placement

pytestmark = pytest.mark.django_db


def test_filling_the_shelves_twice_leaves_the_same_rows(now):
    counts = []
    for _time in range(2):
        shelves.load(now)
        counts.append([model.objects.count() for model in (Course, Lesson, Placement, Scenario, RuleBook)])
    assert counts[0] == counts[1] == [2, 33, 66, 1, 1]


def test_what_is_shipped_reads_whole():
    assert shelves.refuse_broken() is None
