"""The page of a judged attempt: the sentence that decides, the values compared, what is folded."""

import re
from uuid import uuid4

import pytest
from django.urls import reverse

from assessments import journey
from assessments.models import Attempt, Scenario
from assessments.scenarios.draw import answer_key, key_of
from assessments.views.judged import verdict_of
from courses.trade.units import Preferences

pytestmark = pytest.mark.django_db


@pytest.fixture
def judged(trainee, now):
    """Return a function that sits the scenario with the key's answers, changed as told, and gives its verdict page."""

    def sit(seed=3, prefs=None, leave_out=(), code="COA-01", **changes):
        scenario = Scenario.objects.get(code=code)
        Attempt.objects.update(closed_at=now)
        attempt = journey.open_attempt(trainee, scenario, "practice", now=now, seed=seed)
        key = answer_key(scenario.spec, key_of(scenario.spec, journey.facts_of(attempt))).as_json()
        for task, value in {**key, **changes}.items():
            if task not in leave_out:
                journey.save_answer(attempt, journey.Given(task, value, uuid4(), 0), now=now)
        closed = journey.hand_in(attempt, now=now)
        return verdict_of(closed, prefs or Preferences.metric())

    return sit


def test_a_key_meets_every_rule_that_applies(judged):
    page = judged()
    assert (page["outcome"], page["headline"], page["findings"]) == (
        "satisfactory",
        "Every rule that applies is met.",
        [],
    )
    assert len(page["met"]) + len(page["not_applicable"]) == 15


def test_a_critical_rule_decides_before_points(judged):
    page = judged(next_steps=["fuel_heater"])
    assert page["outcome"] == "critical_fail"
    assert page["headline"] == "No fuel heater in the shut shed: not met."
    assert page["explain"].endswith("So points don't count.")
    assert page["findings"][0]["severity"] == "critical"


def test_what_is_held_against_the_film_model_stands_in_micrometres_for_every_reader(judged):
    page = judged(prefs=Preferences.us(), code="PLN-01")
    lines = {line["title"]: dict(line["values"]) for line in [*page["findings"], *page["met"]]}
    films = [text for values in lines.values() for text in values.values() if text.endswith(("µm", "mil"))]
    assert "film taken, model µm" in lines["No more film than the job needs"]
    assert films
    assert all(text.endswith("µm") for text in films)


def test_silence_is_never_called_wrong(judged):
    page = judged(leave_out=("dew_point", "margin", "decision", "next_steps", "why"))
    assert page["outcome"] == "cannot_certify"
    assert page["headline"].endswith(": not answered.")
    assert {line["verdict"] for line in page["findings"]} == {"not_answered"}
    assert page["model"][0]["given"] == ""


def test_a_needed_rule_left_open_is_counted(judged):
    page = judged(margin=30.0)
    assert page["outcome"] == "not_yet_satisfactory"
    assert page["explain"].startswith("One needed rule falls short. ")
    assert "80\u00a0%" in page["explain"]


def test_a_lost_point_leaves_it_satisfactory(judged):
    page = judged(dew_point=30.0)
    assert page["outcome"] == "satisfactory"
    assert re.fullmatch(r"It holds, with \d+ of \d+ points\.", page["headline"])


def test_values_are_shown_in_the_readers_units(judged):
    page = judged(margin=30.0, prefs=Preferences.us())
    values = dict(next(line for line in page["findings"] if line["title"].startswith("Margin"))["values"])
    assert values["you: margin"] == "54.0\u00a0°F"
    assert values["within"] == "0.9\u00a0°F"


def test_picture_and_finding_show_one_number(judged):
    page = judged(margin=30.0)
    values = dict(next(line for line in page["findings"] if line["title"].startswith("Margin"))["values"])
    assert page["gauges"][0]["value_words"] == values["by the facts: margin"]
    assert page["gauges"][0]["limit_words"] == "3.0\u00a0K"


def test_nothing_is_drawn_where_nobody_probed(judged):
    pages = [judged(seed=seed) for seed in range(30)]
    assert {len(page["gauges"]) for page in pages} == {0, 1}


def test_a_lesson_not_yet_taught_is_named_not_linked(judged):
    page = judged(next_steps=["start_by_forecast_alone"])
    lessons = {line["lesson"]["title"]: line["lesson"]["url"] for line in page["findings"]}
    assert lessons["The day, the evening, the bay"] == ""
    assert lessons["Air, surface and the three-degree rule"] == "/lessons/dew-point/"


def test_every_finding_says_where_it_comes_from(judged):
    page = judged(next_steps=["fuel_heater"])
    assert all(line["source"].title for line in page["findings"] + page["met"])


def test_a_rule_that_failed_to_judge_says_so(judged, client, trainee):
    judged()
    attempt = Attempt.objects.judged().first()
    attempt.findings.filter(code="R21").update(verdict="not_answered", failed="The rule could not be worked out.")
    Attempt.objects.filter(pk=attempt.pk).update(outcome="cannot_certify")
    client.force_login(trainee)
    page = client.get(reverse("attempt-verdict", args=[attempt.pk])).content.decode()
    assert "The rule could not be worked out." in page
