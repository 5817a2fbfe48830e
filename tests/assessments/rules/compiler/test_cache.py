import pytest

from assessments.rules import Function, Refused, Rule, RuleBook, check, num, prepare
from assessments.rules.compiler import compile_book, compile_rule
from assessments.rules.compiler.cache import digest


def lend(call, cost=1):
    return Function("lent", (num(),), num(), cost, call)


def half(value):
    return value / 2


@pytest.fixture
def book(schema):
    """The code of a book of one rule, with a function lent to it."""

    def ask(test="lent(facts.film_um) > 1", call=half):
        functions = [lend(call)]
        return compile_book([check(test, schema, functions)], schema, functions)

    return ask


def test_the_same_rules_are_compiled_once(book):
    assert book() is book()
    assert book() is not book("lent(facts.film_um) > 2")


def test_a_book_that_is_prepared_again_shares_its_code(schema):
    one = RuleBook("COA-01", 1, (Rule("COA-01.1", "S", "points", 1, "B", "practice", test="answer.sure"),))
    assert prepare(one, schema).compiled is prepare(one, schema).compiled


def test_another_schema_makes_another_code(schema):
    rule = "answered(facts.film_um)"
    loose = schema.with_missing(("facts", "film_um"))
    assert compile_book([check(rule, schema)], schema) is not compile_book([check(rule, loose)], loose)


def test_two_functions_that_look_the_same_never_share_code(book, schema, case):
    one, other = book(), book(call=lambda value: -value)
    assert one is not other
    assert one.digest == other.digest
    assert (one.values(case), other.values(case)) == ((True,), (False,))


def test_a_rule_alone_is_compiled_once_for_each_time_it_was_checked(schema):
    checked, again = check("answer.sure", schema), check("answer.sure", schema)
    assert compile_rule(checked) is compile_rule(checked)
    assert compile_rule(checked) is not compile_rule(again)


def test_without_a_schema_nothing_is_kept(schema):
    parts = [check("answer.sure", schema)]
    assert compile_book(parts) is not compile_book(parts)


def test_a_digest_tells_rules_and_costs_of_functions_apart(schema):
    parts = [check("answer.sure", schema)]
    asked = [(parts, [lend(half)]), (parts, [lend(half, 2)]), ([], [lend(half)])]
    told = {digest(rules, schema, functions) for rules, functions in asked}
    assert len(told) == 3


def test_a_rule_with_errors_is_refused(schema):
    with pytest.raises(Refused, match="The rule can't be run: There is no field 'qqq'"):
        compile_rule(check("answer.qqq", schema))
