import pytest


@pytest.mark.parametrize(
    ("rule", "wanted"),
    [
        ("-answer.margin", -2.8),
        ("-3", -3),
        ("facts.film_um + 1 - 2 * 3", 55.0),
        ("facts.film_um / 4", 15.0),
        ("facts.film_um / answer.packs", 30.0),
        ("7 / 0", None),
        ("facts.film_um / (answer.packs - 2)", None),
        ("1 if key.short else 2", 1),
        ("count(s.wet for s in answer.steps) if key.short else sum(s.n for s in answer.steps)", 2),
        ("'wait' if key.short else 'coat_now'", "wait"),
        ("True", True),
        ("['a', 'b']", ["a", "b"]),
    ],
)
def test_a_value_is_that_of_the_oracle(ran, rule, wanted):
    assert ran(rule).value == wanted


def product(count):
    """So many factors in two brackets, not to be nested too deep."""
    half = " * ".join(["facts.film_um"] * (count // 2))
    return f"({half}) * ({half})"


@pytest.mark.parametrize("rule", ["-answer.margin", "answer.margin + 1", "1 - answer.margin", "4 / answer.margin"])
def test_what_is_worked_from_something_missing_is_unknown(ran, rule):
    assert ran(rule, margin=None).value is None


def test_nothing_is_asked_where_nothing_can_run_out_of_bounds(lines):
    assert not [line for line in lines("facts.film_um * facts.film_um > 1") if "1e+300" in line]
    assert [line for line in lines(f"{product(26)} > 1") if "1e+300" in line]


def test_a_product_out_of_bounds_is_unknown(ran, case):
    case["facts"]["film_um"] = 1e12
    assert ran(f"{product(24)} > 1").value is True
    assert ran(f"{product(26)} > 1").value is None


def test_an_unknown_test_of_a_function_leaves_a_choice_unknown(schema, case):
    from assessments.rules import Function, bind, check, truth
    from assessments.rules.compiler import compile_rule

    lent = Function("lent", (), truth(), 1, lambda: None)
    for rule in ("1 if lent() else 2", "1 if lent() else count(s.wet for s in answer.steps)"):
        compiled = compile_rule(check(rule, schema, [lent], "any"))
        assert compiled.values(bind(schema, case)) == (None,)
        assert compiled.traced(bind(schema, case))[0] == (None,)
