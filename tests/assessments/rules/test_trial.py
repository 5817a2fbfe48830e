import json

import pytest

from assessments.rules import TrialRefused, try_rule

SCHEMA = {
    "t": "rec",
    "fields": {
        "answer": {
            "t": "rec",
            "fields": {
                "te": {"t": "num", "unit": "h", "opt": True},
                "steps": {
                    "t": "list",
                    "item": {"t": "rec", "fields": {"op": {"t": "enum", "vals": ["wash", "sand"]}}},
                },
            },
        },
        "key": {"t": "rec", "fields": {"te": {"t": "num", "unit": "h"}}},
    },
}
CASE = {"answer": {"te": 20.0, "steps": [{"op": "wash"}, {"op": "sand"}]}, "key": {"te": 20.4}}


def tried(rule, case=CASE):
    return try_rule({"schema": SCHEMA, "case": case, "rule": rule})


def test_a_rule_that_is_met_is_told_with_its_trace():
    told = tried("near_rel(answer.te, key.te, 5)")
    assert told == {
        "ok": True,
        "verdict": True,
        "sentence": "The rule is met: te 20\u00a0h is within 5\u00a0% of 20.4\u00a0h.",
        "trace": [
            {
                "start": 0,
                "end": 30,
                "text": "near_rel(answer.te, key.te, 5)",
                "result": True,
                "values": [20.0, 20.4, 5],
                "sentence": "te 20\u00a0h is within 5\u00a0% of 20.4\u00a0h",
            },
        ],
        "errors": [],
        "warnings": [],
    }
    json.dumps(told)


def test_the_verdict_is_bare_before_the_rule_of_silence():
    told = tried("answered(answer.te)", {**CASE, "answer": {"steps": []}})
    assert told["verdict"] is False
    assert told["sentence"] == "The rule is not met: te is not answered."
    assert tried("answer.te > 3", {**CASE, "answer": {"steps": []}})["verdict"] is None


def test_a_rule_with_errors_is_an_answer():
    told = tried("answer.tee > 'x'")
    assert (told["ok"], told["verdict"], told["trace"]) == (False, None, [])
    assert told["errors"] == [
        {"message": "There is no field 'tee'; did you mean 'te'?", "start": 7, "end": 10, "suggestion": "te"},
    ]
    assert told["sentence"] == "There is no field 'tee'; did you mean 'te'?"


def test_a_rule_with_nothing_to_tell_ends_in_a_full_stop():
    assert tried("True")["sentence"] == "The rule is met."


def test_warnings_come_with_a_verdict():
    told = tried("answer.te == 20.5")
    assert (told["ok"], told["verdict"], len(told["warnings"])) == (True, False, 1)


def test_lent_functions_may_be_tried(functions):
    request = {"schema": SCHEMA, "case": CASE, "rule": "broken(1) > 1"}
    told = try_rule(request, functions)
    assert told["verdict"] is None
    assert told["sentence"] == "The rule can't be told: broken() failed: ZeroDivisionError, the table ends at 40."


@pytest.mark.parametrize(
    ("request_", "said"),
    [
        ([], 'A trial is an object {"schema": …, "case": …, "rule": …}.'),
        ({"shema": 1}, "Nothing reads the key 'shema' of a trial; did you mean 'schema'?"),
        ({"schema": SCHEMA, "rule": "True"}, "The trial lacks case; it has to hold schema, case and rule."),
        ({"schema": {}, "case": CASE, "rule": "True"}, "schema: 't' is None"),
        ({"schema": SCHEMA, "case": {"key": {}}, "rule": "True"}, "answer: nothing is there; it has to be a record."),
    ],
)
def test_a_request_that_cannot_be_read_is_refused(request_, said):
    with pytest.raises(TrialRefused) as refused:
        try_rule(request_)
    assert said in str(refused.value)


def test_a_rule_that_is_no_text_is_an_error_of_the_rule():
    assert tried(3)["errors"][0]["message"] == "A rule is a text, not 3."
