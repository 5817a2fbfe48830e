"""The door `rejudge`: first what would change, then, told to and told why, the change."""

import json

import pytest

from assessments import drafting
from assessments.models import Evidence

pytestmark = pytest.mark.django_db


@pytest.fixture
def sat(sit_wide, trainee, second_book):
    return sit_wide(trainee)


def test_it_shows_what_would_change_and_changes_nothing(shell, sat):
    ran = shell("rejudge", "COA-01", "--book", "2")
    assert (ran.code, Evidence.objects.count()) == (0, 1)
    assert "COA-01@1, rule book 2: 1 judged by another version, 1 would come out otherwise." in ran.out
    assert f"{sat.pk} paper: not_yet_satisfactory" in ran.out
    assert "COA-01.2 not_met -> met" in ran.out
    assert "Nothing is changed." in ran.out


def test_in_json_it_says_the_same(shell, sat, trainee, second_book):
    found = json.loads(shell("rejudge", "COA-01@1", "--book", "2", "--json").out)
    assert {**found, "changes": len(found["changes"])} == {
        "scenario": "COA-01",
        "version": 1,
        "book": 2,
        "digest": second_book.digest,
        "judged": 1,
        "changes": 1,
        "applied": 0,
        "passed_by": 0,
    }
    (change,) = found["changes"]
    assert (change["attempt"], change["person"], change["mode"]) == (str(sat.pk), str(trainee.handle), "paper")
    assert change["rules"] == [{"code": "COA-01.2", "was": "not_met", "now": "met"}]


def test_the_book_in_use_is_asked_where_none_is_named(shell, sat):
    assert "rule book 1: 0 judged by another version, 0 would come out otherwise." in shell("rejudge", "COA-01").out


def test_told_to_and_told_why_it_files_them_anew(shell, sat):
    ran = shell("rejudge", "COA-01", "--book", "2", "--apply", "--reason", "The margin was too tight.")
    assert ran.code == 0
    assert "1 filed anew, beside what they came to before; 0 passed by." in ran.out
    again = Evidence.objects.get(replaces__isnull=False)
    assert (again.outcome, again.note.text) == ("satisfactory", "The margin was too tight.")
    assert "0 judged by another version" in shell("rejudge", "COA-01", "--book", "2").out


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (["COA-1"], "No scenario here is called 'COA-1'; "),
        (["COA-01@9"], "No scenario here is called 'COA-01@9'; "),
        (["COA-01@x"], "No scenario here is called 'COA-01@x'; "),
        (["COA-01", "--book", "7"], "--book is 7; the versions that mark COA-01@1 are 1, 2."),
        (["COA-01", "--book", "two"], "--book is 'two'; give a whole number"),
        (["COA-01", "--apply"], "--apply needs --reason"),
        (["COA-01", "--apply", "--reason", "  "], "--apply needs --reason"),
        (["COA-01", "--reason", "why"], "--reason goes with --apply"),
    ],
)
def test_bad_input_is_one_sentence(shell, sat, arguments, said):
    ran = shell("rejudge", *arguments)
    assert (ran.code, ran.out, len(ran.err.splitlines())) == (2, "", 1)
    assert said in ran.err


def test_a_rule_that_only_weighs_more_changes_points_alone(shell, sit, trainee, draft, changed, author, reviewer, now):
    sit(trainee)
    drafting.publish_draft(drafting.send_to_review(changed(draft, points=3), author, now=now), reviewer, now=now)
    assert "-> satisfactory 37/37; in points alone" in shell("rejudge", "COA-01").out
