"""The loops of the oracle by themselves."""

import pytest

from assessments.rules import bind
from tests.assessments.rules.oracle.marking import evaluate


@pytest.fixture
def value(checked, schema, case):
    """What the loops make of a rule on the case, answers changed as said."""

    def ask(rule, **answers):
        result = checked(rule, "any")
        assert result.ok, result.errors
        return evaluate(result, bind(schema, {**case, "answer": {**case["answer"], **answers}}))[0]

    return ask


@pytest.fixture
def events(checked, schema, case):
    def ask(rule):
        return evaluate(checked(rule), bind(schema, case))[1].events

    return ask


def test_only_the_item_that_decided_is_in_the_trace(events):
    walk, item = events("any(s.um > 3 for s in answer.steps)")
    assert walk[1:] == (True, 2, 1)
    assert item[1:] == (True, 4.0, 3)


def test_a_quantifier_that_nothing_decided_is_one_event(events):
    (walk,) = events("every(s.um < 9 for s in answer.steps)")
    assert walk[1:] == (True, 4, None)


def test_what_a_filter_leaves_out_is_not_counted_as_tested(events):
    (walk,) = events("every(s.wet for s in answer.steps if s.op == 'sand')")
    assert walk[1:] == (True, 2, None)


def test_an_item_of_which_the_filter_is_unknown_counts_as_unknown(value):
    rule = "count(s.wet for s in answer.steps if answer.packs > s.n)"
    assert value(rule) == 0
    assert value(rule, packs=None) is None
    assert value("any(s.wet for s in answer.steps if answer.packs > s.n)", packs=None) is None


def test_sums_and_extremes_over_something_unknown_are_unknown(value):
    assert value("sum(s.um + answer.packs * s.um for s in answer.steps)", packs=None) is None
    assert value("most(s.um * answer.packs for s in answer.steps)", packs=None) is None


def test_a_quantifier_inside_another_sees_both_items(value):
    assert value("every(any(t.n >= s.n and t.um <= s.um for t in answer.steps) for s in answer.steps)") is True
    assert value("any(every(t.n <= s.n for t in answer.steps) for s in answer.steps)") is True


def test_a_sum_beyond_all_bounds_is_unknown(value):
    big = "*".join(["s.um"] * 12)
    rule = f"sum(({big}) * ({big}) * s.um for s in answer.steps) > 1"
    steps = [{"n": 1, "op": "sand", "um": 1e12, "wet": True}]
    assert value(rule, steps=steps) is True
    assert value(rule, steps=steps * 3) is None
