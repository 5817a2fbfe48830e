"""The plan of a judged attempt as the verdict shows it."""

from uuid import uuid4

import pytest

from assessments import journey
from assessments.journey import BEFORE_AND_AFTER, Given
from assessments.models import Scenario
from assessments.views.planned import planned_of
from courses.models import HungPicture
from courses.trade.units import Preferences

pytestmark = pytest.mark.django_db

METRIC = Preferences.metric()
STEPS = [{"op": "wash"}, {"op": "tape"}, {"op": "refine", "sets": 2}, {"op": "wipe"}, {"op": "finish"}, {"op": "wipe"}]


@pytest.fixture
def practice(trainee, shelves, now):
    scenario = Scenario.objects.get(code="PLN-01", version=1)
    return journey.open_attempt(trainee, scenario, "practice", now=now, seed=4)


def handed_in(attempt, now, steps=STEPS):
    if steps is not None:
        journey.save_answer(attempt, Given("steps", steps, uuid4(), 0), now=now)
    return journey.hand_in(attempt, now=now)


def test_a_plan_is_shown_as_it_was_worked(practice, now):
    planned = planned_of(handed_in(practice, now), METRIC)
    assert planned.worked.look.words == "Pass"
    assert len(planned.worked.sections) == 1
    assert [one.caption for one in planned.frame.all] == ["Before", "After the plan"]
    assert "PLN" not in planned.frame.alt


def test_before_and_after_hang_for_whoever_sat_it_and_only_once_it_is_closed(practice, trainee, now):
    assert not set(BEFORE_AND_AFTER) & set(practice.pictures)
    done = handed_in(practice, now)
    hung = HungPicture.objects.filter(code__in=[done.pictures[name] for name in BEFORE_AND_AFTER])
    assert {(one.purpose, one.owner) for one in hung} == {("paper", trainee)}
    assert [one.scene["removed_um"] > 0 for one in hung.order_by("pk")] == [False, True]


def test_without_a_plan_there_is_none_to_show(practice, now):
    done = handed_in(practice, now, steps=None)
    assert planned_of(done, METRIC) is None
    assert not set(BEFORE_AND_AFTER) & set(done.pictures)


def test_doing_nothing_is_a_plan_too(practice, now):
    planned = planned_of(handed_in(practice, now, steps=[]), METRIC)
    assert planned.worked.look.words == "To be done again"
    assert planned.worked.ladder is None


def test_the_page_of_the_verdict_holds_it(practice, client, trainee, now):
    done = handed_in(practice, now)
    client.force_login(trainee)
    page = client.get(f"/attempts/{done.pk}/verdict/").content.decode()
    assert "What the plan did" in page
    assert page.count("<figure") >= 3


@pytest.mark.parametrize("steps", [STEPS[:2], [*STEPS, *STEPS, *STEPS]], ids=["two steps", "eighteen steps"])
def test_the_pages_ask_as_often_however_long_the_plan(practice, client, trainee, now, django_assert_num_queries, steps):
    journey.save_answer(practice, Given("steps", steps, uuid4(), 0), now=now)
    client.force_login(trainee)
    client.get("/settings/")
    with django_assert_num_queries(12):
        client.get(f"/attempts/{practice.pk}/")
    done = journey.hand_in(practice, now=now)
    with django_assert_num_queries(18):
        client.get(f"/attempts/{done.pk}/verdict/")
