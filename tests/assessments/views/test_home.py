"""Today: the one next act."""

from datetime import timedelta

import pytest
from django.urls import reverse
from django.utils import timezone

from assessments import journey
from assessments.models import Attempt, Evidence, Scenario
from assessments.views.home import next_act
from courses.actions import mark_read
from courses.models import Lesson

pytestmark = pytest.mark.django_db


def act(person):
    found = next_act(person, list(Attempt.objects.by(person).listed()))
    return (found.act, found.url) if found else None


def read_all(person, now):
    """Read every lesson that is taught, at a school that has one scenario open."""
    Scenario.objects.exclude(code="COA-01").update(retired_at=now)
    for lesson in Lesson.objects.taught():
        mark_read(person, lesson, now)


def test_a_beginner_reads_the_first_lesson(trainee):
    assert act(trainee) == ("Read it", "/lessons/three-lights/")


def test_a_running_paper_comes_before_everything(trainee):
    scenario, now = Scenario.objects.get(code="COA-01"), timezone.now()
    journey.open_attempt(trainee, scenario, "practice", now=now)
    paper = journey.open_attempt(trainee, scenario, "paper", now=now)
    assert act(trainee) == ("Carry on", reverse("attempt-detail", args=[paper.pk]))


def test_after_the_lessons_comes_a_scenario_not_yet_tried(trainee, now):
    read_all(trainee, now)
    assert act(trainee) == ("Try it", "/scenarios/COA-01/")


def test_what_did_not_hold_is_tried_again(trainee, now):
    read_all(trainee, now)
    journey.hand_in(journey.open_attempt(trainee, Scenario.objects.get(code="COA-01"), "practice", now=now), now=now)
    assert act(trainee) == ("Try again", "/scenarios/COA-01/")


def test_when_all_holds_nothing_waits(sit, trainee, now):
    read_all(trainee, now)
    sit(trainee, mode="practice")
    assert act(trainee) is None


def test_what_was_judged_again_counts_as_it_came_out_last(sit_wide, trainee, second_book, now):
    read_all(trainee, now)
    sit_wide(trainee)
    assert act(trainee) == ("Try again", "/scenarios/COA-01/")
    journey.judge_again(Evidence.objects.get(), second_book, reason="The margin was too tight.", now=now)
    assert act(trainee) is None


def test_whoever_belongs_to_no_cohort_is_told_so_kindly(client, outsider):
    client.force_login(outsider)
    page = client.get(reverse("home"))
    assert (page.status_code, page.context["next"]) == (200, None)


def test_home_asks_who_you_are(client, school):
    assert client.get(reverse("home")).url == "/account/login/?next=/"


def test_a_paper_past_its_time_is_closed_by_looking_at_home(client, trainee):
    opened = timezone.now() - timedelta(hours=1)
    paper = journey.open_attempt(trainee, Scenario.objects.get(code="COA-01"), "paper", now=opened)
    client.force_login(trainee)
    client.get(reverse("home"))
    paper.refresh_from_db()
    assert paper.closed_at == paper.deadline
