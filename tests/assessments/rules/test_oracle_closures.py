"""The closures of the oracle by themselves: what generated code is held against has to be right first."""

import math

import pytest

from assessments.rules import Function, bind, check, num, truth
from tests.assessments.rules.oracle.frame import Frame, finite
from tests.assessments.rules.oracle.marking import evaluate


@pytest.fixture
def value(checked, schema, case):
    """What the closures make of a rule on the case, answers changed as said."""

    def ask(rule, **answers):
        result = checked(rule, "any")
        assert result.ok, result.errors
        case["answer"].update(answers)
        return evaluate(result, bind(schema, case))[0]

    return ask


def test_events_are_noted_only_while_somebody_keeps_them():
    kept = []
    Frame({}, kept).note(3, True, 1.5)
    Frame({}, None).note(4, True)
    assert kept == [(3, True, (1.5,))]


@pytest.mark.parametrize(
    ("gives", "returns", "wanted"),
    [
        (2.5, num(), 2.5),
        (2, num(), 2),
        (None, num(), None),
        (math.inf, num(), None),
        (math.nan, num(), None),
        (True, truth(), True),
    ],
)
def test_a_lent_function_gives_what_it_promised(schema, case, gives, returns, wanted):
    lent = Function("lent", (), returns, 1, lambda: gives)
    assert evaluate(check("lent()", schema, [lent], "any"), bind(schema, case))[0] is wanted or wanted == gives


@pytest.mark.parametrize(
    ("gives", "said"),
    [("x", "lent() failed: TypeError, it gave 'x' where a number was promised."), (True, "it gave True where")],
)
def test_a_lent_function_that_breaks_its_promise_has_failed(schema, case, gives, said):
    lent = Function("lent", (), num(), 1, lambda: gives)
    value, trace = evaluate(check("lent() > 1", schema, [lent]), bind(schema, case))
    assert value is None
    assert said in trace.failed


def test_a_lent_function_gets_no_missing_value(schema, case):
    lent = Function("lent", (num("K"),), num(), 1, lambda margin: margin + 1)
    case["answer"]["margin"] = None
    assert evaluate(check("lent(answer.margin) > 1", schema, [lent]), bind(schema, case))[0] is None


def test_an_unknown_condition_leaves_a_choice_unknown(value):
    assert value("1 if answered(answer.sure) and answer.sure else 2", sure=None) == 2
    assert (
        value("(1 if answered(facts.film_um / answer.packs) and facts.film_um / answer.packs > 3 else 2)", packs=0) == 2
    )


def test_a_condition_nobody_knows_leaves_a_choice_unknown(schema, case):
    lent = Function("lent", (), truth(), 1, lambda: None)
    assert evaluate(check("1 if lent() else 2", schema, [lent], "any"), bind(schema, case))[0] is None


def test_a_record_in_a_list_of_answers_is_read_by_its_fields(value):
    assert value("least(s.n for s in answer.steps)") == 1
    assert value("most(s.um for s in answer.steps)") == 4.0


@pytest.mark.parametrize("value", [float("inf"), float("-inf"), float("nan"), 10**301, -1e301])
def test_what_has_run_out_of_bounds_is_unknown(value):
    assert finite(value) is None


@pytest.mark.parametrize("value", [0, -2.5, 10**300, 1e300])
def test_what_is_within_bounds_is_kept(value):
    assert finite(value) == value
