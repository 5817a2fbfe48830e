"""Judged again, a verdict shows the newest judgement and leads to every one before it."""

import pytest
from django.urls import reverse

from assessments import journey
from assessments.models import Evidence
from assessments.views.judgements import judgement_asked, judgements_of

pytestmark = pytest.mark.django_db


@pytest.fixture
def again(sit_wide, trainee, second_book, now):
    attempt = sit_wide(trainee)
    journey.judge_again(Evidence.objects.get(), second_book, reason="The margin was too tight.", now=now)
    return attempt


def test_every_judgement_is_there_with_its_book_and_its_findings(again, second_book):
    first, second = judgements_of(again)
    assert (first.outcome, first.rule_book, first.reason) == ("not_yet_satisfactory", again.rule_book, "")
    assert (second.outcome, second.rule_book) == ("satisfactory", second_book)
    assert (second.reason, second.points - first.points) == ("The margin was too tight.", 2)
    verdicts = [{one.code: one.verdict for one in each.findings()}["COA-01.2"] for each in (first, second)]
    assert verdicts == ["not_met", "met"]


def test_the_newest_is_shown_unless_another_is_asked_for(again):
    every = judgements_of(again)
    assert [judgement_asked(every, number).number for number in ("", "1", "2", "9", "x")] == [2, 1, 2, 2, 2]


def test_the_page_says_that_it_was_judged_again_and_why(client, again, trainee):
    client.force_login(trainee)
    url = reverse("attempt-verdict", args=[again.pk])
    newest, first = client.get(url), client.get(f"{url}?judgement=1")
    for page in (newest, first):
        assert "Judged more than once" in page.content.decode()
        assert "The margin was too tight." in page.content.decode()
    assert (newest.context["outcome"], first.context["outcome"]) == ("satisfactory", "not_yet_satisfactory")
    assert f"{url}?judgement=1" in newest.content.decode()


def test_judged_once_nothing_is_said_of_it(client, sit, trainee):
    client.force_login(trainee)
    page = client.get(reverse("attempt-verdict", args=[sit(trainee).pk]))
    assert "Judged more than once" not in page.content.decode()


def test_each_finding_tells_its_steps_in_the_units_of_the_reader(client, sit_wide, trainee):
    client.force_login(trainee)
    attempt = sit_wide(trainee)
    page = client.get(reverse("attempt-verdict", args=[attempt.pk]))
    (margin,) = [one for one in page.context["findings"] if one["title"].startswith("Margin of the panel")]
    (said,) = margin["told"]
    assert said.startswith("margin ")
    assert "is not within 0.5\u00a0K of" in said
    trainee.temperature = "degf"
    trainee.save()
    page = client.get(reverse("attempt-verdict", args=[attempt.pk]))
    (margin,) = [one for one in page.context["findings"] if one["title"].startswith("Margin of the panel")]
    assert "is not within 0.9\u00a0°F of" in margin["told"][0]
