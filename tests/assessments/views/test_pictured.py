"""The pictures of an attempt on its pages."""

from uuid import uuid4

import pytest
from django.urls import reverse

from assessments import journey
from assessments.journey import Given
from assessments.models import Scenario
from assessments.scenarios.draw import key_of
from assessments.views.pictured import pinned_to, seen_in, truth_of

pytestmark = pytest.mark.django_db


def sat(code, person, now):
    scenario = Scenario.objects.newest().get(code=code)
    return journey.open_attempt(person, scenario, "practice", now=now, seed=11)


def give(attempt, task, value, now):
    journey.save_answer(attempt, Given(task, value, uuid4(), 0), now=now)


def names(attempt):
    return {one.name for some in pinned_to(attempt, attempt.answers.newest()).values() for one in some}


def test_a_picture_waits_for_the_reading_that_shows_it(trainee, now):
    attempt = sat("INS-06", trainee, now)
    waiting = {one.name: one.after for one in attempt.scenario.spec.pictures if one.after}
    assert waiting
    assert names(attempt).isdisjoint(waiting)
    give(attempt, "asked", list(dict.fromkeys(waiting.values())), now)
    assert names(attempt) == {one.name for one in attempt.scenario.spec.pictures}


def test_addresses_and_words_tell_nothing(client, trainee, now):
    attempt = sat("INS-04", trainee, now)
    client.force_login(trainee)
    page = client.get(reverse("attempt-detail", args=[attempt.pk])).content.decode().lower()
    for word in (str(attempt.facts["pattern"]), "crack_", str(attempt.facts["seed"]), "severity"):
        assert word not in page
    assert all(code.lower() in page for code in attempt.pictures.values())


def test_read_in_words_the_page_notes_what_is_seen(client, trainee, now):
    attempt = sat("INS-04", trainee, now)
    client.force_login(trainee)
    assert client.post(reverse("attempt-describe", args=[attempt.pk])).status_code == 302
    attempt.refresh_from_db()
    (pinned,) = pinned_to(attempt, {})["zones"]
    assert len(pinned.observations) > 1
    assert "The same picture in words" in client.get(reverse("attempt-detail", args=[attempt.pk])).content.decode()


def test_the_truth_says_what_was_found_missed_and_marked_in_vain(client, trainee, now):
    attempt = sat("INS-04", trainee, now)
    key = key_of(attempt.scenario.spec, journey.facts_of(attempt))
    first, *rest = key["required"]
    vain = next(cell for cell in ("A1", "D6", "A6", "D1") if cell not in key["allowed"])
    give(attempt, "zones", [{"cells": [first, vain], "verdict": "refer"}], now)
    attempt = journey.hand_in(attempt, now=now)
    truth = truth_of(attempt)
    assert (truth.found, truth.missed, truth.sound) == ([first], rest, [vain])
    client.force_login(trainee)
    assert "What is there" in client.get(reverse("attempt-verdict", args=[attempt.pk])).content.decode()


def test_without_cells_there_is_no_truth_but_the_pictures_stay(trainee, now):
    attempt = journey.hand_in(sat("INS-01", trainee, now), now=now)
    assert truth_of(attempt) is None
    assert {one.name for one in seen_in(attempt)} == attempt.pictures.keys()


@pytest.mark.parametrize("code", ["INS-04", "COA-01"])
def test_a_page_with_pictures_asks_as_often_as_without_answers(
    client, trainee, now, django_assert_max_num_queries, code
):
    attempt = sat(code, trainee, now)
    client.force_login(trainee)
    url = reverse("attempt-detail", args=[attempt.pk])
    client.get(url)
    with django_assert_max_num_queries(14) as few:
        client.get(url)
    for task, value in (("asked", ["press"]), ("steps", [{"op": "tell"}])):
        if attempt.scenario.spec.task(task):
            give(attempt, task, value, now)
    with django_assert_max_num_queries(14) as more:
        client.get(url)
    assert len(few) == len(more)
