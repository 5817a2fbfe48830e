"""The door `try_rule`: a bad rule is an answer, a request that can't be read is one sentence and exit 2."""

import json
import os
import subprocess
import sys

import pytest

from tests.house.measure import ROOT

STEP = {"t": "rec", "fields": {"op": {"t": "enum", "vals": ["wash", "sand"]}, "wet": {"t": "bool"}}}
SCHEMA = {
    "t": "rec",
    "fields": {
        "case": {
            "t": "rec",
            "fields": {
                "air_degc": {"t": "num", "unit": "degc"},
                "air_rh": {"t": "num", "unit": "rh"},
                "panel_degc": {"t": "num", "unit": "degc"},
                "rate": {"t": "num", "unit": "ml/m2"},
                "area": {"t": "num", "unit": "m2"},
                "gloss": {"t": "num", "unit": "gloss units"},
            },
        },
        "ans": {
            "t": "rec",
            "fields": {
                "te": {"t": "num", "unit": "h", "opt": True},
                "packs": {"t": "int"},
                "sure": {"t": "bool"},
                "note": {"t": "str", "max": 40},
                "decision": {"t": "enum", "vals": ["coat_now", "wait"]},
                "steps": {"t": "list", "item": STEP},
            },
        },
    },
}
CASE = {
    "case": {"air_degc": 20.0, "air_rh": 50.0, "panel_degc": 12.0, "rate": 2.5, "area": 4.0, "gloss": 80.0},
    "ans": {
        "packs": 2,
        "sure": True,
        "note": "It stays.",
        "decision": "wait",
        "steps": [{"op": "wash", "wet": True}, {"op": "sand", "wet": True}],
    },
}


def request(rule, **changed):
    return json.dumps({"schema": SCHEMA, "case": CASE, "rule": rule, **changed})


def tried(shell, rule, **changed):
    run = shell("try_rule", "-", stdin=request(rule, **changed))
    assert (run.code, run.err) == (0, "")
    return json.loads(run.out)


def test_the_answer_has_the_shape_of_the_doors(shell, tmp_path):
    file = tmp_path / "trial.json"
    file.write_text(request("before(ans.steps, 'wash', 'sand')"), encoding="utf-8")
    told = json.loads(shell("try_rule", str(file)).out)
    assert list(told) == ["ok", "verdict", "sentence", "trace", "errors", "warnings"]
    assert (told["ok"], told["verdict"], told["errors"], told["warnings"]) == (True, True, [], [])
    assert told["sentence"].startswith("The rule is met: ")
    assert told["trace"][0]["text"] == "before(ans.steps, 'wash', 'sand')"


def test_a_rule_with_errors_is_an_answer_and_exit_0(shell):
    told = tried(shell, "ans.stpes and case.air_rh > 'x' and ans.decision == 'wiat'")
    assert (told["ok"], told["verdict"], told["trace"], told["warnings"]) == (False, None, [], [])
    assert [(each["start"], each["end"], each["suggestion"]) for each in told["errors"]] == [
        (4, 9, "steps"),
        (28, 31, None),
        (52, 58, "wait"),
    ]


@pytest.mark.parametrize(
    ("rule", "verdict"),
    [
        ("case.rate * case.area > 9", True),
        ("case.gloss > 90", False),
        ("ans.te > 3", None),
        ("answered(ans.te)", False),
        ("case.air_degc - case.panel_degc >= 8", True),
        ("norm(ans.note) == 'it stays.'", True),
        ("every(s.wet for s in ans.steps if s.op == 'sand')", True),
    ],
)
def test_the_verdict_is_the_bare_truth_value(shell, rule, verdict):
    assert tried(shell, rule)["verdict"] is verdict


def test_the_functions_of_the_trade_may_be_called(shell):
    # 9.27 °C at 20 °C and 50 %: the sum dew_point, tried against its sources in tests/courses/trade
    assert tried(shell, "near(dew_point(case.air_degc, case.air_rh), 9.3, 0.1)")["verdict"] is True
    (fault,) = tried(shell, "dew_point(case.air_rh, 50) > 3")["errors"]
    assert (fault["start"], fault["end"]) == (10, 21)


def test_unknown_units_unbacked_claims_and_equal_fractions_are_warnings(shell):
    rule = "case.gloss > 3 and every(s.wet for s in ans.steps if s.op == 'sand') and case.area == 4.5"
    told = tried(shell, rule)
    assert told["ok"] is True
    assert [rule[each["start"] : each["end"]] for each in told["warnings"]] == [
        "gloss",
        "4.5",
        "every(s.wet for s in ans.steps if s.op == 'sand')",
    ]


