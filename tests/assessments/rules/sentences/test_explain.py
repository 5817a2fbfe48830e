import pytest

from assessments.rules import Trace, bind, evaluate, explain


@pytest.fixture
def told(checked, schema, case):
    """The sentences of a rule on the case, answers changed as said."""

    def ask(rule, **answers):
        case["answer"].update(answers)
        result = checked(rule, wants="any")
        assert result.ok, result.errors
        return explain(result, evaluate(result, bind(schema, case))[1], lambda value, unit: f"{value}{unit or ''}")

    return ask


@pytest.mark.parametrize(
    ("rule", "wanted"),
    [
        ("near(answer.dew_point, key.dew_point, 0.5)", "dew point 13.2degc is within 0.5K of 13.6degc"),
        ("near(answer.dew_point, 9, 0.5)", "dew point 13.2degc is not within 0.5K of 9degc"),
        ("near(facts.econ, 3, 1)", "econ 3.0 is within 1 of 3"),
        ("near_rel(facts.film_um, 50, 5)", "film 60.0um is not within 5% of 50um"),
        ("answer.margin >= 3", "margin 2.8K is not at least 3K"),
        ("3 > answer.margin", "3K is over margin 2.8K"),
        ("model.film_um > facts.reserve_um", "film 53.5um is over reserve 40.0um"),
        ("model.film_um < facts.film_um", "film 53.5um is under 60.0um"),
        ("answer.decision == key.decision", "decision wait is wait"),
        ("answer.decision != 'coat_now'", "decision wait is not coat_now"),
        ("answer.decision == 'coat_now'", "decision wait is not coat_now"),
        ("2 <= answer.packs <= 8", "2 is at most packs 2 and packs 2 is at most 8"),
        ("2 <= answer.packs <= 1", "2 is at most packs 2 and packs 2 is not at most 1"),
        ("'fuel_heater' not in answer.next_steps", "fuel_heater is not in next steps"),
        ("answer.decision in ['coat_now', 'wait']", "decision wait is in (coat_now, wait)"),
        ("1 < answer.packs in [2, 3]", "1 is under packs 2 and packs 2 is looked for in (2, 3)"),
        ("not key.short", "short: yes"),
        ("facts.cold", "cold: no"),
        ("answered(answer.margin)", "margin is answered"),
        ("answered(facts.probe_degc)", "probe is not known"),
        ("before(answer.steps, 'wash', 'sand')", "the last wash comes before the first sand"),
        ("starts_before(answer.steps, 'sand', 'wash')", "the first sand doesn't come before the first wash"),
        ("after_each(answer.steps, 'sand', 'dry')", "not every sand is followed by dry"),
        ("after_each(answer.steps, 'wash', 'sand')", "every wash is followed by sand"),
        ("mentions(answer.note, ['stays'])", "note mentions the words looked for"),
        ("mentions(answer.note, ['gone'])", "note mentions none of the words looked for"),
        ("norm(answer.note) == 'it stays'", "note it stays, a bit. is not it stays"),
        ("every(s.wet for s in answer.steps if s.um > 1)", "all 2 of steps fit"),
        ("any(s.um > 9 for s in answer.steps)", "none of 4 in steps fits"),
        ("any(s.um > 9 for s in answer.steps if s.n > 9)", "there is nothing to look at in steps"),
        ("facts.film_um - model.film_um < 5", "film − film 6.5um is not under 5um"),
        ("-answer.margin < 0", "−margin -2.8K is under 0K"),
        ("overlap(answer.next_steps, key.kit) == 2", "overlap of next steps and kit 2 is 2"),
        ("abs(answer.margin) > 3", "abs of margin 2.8K is not over 3K"),
        ("(2 if facts.cold else 3) == answer.packs", "3 is not packs 2"),
        ("(answer.packs if facts.cold else key.packs) == 2", "this 2 is 2"),
    ],
)
def test_what_was_compared_is_told_in_a_sentence(told, rule, wanted):
    assert told(rule)[-1] == wanted


