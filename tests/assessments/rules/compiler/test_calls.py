import pytest


@pytest.mark.parametrize(
    ("rule", "wanted"),
    [
        ("near(facts.film_um, 60.1, 0.1)", True),
        ("near(facts.film_um, 60.2, 0.1)", False),
        ("near(answer.margin, facts.econ, 0.2)", True),
        ("near_rel(facts.film_um, 50.0, 20)", True),
        ("overlap(answer.next_steps, key.kit)", 2),
        ("norm(answer.note)", "it stays, a bit."),
        ("mentions(answer.note, ['stays'])", True),
        ("abs(facts.film_um - 100.0)", 40.0),
        ("len(answer.steps)", 4),
        ("before(answer.steps, 'wash', 'sand')", True),
        ("starts_before(answer.steps, 'sand', 'dry')", True),
        ("after_each(answer.steps, 'sand', 'dry')", False),
        ("answered(answer.margin)", True),
        ("answered(facts.probe_degc)", False),
        ("answered(facts.film_um)", True),
    ],
)
def test_words_mean_what_they_mean_in_the_oracle(ran, rule, wanted):
    assert ran(rule).value == wanted


@pytest.mark.parametrize(
    "rule",
    [
        "near(answer.margin, 3, 1)",
        "near(3, answer.margin, 1)",
        "overlap(answer.next_steps, key.kit)",
        "norm(answer.note) == 'x'",
        "before(answer.steps, 'wash', 'sand')",
        "len(answer.steps)",
    ],
)
def test_what_is_called_on_something_missing_is_unknown(ran, rule):
    assert ran(rule, margin=None, next_steps=None, note=None, steps=None).value is None


def test_the_slack_of_near_is_that_of_the_vocabulary(ran):
    assert ran("near(facts.film_um / 60 + 0.1, 1.0, 0.1)").value is True
    assert ran("near(1.1, 1.0, 0.1)").value is True


def test_orders_on_one_list_share_one_pass(lines):
    text = lines("before(answer.steps, 'wash', 'sand')", "starts_before(answer.steps, 'sand', 'dry')")
    assert len([line for line in text if "places(" in line]) == 1
    assert not [line for line in lines("before(answer.steps, 'wash', 'sand')") if "places(" in line]


def test_a_function_that_fails_leaves_what_was_seen_before(ran):
    found = ran("key.short and facts.film_um > 3 and broken(facts.film_um) > 1")
    assert found.failed == "broken() failed: ZeroDivisionError, the table ends at 40."
    assert len(found.events) == 2


def test_a_lent_function_gets_a_list_as_a_list(schema, case):
    from assessments.rules import Function, bind, check, integer, many, num
    from assessments.rules.compiler import compile_rule

    seen = []
    lent = Function("lent", (many(num()),), integer(), 1, lambda values: seen.append(values) or len(values))
    rule = check("lent([1, 2])", schema, [lent], "any")
    assert compile_rule(rule).values(bind(schema, case)) == (2,)
    assert seen == [[1, 2]]
