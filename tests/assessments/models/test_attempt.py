"""Sentences about attempts and answers."""

from datetime import timedelta
from uuid import uuid4

import pytest
from django.db import IntegrityError, transaction

from assessments import journey
from assessments.models import Attempt, Scenario

pytestmark = pytest.mark.django_db


@pytest.fixture
def attempt(trainee, now):
    return journey.open_attempt(trainee, Scenario.objects.get(code="COA-01"), "paper", now=now)


def test_querysets_complete_a_sentence(attempt, trainee, other, now):
    mine = Attempt.objects.by(trainee).on("COA-01")
    assert [list(mine.open()), list(mine.judged()), list(mine.kept())] == [[attempt], [], [attempt]]
    assert not Attempt.objects.by(other).exists()
    journey.hand_in(attempt, now=now)
    assert [list(mine.open()), list(mine.judged()), list(mine.kept())] == [[], [attempt], [attempt]]


def test_a_paper_is_due_once_its_grace_is_over(attempt):
    edge = attempt.deadline + timedelta(seconds=30)
    late = edge + timedelta(microseconds=1)
    assert [attempt.is_due(edge), attempt.is_due(late)] == [False, True]
    assert [Attempt.objects.due(moment).count() for moment in (edge, late)] == [0, 1]


def test_what_came_out_is_closed(attempt):
    attempt.outcome = "satisfactory"
    with pytest.raises(IntegrityError), transaction.atomic():
        attempt.save()


def test_the_newest_answer_of_each_task_counts(attempt, now):
    for value, seen in ((1.0, 0), (2.0, 1)):
        journey.save_answer(attempt, journey.Given("dew_point", value, uuid4(), seen), now=now)
    crossed = journey.save_answer(attempt, journey.Given("dew_point", 3.0, uuid4(), 0), now=now)
    assert {task: one.value for task, one in attempt.answers.newest().items()} == {"dew_point": 2.0}
    assert list(attempt.answers.beside()) == [crossed.answer]


def test_rows_say_what_they_are(attempt, now):
    saved = journey.save_answer(attempt, journey.Given("dew_point", 1.0, uuid4(), 0), now=now)
    found = journey.hand_in(attempt, now=now).findings.first()
    assert [str(attempt), str(saved.answer), str(found)] == [
        "COA-01 paper 1",
        "dew_point 1",
        f"{found.code} {found.verdict}",
    ]
    assert (attempt.title, attempt.is_paper) == ("Two thermometers", True)