@pytest.mark.parametrize(
    ("rule", "wanted"),
    [
        ("any(s.wet for s in answer.steps)", ["item 2 of steps fits", "wet: yes"]),
        ("every(s.um > 1 for s in answer.steps)", ["item 1 of steps does not fit", "um 0.0um is not over 1um"]),
        ("every(s.grit > 9 for s in answer.steps)", ["every over steps: item 1 can't be told", "grit is not answered"]),
        ("count(s.wet for s in answer.steps) > 1", ["2 of 4 steps fit", "number of steps 2 is over 1"]),
        (
            "sum(s.um for s in answer.steps) > 1",
            ["the sum of um over 4 steps is 6.5um", "sum over steps 6.5um is over 1um"],
        ),
        (
            "most(s.um for s in answer.steps) > 1",
            ["the most um over 4 steps is 4.0um, item 2", "most of steps 4.0um is over 1um"],
        ),
        (
            "sum(s.um for s in answer.steps if s.op == 'wash') > 1",
            ["the sum of um over one of steps is 0.0um", "sum over steps 0.0um is not over 1um"],
        ),
        ("every(not s.wet for s in answer.steps if s.op == 'wash')", ["the only one looked at in steps fits"]),
        ("any(s.wet for s in answer.steps if s.op == 'wash')", ["the only one looked at in steps does not fit"]),
        ("least(s.um for s in answer.steps if s.n > 9) > 1", ["no steps", "least of steps is not answered"]),
        ("dew_point(facts.air_degc, facts.air_rh) > 99", None),
    ],
)
def test_how_a_quantifier_came_out_is_told_with_the_item_that_decided(told, rule, wanted):
    found = told(rule)
    if wanted is None:
        assert found[0].startswith("dew point of air and air rh is 13.2")
    else:
        assert found == wanted


@pytest.mark.parametrize(
    ("rule", "wanted"),
    [
        ("near(answer.dew_point, key.dew_point, 0.5)", "dew point is not answered"),
        ("near(key.dew_point, answer.dew_point, 0.5)", "dew point is not answered"),
        ("answer.margin > 3", "margin is not answered"),
        ("3 > answer.margin", "margin is not answered"),
        ("'tell_owner' in answer.next_steps", "next steps is not answered"),
        ("any(s.wet for s in answer.steps)", "steps is not answered"),
        ("before(answer.steps, 'wash', 'sand')", "steps is not answered"),
        ("after_each(answer.steps, 'wash', 'sand')", "steps is not answered"),
        ("mentions(answer.note, ['a'])", "note is not answered"),
        ("answered(answer.margin)", "margin is not answered"),
        ("answer.sure", "sure is not answered"),
        ("broken(answer.margin) > 3", "broken of margin is not answered"),
    ],
)
def test_what_was_not_answered_is_told(told, rule, wanted):
    nothing = dict.fromkeys(["dew_point", "margin", "next_steps", "steps", "note", "sure"])
    assert told(rule, **nothing)[-1] == wanted


def test_a_function_without_an_answer_is_told(told):
    assert told("dew_point(facts.air_degc, 0) > 3")[0] == "dew point of air and 0 is not known"


def test_a_trace_that_was_cut_says_so(checked):
    assert explain(checked("answer.sure"), Trace(((1, True),), cut=True)) == ["sure: yes", "and more that was not kept"]


@pytest.mark.parametrize(
    ("rule", "wanted"),
    [
        ("any(s.wet for s in answer.steps)", ["step 2 (sand) fits", "wet: yes"]),
        ("every(s.um > 1 for s in answer.steps)", ["step 1 (wash) does not fit", "um 0.0um is not over 1um"]),
        (
            "every(s.grit > 9 for s in answer.steps)",
            ["every over steps: step 1 (wash) can't be told", "grit is not answered"],
        ),
        (
            "most(s.um for s in answer.steps) > 1",
            ["the most um over 4 steps is 4.0um, step 2 (sand)", "most of steps 4.0um is over 1um"],
        ),
        ("every(k in key.kit for k in answer.next_steps)", ["all 2 of next steps fit"]),
        ("before(answer.steps, 'wash', 'sand')", ["the last wash (step 1) comes before the first sand (step 2)"]),
        (
            "starts_before(answer.steps, 'sand', 'wash')",
            ["the first sand (step 2) doesn't come before the first wash (step 1)"],
        ),
        ("before(answer.steps, 'wash', 'coat')", ["there is no coat"]),
        ("before(answer.steps, 'coat', 'cut')", ["there is no coat and no cut"]),
        ("after_each(answer.steps, 'sand', 'dry')", ["not every sand is followed by dry: step 4 is not"]),
        ("after_each(answer.steps, 'wash', 'sand')", ["every wash is followed by sand"]),
        (
            "any(k == 'tell_owner' for k in answer.next_steps)",
            ["next step tell owner fits", "next step tell_owner is tell_owner"],
        ),
    ],
)
def test_with_the_case_the_item_that_decided_is_named(checked, schema, case, rule, wanted):
    found, bound = checked(rule), bind(schema, case)
    said = explain(found, evaluate(found, bound)[1], lambda value, unit: f"{value}{unit or ''}", bound)
    assert said == wanted
