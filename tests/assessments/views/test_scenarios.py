"""The scenarios there are, and one before it is tried."""

import pytest
from django.urls import reverse
from django.utils import timezone

from assessments import journey
from assessments.models import Scenario

pytestmark = pytest.mark.django_db
PAGES = [("scenario-list", []), ("scenario-detail", ["COA-01"])]


@pytest.mark.parametrize(("name", "args"), PAGES)
def test_members_see_the_scenarios(client, trainee, name, args):
    client.force_login(trainee)
    page = client.get(reverse(name, args=args))
    assert page.status_code == 200
    assert "Two thermometers" in page.content.decode()


@pytest.mark.parametrize(("name", "args"), PAGES)
def test_scenarios_ask_who_you_are(client, shelves, name, args):
    assert client.get(reverse(name, args=args)).status_code == 302


def test_a_stranger_finds_no_scenario(client, shelves, outsider):
    client.force_login(outsider)
    assert client.get(reverse("scenario-detail", args=["COA-01"])).status_code == 404
    assert "Two thermometers" not in client.get(reverse("scenario-list")).content.decode()


def test_minutes_are_the_persons_own(client, trainee):
    trainee.extra_time_percent = 25
    trainee.save()
    client.force_login(trainee)
    scenario = client.get(reverse("scenario-detail", args=["COA-01"])).context["scenario"]
    named = {key: scenario[key] for key in ("paper_minutes", "extra_minutes", "allowed_minutes", "tasks")}
    assert named == {"paper_minutes": 12, "extra_minutes": 3, "allowed_minutes": 15, "tasks": 5}


def test_an_open_attempt_is_carried_on_or_put_away(client, trainee):
    client.force_login(trainee)
    now = timezone.now()
    practice = journey.open_attempt(trainee, Scenario.objects.get(code="COA-01"), "practice", now=now)
    paper = journey.open_attempt(trainee, Scenario.objects.get(code="COA-01"), "paper", now=now)
    page = client.get(reverse("scenario-detail", args=["COA-01"])).context
    assert page["open_practice"]["put_away_url"] == reverse("attempt-put-away", args=[practice.pk])
    assert page["open_paper"] == {"url": f"/attempts/{paper.pk}/", "number": 1, "put_away_url": ""}


def test_lessons_it_rests_on_are_linked_where_they_are_taught(client, trainee):
    client.force_login(trainee)
    lessons = client.get(reverse("scenario-detail", args=["COA-01"])).context["lessons"]
    assert [bool(one["url"]) for one in lessons] == [True, True, False]


def test_the_list_shows_how_the_last_one_came_out(client, trainee, now):
    client.force_login(trainee)
    journey.hand_in(journey.open_attempt(trainee, Scenario.objects.get(code="COA-01"), "practice", now=now), now=now)
    lines = client.get(reverse("scenario-list")).context["scenarios"]
    (line,) = [one for one in lines if one["url"] == reverse("scenario-detail", args=["COA-01"])]
    assert (line["open"], line["last"]["outcome"]) == (False, "cannot_certify")
