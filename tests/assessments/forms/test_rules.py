"""A rule as it is typed."""

import pytest

from assessments.forms.rules import RuleForm, SharedRuleForm, one_line
from assessments.shipped import shared_book
from courses.models import Lesson

pytestmark = pytest.mark.django_db
GIVEN = {
    "sentence": "Waits",
    "way": "whole",
    "test": "answer.decision == 'wait'",
    "severity": "needed",
    "points": "2.5",
    "because": "Too cold.",
    "source": "practice",
}


def errors(**changes):
    form = RuleForm({**GIVEN, **changes})
    return {name: [str(one) for one in said] for name, said in form.errors.items()}


def test_a_whole_rule(shelves):
    form = RuleForm(GIVEN)
    assert form.is_valid()
    assert form.row("COA-01.14") == {
        "code": "COA-01.14",
        "sentence": "Waits",
        "test": "answer.decision == 'wait'",
        "points": 2.5,
        "severity": "needed",
        "because": "Too cold.",
        "source": "practice",
    }


def test_a_test_typed_on_several_lines_is_one_line(shelves):
    form = RuleForm({**GIVEN, "test": "answer.decision == 'wait'\r\nand key.short\n"})
    assert form.is_valid()
    assert form.row("x")["test"] == "answer.decision == 'wait' and key.short"
    assert one_line(" a\n b ") == "a  b"


@pytest.mark.parametrize(
    ("changes", "said"),
    [
        ({"sentence": ""}, {"sentence": ["Say in a few words what is right."]}),
        ({"test": ""}, {"test": ["Write it, or build it from words below."]}),
        ({"way": "share"}, {"share": ["Write it, or build it from words below."]}),
        ({"points": ""}, {"points": ["Enter a number above 0, at most 100."]}),
        ({"points": "0"}, {"points": ["Enter a number above 0, at most 100."]}),
        ({"points": "101"}, {"points": ["Enter a number above 0, at most 100."]}),
        ({"way": "steps"}, {"step_0": ["Write at least one step."]}),
        ({"way": "steps", "step_0": "key.short"}, {"step_points_0": ["Enter a number above 0, at most 100."]}),
        ({"severity": ""}, {"severity": ["Choose how much it weighs."]}),
        (
            {"way": "share", "share": "0.5", "severity": "critical"},
            {"severity": ["A critical rule is met or not met; points in part belong to the other severities."]},
        ),
    ],
)
def test_what_is_missing_is_said_at_its_field(shelves, changes, said):
    assert errors(**changes) == said


def test_a_rule_by_steps_is_opened_and_kept_as_it_was(shelves):
    row = {"code": "A", "sentence": "s", "steps": [["key.short", 1], ["key.fresh", 2.5]], "severity": "points"}
    row |= {"because": "b", "source": "practice"}
    form = RuleForm.of(row, "", "")
    given = {name: form[name].value() for name in form.fields if form[name].value() is not None}
    again = RuleForm(given)
    assert again.is_valid()
    assert again.row("A") == row


def test_a_shared_rule_keeps_only_what_differs(shelves):
    shared = shared_book().rules["R41"]
    lesson = Lesson.objects.exclude(code=shared.lesson).first().code
    form = SharedRuleForm.of(shared, {"shared": "R41", "severity": "critical", "points": 5}, "", "")
    given = {name: form[name].value() for name in form.fields}
    assert given["when"] == shared.when
    again = SharedRuleForm(shared, {**given, "lesson": lesson})
    assert again.is_valid()
    assert again.row("R41") == {"shared": "R41", "severity": "critical", "points": 5, "lesson": lesson}
    bare = SharedRuleForm(shared, {**given, "points": ""})
    assert bare.errors["points"] == ["Enter a number above 0, at most 100."]
