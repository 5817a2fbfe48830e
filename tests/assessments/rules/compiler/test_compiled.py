import pytest

from assessments.rules import Function, Refused, bind, check, truth
from assessments.rules.compiler import Compiled
from assessments.rules.faults import FunctionFailed


@pytest.fixture
def bound(schema, case):
    return bind(schema, case)


def test_each_part_gives_its_bare_value(code, bound):
    book = code("answer.sure", "facts.probe_degc > 3", "facts.film_um / 4", "not answer.sure", "key.kit")
    wanted = (True, None, 15.0, False, ["probe_coldest", "tell_owner"])
    assert book.values(bound) == wanted
    assert book.traced(bound)[0] == wanted


def test_an_event_says_which_part_and_which_node_it_belongs_to(code, bound):
    book = code("answer.sure", "facts.film_um > 40.0 and answer.sure")
    events = book.traced(bound)[1]
    assert [event[1:] for event in events] == [(True,), (True, 60.0, 40.0), (True,)]
    assert [book.nodes[event[0]] for event in events] == [(0, 1), (1, 3), (1, 5)]


def test_runs_tell_the_parts_apart(code, bound):
    found = code("answer.sure", "facts.film_um > 40.0 and answer.sure").runs(bound)
    assert [(each.value, each.events) for each in found] == [
        (True, ((1, True),)),
        (True, ((3, True, 60.0, 40.0), (5, True))),
    ]


def test_operands_are_had_whole_from_the_rule_the_case_and_the_run(code, bound):
    rule = (
        "near(facts.film_um / 7, 3, 1000) and answer.decision in ['wait', 'coat_now'] and answer.decision in ['wait']"
    )
    (found,) = code(rule).runs(bound)
    assert [event[2] for event in found.whole] == [
        (60.0 / 7, 3, 1000),
        ("wait", ["wait", "coat_now"]),
        ("wait", ["wait"]),
    ]
    assert found.events[0][2:] == (8.571429, 3, 1000)


def test_one_failing_function_takes_no_other_part_with_it(code, bound):
    found = code("answer.sure", "key.short and broken(1) > 0", "not answer.sure").runs(bound)
    assert [each.value for each in found] == [True, None, False]
    assert [each.failed for each in found] == [None, "broken() failed: ZeroDivisionError, the table ends at 40.", None]
    assert [len(each.events) for each in found] == [1, 1, 1]


def test_alone_a_failing_function_is_an_exception_of_its_own(code, bound):
    for ask in (code("broken(1) > 0").values, code("broken(1) > 0").traced):
        with pytest.raises(FunctionFailed, match="the table ends at 40"):
            ask(bound)


@pytest.mark.parametrize(
    ("rule", "wanted"),
    [
        ("answered(answer.margin) and key.packs == 2", None),
        ("answered(answer.margin) and key.packs == 3", False),
        ("answered(facts.probe_degc) and key.packs == 2", False),
        ("answered(answer.margin) and answer.margin > 2", None),
        ("not answered(answer.margin)", None),
        ("answered(answer.dew_point)", True),
    ],
)
def test_in_silence_what_is_not_answered_is_unknown(code, schema, case, rule, wanted):
    case["answer"]["margin"] = None
    assert code(rule).silent(bind(schema, case)) == (wanted,)


def test_a_function_is_asked_once_where_two_parts_ask_the_same(schema, bound):
    asked = []
    lent = Function("lent", (), truth(), 1, lambda: not asked.append(1))
    book = Compiled([check("lent()", schema, [lent]), check("not lent()", schema, [lent])])
    assert book.values(bound) == (True, False)
    assert asked == [1]


def test_a_part_with_errors_is_refused(schema):
    with pytest.raises(Refused):
        Compiled([check("answer.sure", schema), check("answer.qqq", schema)])


def test_the_code_finds_nothing_of_python(code, bound):
    book = code("answer.sure")
    book.values(bound)
    assert book._untraced.__globals__["__builtins__"] == {}
