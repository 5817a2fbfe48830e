import pytest

from assessments.rules import Refused, Trace, bind, evaluate


def test_a_value_expression_gives_its_value(checked, schema, case):
    bound = bind(schema, case)
    assert evaluate(checked("facts.rate * facts.area_m2", "any"), bound)[0] == pytest.approx(35.5)
    assert evaluate(checked("key.decision", "any"), bound) == ("wait", Trace())
    assert evaluate(checked("answer.next_steps", "any"), bound)[0] == ["probe_coldest", "tell_owner"]
    assert evaluate(checked("'wait' if key.short else 'coat_now'", "any"), bound)[0] == "wait"


def test_a_rule_with_errors_is_never_run(checked, schema, case):
    with pytest.raises(Refused, match="The rule can't be run: There is no field 'qqq'"):
        evaluate(checked("answer.qqq"), bind(schema, case))


def test_a_function_that_raises_is_named_and_what_was_seen_before_is_kept(checked, schema, case):
    value, trace = evaluate(checked("key.short and any(broken(s.um) > 1 for s in answer.steps)"), bind(schema, case))
    assert value is None
    assert trace.failed == "broken() failed: ZeroDivisionError, the table ends at 40."
    assert len(trace.events) == 1


def test_running_a_rule_twice_leaves_nothing_behind(checked, schema, case):
    rule, bound = checked("every(any(t.n > s.n for t in answer.steps) for s in answer.steps)"), bind(schema, case)
    assert evaluate(rule, bound) == evaluate(rule, bound)
