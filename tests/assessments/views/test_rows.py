"""Attempts as lists show them."""

import pytest

from assessments import journey
from assessments.models import Attempt, Scenario
from assessments.views.rows import rows

pytestmark = pytest.mark.django_db


def test_an_open_attempt_leads_to_its_page_and_a_judged_one_to_its_verdict(trainee, now):
    attempt = journey.open_attempt(trainee, Scenario.objects.get(code="COA-01"), "practice", now=now)
    (before,) = rows(Attempt.objects.listed())
    journey.hand_in(attempt, now=now)
    (after,) = rows(Attempt.objects.listed())
    assert (before.url, before.outcome, before.when) == (f"/attempts/{attempt.pk}/", "", now)
    assert (after.url, after.outcome) == (f"/attempts/{attempt.pk}/verdict/", "cannot_certify")
    assert (after.title, after.mode, after.number) == ("Two thermometers", "practice", 1)
