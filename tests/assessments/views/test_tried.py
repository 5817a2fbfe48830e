"""What a rule is tried on: the model answer, a known one, one that was handed in, one's own."""

import pytest
from django.http import QueryDict

from assessments import drafting
from assessments.manuscript import read
from assessments.models import Scenario
from assessments.rules import Rule
from assessments.views.tried import answers_offered, draw_shown, judged, own_fields, spec_of, trial_of

pytestmark = pytest.mark.django_db
RULE = Rule("new", "…", "points", 2, "It has to be near.", "practice", test="near(answer.margin, key.margin, 0.5)")


@pytest.fixture
def spec(draft):
    return spec_of(draft, read(draft).text)


@pytest.fixture
def tried(spec, draft, author):
    """Return a function that tries the rule as asked for and gives the trial and what was found."""

    def trial(asked="", rule=RULE):
        opened = trial_of(spec, QueryDict(asked), author, draft)
        return opened, judged(rule, spec, opened, author)

    return trial


def test_the_model_answer_meets_it(tried):
    trial, found = tried()
    assert (trial.seed, trial.chosen, trial.errors) == (1, "key", {})
    assert (found["verdict"], found["points"], found["of"], found["because"]) == ("met", "2", "2", "")
    (sentence,) = found["told"]
    assert "is within 0.5\u00a0K of" in sentence


def test_what_was_never_looked_at_is_said(tried):
    rule = Rule("new", "…", "points", 2, "…", "practice", test="answered(answer.margin) or key.short")
    (sentence,) = tried(rule=rule)[1]["unlooked"]
    assert sentence.startswith("not looked at: ")


def test_a_known_answer_shows_the_reason(tried):
    trial, found = tried("answers=margin of the rail though a probe was read&seed=3")
    assert (trial.chosen, found["verdict"], found["because"]) == (
        "margin of the rail though a probe was read",
        "not_met",
        "It has to be near.",
    )
    assert [label for label, _text in found["values"]] == ["answer: margin", "key: margin", "within"]


def test_one_that_does_not_apply_to_the_draw_falls_back_and_says_so(tried):
    trial, found = tried("answers=walks away&seed=3")
    assert (trial.chosen, found["verdict"]) == ("key", "met")
    assert trial.errors == {"answers": "That answer doesn’t apply to this draw. The model answer is tried."}


@pytest.mark.parametrize("seed", ["", "x", "-1", "9" * 30, "1.5"])
def test_a_draw_without_a_number_is_draw_1(tried, seed):
    trial, _found = tried(f"seed={seed}")
    assert trial.seed == 1
    assert trial.errors["seed"].startswith("A draw has a whole number from 0 to 1000000000.")


def test_ones_own_answers_begin_as_the_model_and_are_read_in_ones_own_units(tried, spec, author, draft):
    trial, found = tried("answers=own")
    assert found["verdict"] == "met"
    author.temperature = "degf"
    trial = trial_of(
        spec, QueryDict("answers=own&own-dew_point=50&own-margin=&own-next_steps=none_of_these"), author, draft
    )
    assert trial.answers == {"dew_point": 10.0, "next_steps": []}
    assert judged(RULE, spec, trial, author)["verdict"] == "not_answered"


def test_an_answer_that_can_not_be_read_is_said_at_its_field_and_stays(spec, author, draft):
    data = QueryDict("answers=own&own-dew_point=cold&own-margin=2")
    trial = trial_of(spec, data, author, draft)
    fields = {one["name"]: one for one in own_fields(spec, trial, author, data)}
    assert (fields["own-dew_point"]["value"], bool(fields["own-dew_point"]["error"])) == ("cold", True)
    assert (fields["own-margin"]["value"], fields["own-margin"]["error"]) == ("2", "")
    assert [one["value"] for one in fields["own-next_steps"]["options"]][-1] == "none_of_these"


def test_an_attempt_that_was_handed_in_is_tried_on_its_own_facts(tried, spec, sit_wide, trainee, draft, author):
    attempt = sit_wide(trainee)
    trial, found = tried(f"answers={attempt.pk}")
    assert (trial.attempt, found["verdict"]) == (attempt, "not_met")
    assert trial.facts.as_json() == attempt.facts
    assert draw_shown(spec, trial, author)["attempt_url"] == f"/attempts/{attempt.pk}/verdict/"
    offered = answers_offered(spec, author, draft, trial.chosen)
    assert [group["words"] for group in offered] == ["Begin with", "Known answers", "Handed in"]
    assert [one["value"] for one in offered[2]["options"] if one["chosen"]] == [str(attempt.pk)]


def test_an_attempt_of_somebody_one_does_not_teach_is_not_offered(spec, sit, trainee, draft):
    from tests.factories import CohortFactory, MembershipFactory

    attempt = sit(trainee)
    stranger = MembershipFactory(role="instructor", cohort=CohortFactory()).person
    trial = trial_of(spec, QueryDict(f"answers={attempt.pk}"), stranger, draft)
    assert (trial.attempt, trial.chosen) == (None, "key")
    assert len(answers_offered(spec, stranger, draft, "key")) == 2


def test_a_faulty_rule_has_no_verdict(tried):
    assert tried(rule=Rule("new", "…", "points", 2, "…", "practice", test="answer.margn > 3"))[1] is None


def test_the_draw_is_shown_with_its_key(tried, spec, author):
    shown = draw_shown(spec, tried()[0], author)
    assert dict(shown["facts"])["Air in the shed"].endswith("°C")
    assert "Dew point" in dict(shown["key"])


def test_lists_of_ones_own_are_written_line_by_line(shelves, author, now):
    draft = drafting.begin_draft(Scenario.objects.newest().get(code="INS-04"), author, now=now)
    spec = spec_of(draft, read(draft).text)
    sent = QueryDict(
        "answers=own&own-asked=press&own-steps=tell%0D%0Arecord zone=crack&own-zones=A1:refer%0D%0AA2:refer"
    )
    trial = trial_of(spec, sent, author, draft)
    assert trial.answers["asked"] == ["press"]
    assert trial.answers["steps"] == [{"op": "tell"}, {"op": "record", "zone": "crack"}]
    assert trial.answers["zones"] == [{"cells": ["A1", "A2"], "verdict": "refer"}]
    fields = {one["name"]: one for one in own_fields(spec, trial, author, sent)}
    assert (fields["own-steps"]["kind"], fields["own-steps"]["value"]) == ("lines", "tell\nrecord zone=crack")
    assert [one["value"] for one in fields["own-asked"]["options"] if one["chosen"]] == ["press"]


def test_a_line_that_names_no_act_is_refused_and_kept(shelves, author, now):
    draft = drafting.begin_draft(Scenario.objects.newest().get(code="INS-04"), author, now=now)
    spec = spec_of(draft, read(draft).text)
    sent = QueryDict("answers=own&own-steps=tel")
    trial = trial_of(spec, sent, author, draft)
    assert trial.errors["steps"].startswith("'tel' is no act here; did you mean tell?")
    fields = {one["name"]: one for one in own_fields(spec, trial, author, sent)}
    assert fields["own-steps"]["value"] == "tel"
