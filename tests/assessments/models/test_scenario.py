"""Scenarios and rule books as rows."""

import pytest

from assessments import shipped
from assessments.models import Scenario

pytestmark = pytest.mark.django_db


def test_a_row_gives_back_the_scenario_that_was_published(shelves):
    row = Scenario.objects.get(code="COA-01")
    assert row.spec == shipped.scenario("COA-01@1")
    assert (str(row), str(row.rule_book)) == ("COA-01@1", "COA-01@1")


def test_what_marks_a_version_is_made_ready_once(shelves):
    row = Scenario.objects.get(code="COA-01")
    assert row.marker(row.rule_book) is row.marker(row.rule_book)
    assert row.marker(row.rule_book).scenario == row.spec


def test_a_retired_version_takes_no_new_attempts(shelves, now):
    Scenario.objects.update(retired_at=now)
    assert (Scenario.objects.published().count(), Scenario.objects.newest().count()) == (0, 0)
