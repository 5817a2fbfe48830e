"""The door `prove`: clean is exit 0, wanting is exit 1, bad input is exit 2."""

import json
from dataclasses import replace

import pytest

from assessments.management.commands import prove as door
from assessments.marking import Marker
from assessments.scenarios.spec import Exemplar
from assessments.shipped import marker, published, scenario


def test_everything_shipped_is_proved(shell):
    run = shell("prove", "--seeds", "6", "--json")  # CI proves twenty: a rule that few draws ask may be idle here
    proved = json.loads(run.out)
    assert proved["seeds"] == 6
    assert [one for one in proved["scenarios"] if one["deviations"]] == []
    (row,) = [one for one in proved["scenarios"] if one["code"] == "COA-01"]
    assert list(row) == ["code", "version", "draws", "marks", "deviations", "idle_rules"]
    assert (row["version"], row["draws"], row["deviations"]) == (1, 6, [])


def test_without_json_it_speaks_to_people(shell):
    run = shell("prove", "COA-01@1", "--seeds", "20")
    assert run.out.startswith("COA-01@1: 20 draws, ")
    assert run.out.strip().endswith(" marks, clean.")


def test_a_deviation_is_exit_1_and_still_an_answer(shell, monkeypatch):
    liar = Exemplar("the key fails", ("critical_fail",))
    spec = scenario("COA-01")
    lying = Marker.of(replace(spec, exemplars=(*spec.exemplars, liar)), published()[spec.ref].book)
    monkeypatch.setattr(door, "marker", lambda ref: lying)
    run = shell("prove", "COA-01", "--seeds", "20", "--json")
    (row,) = json.loads(run.out)["scenarios"]
    assert run.code == 1
    assert row["deviations"][0] == {
        "seed": 1,
        "exemplar": "the key fails",
        "wanted": "critical_fail",
        "got": "satisfactory",
        "rules": [],
    }


def test_too_few_draws_leave_rules_idle(shell):
    run = shell("prove", "COA-01", "--seeds", "1", "--json")
    assert run.code == 1
    assert json.loads(run.out)["scenarios"][0]["idle_rules"]


@pytest.mark.parametrize(
    ("arguments", "says"),
    [
        (["COA-02x", "--seeds", "3"], "No scenario is called 'COA-02x'"),
        (["COA-01", "COA-01@7", "--seeds", "3"], "No scenario is called 'COA-01@7'; did you mean COA-01@1"),
        (["COA-01", "--seeds", "0"], "--seeds is '0'; give a whole number from 1"),
        (["COA-01"], "--seeds"),
    ],
)
def test_bad_input_is_one_sentence_and_exit_2(shell, arguments, says):
    run = shell("prove", *arguments)
    assert (run.out, run.code) == ("", 2)
    assert says in run.err
    assert run.err.count("\n") == 1


def test_the_marker_of_a_version_is_made_once():
    assert marker("COA-01@1") is marker("COA-01@1")
