"""The verdict of every shipped scenario stands, however much was answered."""

from uuid import uuid4

import pytest
from django.urls import reverse

from assessments import journey, shipped
from assessments.models import Scenario
from assessments.scenarios.draw import answer_key, key_of

pytestmark = pytest.mark.django_db


@pytest.mark.parametrize("share", [1.0, 0.5, 0.0], ids=["the key", "half of it", "nothing"])
@pytest.mark.parametrize("code", sorted({one.code for one in shipped.scenarios().values()}))
def test_a_verdict_stands_however_much_was_answered(client, trainee, now, code, share):
    scenario = Scenario.objects.newest().get(code=code)
    attempt = journey.open_attempt(trainee, scenario, "practice", now=now, seed=5)
    key = answer_key(scenario.spec, key_of(scenario.spec, journey.facts_of(attempt))).as_json()
    for task, value in list(key.items())[: round(share * len(key))]:
        journey.save_answer(attempt, journey.Given(task, value, uuid4(), 0), now=now)
    done = journey.hand_in(attempt, now=now)
    client.force_login(trainee)
    page = client.get(reverse("attempt-verdict", args=[done.pk]))
    assert page.status_code == 200
    assert page.context["outcome"] == ("satisfactory" if share == 1 else done.outcome)