def test_names_at_the_root_may_be_plain_values(shell):
    schema = {"t": "rec", "fields": {"a": {"t": "num", "opt": True}, "b": {"t": "num"}}}
    assert tried(shell, "a > b", schema=schema, case={"b": 3})["verdict"] is None
    assert tried(shell, "b > 2 or a > b", schema=schema, case={"a": None, "b": 3})["verdict"] is True


def test_twenty_items_fit_a_list_that_says_no_maximum(shell):
    schema = {"t": "rec", "fields": {"xs": {"t": "list", "item": {"t": "int"}}}}
    assert tried(shell, "len(xs) == 20", schema=schema, case={"xs": [1] * 20})["verdict"] is True
    run = shell("try_rule", "-", stdin=request("True", schema=schema, case={"xs": [1] * 21}))
    assert (run.code, run.out, run.err) == (2, "", "xs: the list has 21 items, at most 20 are read.\n")


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("{", "standard input, line 1, column 2: this is not JSON"),
        ("[]", 'A trial is an object {"schema": …, "case": …, "rule": …}.'),
        ("3", "A trial is an object"),
        ('{"schema": {}, "schema": {}}', "the key 'schema' stands twice"),
        ('{"schema": 1, "case": {}, "rule": "True", "rules": []}', "did you mean 'rule'?"),
        ('{"schema": {"t": "rec", "fields": {}}, "rule": "True"}', "The trial lacks case"),
        (request("True", schema={"t": "num"}), "the outermost kind is 'num', it has to be 'rec'."),
        (request("True", schema={"t": "rce", "fields": {}}), "did you mean 'rec'?"),
        (request("True", schema={"t": "rec"}), "a record needs 'fields'"),
        (request("True", schema={"t": "rec", "fields": {"a": {"t": "list"}}}), "schema.a.item: a kind is an object"),
        (request("True", schema={"t": "rec", "fields": {"a": {"t": "enum"}}}), "a choice needs 'vals'"),
        (request("True", schema={"t": "rec", "fields": {"a": {"t": "num", "unti": "h"}}}), "did you mean 'unit'?"),
        (request("True", schema={"t": "rec", "fields": {"a b": {"t": "num"}}}), "'a b' is no name"),
        (request("True", case={}), "case: nothing is there; it has to be a record."),
        (request("True", case={**CASE, "sim": {}}), "sim: there is no such field"),
        (request("True", case=[]), "A case is an object of name and value, not []."),
        ("[" * 100_000, "nested too deep"),
        ('{"schema": 1e999}', "1e999 is too large to be a number here."),
    ],
)
def test_a_request_that_cannot_be_read_is_one_sentence_and_exit_2(shell, text, says):
    run = shell("try_rule", "-", stdin=text)
    assert (run.out, run.code) == ("", 2)
    assert says in run.err
    assert run.err.count("\n") == 1


def test_what_is_refused_is_quoted_no_longer_than_a_line(shell):
    long = "x" * 1_000_000
    for changed in (
        {"case": {long: 1}},
        {"schema": {"t": long}},
        {"schema": {"t": "rec", "fields": {long: {"t": "num"}}}},
        {"schema": {"t": "rec", "fields": {"a": {"t": "num", long: 1}}}},
        {"case": {**CASE, "ans": {**CASE["ans"], "decision": long}}},
        {long: 1},
    ):
        run = shell("try_rule", "-", stdin=request("True", **changed))
        assert (run.code, run.out) == (2, "")
        assert len(run.err) < 300


def test_a_rule_of_a_megabyte_is_an_answer(shell):
    told = tried(shell, "a" * 1_000_000)
    assert told["errors"][0]["message"] == "The rule has 1000000 characters, at most 600 are read."


def test_a_file_that_isnt_there_is_refused(shell):
    run = shell("try_rule", "nowhere.json")
    assert (run.out, run.code) == ("", 2)
    assert "nowhere.json cannot be read" in run.err


def test_the_door_needs_no_database_and_no_set_up(tmp_path):
    trial = tmp_path / "trial.json"
    trial.write_text(request("ans.sure"), encoding="utf-8")
    command = [sys.executable, "manage.py", "try_rule", str(trial)]
    settings = {key: value for key, value in os.environ.items() if key != "DJANGO_SETTINGS_MODULE"}
    fresh = {**settings, "RAKING_VAR": str(tmp_path / "var")}
    run = subprocess.run(command, cwd=ROOT, env=fresh, capture_output=True, text=True, check=False)
    assert (run.returncode, run.stderr) == (0, "")
    assert json.loads(run.stdout)["verdict"] is True
    assert not (tmp_path / "var").exists()
