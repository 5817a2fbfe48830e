"""The door `mark`: the key marks full, silence isn't wrong, bad answers are one sentence."""

import json

import pytest


@pytest.fixture
def key(shell):
    return json.loads(shell("draw", "COA-01", "--seed", "7", "--key").out)["key"]


def marked(shell, answers):
    run = shell("mark", "COA-01", "--seed", "7", "--answers", "-", stdin=json.dumps(answers))
    assert run.code == 0, run.err
    return json.loads(run.out)


def test_the_key_marks_with_full_points_on_every_draw(shell, tmp_path):
    for seed in range(12):
        key = json.loads(shell("draw", "COA-01", "--seed", str(seed), "--key").out)["key"]
        file = tmp_path / f"{seed}.json"
        file.write_text(json.dumps(key), encoding="utf-8")
        found = json.loads(shell("mark", "COA-01", "--seed", str(seed), "--answers", str(file)).out)
        assert (found["outcome"], found["points"]) == ("satisfactory", found["of"])


def test_a_mark_has_the_shape_of_the_doors(shell, key):
    found = marked(shell, {**key, "next_steps": [*key["next_steps"], "fuel_heater"]})
    assert list(found) == ["outcome", "points", "of", "critical", "findings"]
    assert (found["outcome"], found["critical"]) == ("critical_fail", ["COA-01.4"])
    finding = next(one for one in found["findings"] if one["code"] == "COA-01.4")
    names = ["code", "verdict", "severity", "points", "of", "because", "values", "lesson", "source"]
    assert list(finding) == names
    assert [finding[name] for name in names[:5]] == ["COA-01.4", "not_met", "critical", 0, 4]
    assert finding["because"] == "Carbon monoxide, a flame in solvent vapour, and water into the air."
    assert {value["name"] for value in finding["values"]} == {"limit", "answer.next_steps"}
    assert len(found["findings"]) == 15


def test_nothing_answered_is_never_wrong(shell):
    for answers in ({}, {"margin": None, "decision": ""}):
        found = marked(shell, answers)
        assert found["outcome"] == "cannot_certify"
        assert {one["verdict"] for one in found["findings"]} == {"not_answered", "not_applicable"}


def test_quantities_may_be_text_with_a_unit(shell, key):
    fahrenheit = f"{key['dew_point'] * 9 / 5 + 32:.1f} °F"
    assert marked(shell, {**key, "dew_point": fahrenheit}) == marked(shell, {**key, "dew_point": key["dew_point"]})


@pytest.mark.parametrize(
    ("answers", "says"),
    [
        ('{"margn": 3}', "margn: no task is called so; did you mean margin?"),
        ('{"decision": "coat"}', "decision: 'coat' is no option here; did you mean coat_now?"),
        ('{"next_steps": ["tell_ownr"]}', "next_steps: 'tell_ownr' is no option here; did you mean tell_owner?"),
        ('{"margin": "much"}', "margin: 'much' is no number; write it as 3 K or 5.4 °F."),
        ('{"dew_point": 400}', "dew_point: 400 °C lies outside −60 °C to 60 °C; give a value within."),
        ('{"margin": NaN}', "NaN is not a number here"),
        ('{"margin": 1, "margin": 2}', "the key 'margin' stands twice"),
        ("[]", "standard input holds no object of answers; write one value for each of: dew_point, margin, decision"),
        ("{", "standard input, line 1, column 2: this is not JSON"),
    ],
)
def test_bad_answers_are_one_sentence_and_exit_2(shell, answers, says):
    run = shell("mark", "COA-01", "--seed", "7", "--answers", "-", stdin=answers)
    assert (run.out, run.code) == ("", 2)
    assert says in run.err
    assert run.err.count("\n") == 1


def test_a_file_that_isnt_there_is_refused(shell):
    run = shell("mark", "COA-01", "--seed", "7", "--answers", "nowhere.json")
    assert (run.out, run.code) == ("", 2)
    assert "nowhere.json cannot be read" in run.err
