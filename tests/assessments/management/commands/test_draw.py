"""The door `draw`: its shape, the same facts each time, and what it refuses."""

import json

import pytest


def test_a_draw_has_the_shape_of_the_doors(shell):
    run = shell("draw", "COA-01", "--seed", "7")
    drawn = json.loads(run.out)
    assert run.code == 0
    assert list(drawn) == ["scenario", "version", "seed", "facts", "tasks"]
    assert (drawn["scenario"], drawn["version"], drawn["seed"]) == ("COA-01", 1, 7)
    assert [task["id"] for task in drawn["tasks"]] == ["dew_point", "margin", "decision", "next_steps", "why"]
    assert drawn["tasks"][0] == {"id": "dew_point", "kind": "quantity", "unit": "degc"}
    assert drawn["tasks"][2] == {
        "id": "decision",
        "kind": "choice",
        "options": ["coat_now", "wait", "warm_the_panel", "measure_again"],
    }
    assert drawn["tasks"][4] == {"id": "why", "kind": "text"}
    assert not {"emissivity", "rail_emissivity", "kind"} & set(drawn["facts"])


def test_the_key_stands_beside_the_draw_when_asked_for(shell):
    drawn = json.loads(shell("draw", "COA-01@1", "--seed", "7", "--key").out)
    assert list(drawn["key"]) == [task["id"] for task in drawn["tasks"]]
    assert drawn["model"] == {}


def test_the_steps_a_plan_may_be_made_of_and_its_zones_are_printed(shell):
    drawn = json.loads(shell("draw", "PLN-04", "--seed", "7", "--key").out)
    plan = next(task for task in drawn["tasks"] if task["kind"] == "plan")
    assert set(plan["options"]) == {"main", "line"}
    assert {step["op"] for step in drawn["key"]["steps"]} < set(plan["acts"])


def test_a_seed_always_draws_the_same(shell):
    assert shell("draw", "COA-01", "--seed", "11").out == shell("draw", "COA-01@1", "--seed", "11").out


@pytest.mark.parametrize(
    ("arguments", "says"),
    [
        (["COA-1", "--seed", "7"], "No scenario is called 'COA-1'; did you mean COA-01"),
        (["COA-01@9", "--seed", "7"], "No scenario is called 'COA-01@9'; did you mean COA-01@1"),
        (["COA-01", "--seed", "seven"], "--seed is 'seven'; give a whole number from 0"),
        (["COA-01"], "--seed"),
        ([], "code"),
    ],
)
def test_bad_input_is_one_sentence_and_exit_2(shell, arguments, says):
    run = shell("draw", *arguments)
    assert (run.out, run.code) == ("", 2)
    assert says in run.err
    assert run.err.count("\n") == 1
