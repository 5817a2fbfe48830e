"""Which row a person may have."""

import pytest
from django.http import Http404

from assessments import access, journey
from assessments.models import Scenario
from assessments.shipped import scenarios
from courses.models import School

pytestmark = pytest.mark.django_db


def codes(person):
    return [one.code for one in access.scenarios_for(person)]


def test_scenarios_are_open_to_members_alone(trainee, instructor, outsider):
    every = list(dict.fromkeys(one.code for one in scenarios().values()))
    assert [codes(person) for person in (trainee, instructor, outsider)] == [every, every, []]


def test_a_scenario_is_not_offered_where_its_limits_dont_hold(trainee):
    row = Scenario.objects.get(code="COA-01")
    row.text = row.text.replace('jurisdictions = ["us", "uk", "eu"]', 'jurisdictions = ["eu"]')
    row.save()
    assert "COA-01" not in codes(trainee)
    School.objects.update(jurisdiction="eu")
    assert "COA-01" in codes(trainee)


def test_the_newest_open_version_is_offered(trainee, now):
    first = Scenario.objects.get(code="COA-01")
    fields = {"code": "COA-01", "title": "x", "digest": "1", "rule_book": first.rule_book, "published_at": now}
    second = Scenario.objects.create(version=2, text=first.text, **fields)
    assert access.get_scenario_for(trainee, "COA-01") == second
    second.retired_at = now
    second.save()
    assert access.get_scenario_for(trainee, "COA-01") == first


def test_an_unknown_scenario_is_not_found(trainee):
    with pytest.raises(Http404):
        access.get_scenario_for(trainee, "COA-99")


def test_an_attempt_is_found_by_its_owner_alone(trainee, other, now):
    attempt = journey.open_attempt(trainee, Scenario.objects.get(code="COA-01"), "practice", now=now)
    assert access.get_attempt_for(trainee, attempt.pk) == attempt
    with pytest.raises(Http404):
        access.get_attempt_for(other, attempt.pk)


def test_before_setup_there_is_nothing_to_try(trainee):
    School.objects.all().delete()
    assert codes(trainee) == []
