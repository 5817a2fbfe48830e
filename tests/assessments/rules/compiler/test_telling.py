from assessments.rules import bind


def test_a_walk_to_the_end_tells_how_many_were_tested(ran):
    assert ran("every(s.um < 9 for s in answer.steps)").events == ((6, True, 4, None),)
    assert ran("any(s.um > 9 for s in answer.steps if s.wet)").events == ((8, False, 2, None),)


def test_the_extreme_item_is_recorded_only_where_it_tells_something(ran):
    assert len(ran("most(s.um for s in answer.steps)").events) == 1
    assert len(ran("most((s.um if s.wet else 0) for s in answer.steps)").events) == 2


def test_every_function_that_fails_while_an_item_is_told_fails_the_rule(code, schema, case):
    case["answer"]["sure"] = None
    (found,) = code("sum(broken(s.um) for s in answer.steps if answer.sure)").runs(bind(schema, case))
    assert found.failed == "broken() failed: ZeroDivisionError, the table ends at 40."
    assert found.events[0][1:] == (None, 4, 0)
