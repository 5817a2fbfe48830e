"""Every row of the semantics the engine promises, one test a row; docs/rulebook.md prints the same rows."""

import pytest

from assessments.rules import (
    CaseRefused,
    Function,
    Rule,
    RuleBook,
    Schema,
    bind,
    check,
    evaluate,
    integer,
    judge,
    num,
    prepare,
)
from assessments.rules.vocabulary import near


@pytest.fixture
def marked(schema, functions, case):
    """The mark of a book of one rule of two points, answers changed as said."""

    def ask(test, severity="points", when=None, rests=None, **answers):
        rule = Rule("COA-01.1", "S", severity, 2, "B", "practice", test=test, when=when)
        case["answer"].update(answers)
        return judge(prepare(RuleBook("COA-01", 1, (rule,)), schema, functions, rests), case)

    return ask


@pytest.fixture
def found_of(marked):
    """Verdict and points of that one rule, and whether it judged at all."""

    def ask(test, **more):
        (finding,) = marked(test, **more).findings
        return finding.verdict, finding.points, finding.failed is None

    return ask


def steps(*ops):
    return [{"n": place, "op": op, "um": 1.0, "wet": True} for place, op in enumerate(ops, 1)]


@pytest.mark.parametrize(
    "rule",
    [
        "answer.margin + 1 > 2",
        "answer.margin > 2",
        "2 < answer.margin",
        "-answer.margin < 0",
        "near(answer.margin, 3, 1)",
        "not answer.margin > 2",
        "facts.film_um / (facts.film_um - facts.film_um) > 1",
        "1 / 0 > 1",
        "dew_point(facts.air_degc, facts.air_rh - facts.air_rh) > 3",
    ],
)
def test_what_is_worked_from_something_missing_is_unknown(value, rule):
    assert value(rule, margin=None) is None


def test_an_absent_optional_answer_is_unknown_and_so_is_null(value, case):
    assert value("answer.margin > 2", margin=None) is None
    del case["answer"]["margin"]
    assert value("answer.margin > 2") is None


@pytest.mark.parametrize(
    ("rule", "wanted"),
    [
        ("answer.sure and 1 > 2", False),
        ("1 > 2 and answer.sure", False),
        ("answer.sure or 2 > 1", True),
        ("2 > 1 or answer.sure", True),
        ("answer.sure and 2 > 1", None),
        ("answer.sure or 1 > 2", None),
        ("not answer.sure", None),
    ],
)
def test_logic_is_that_of_kleene(value, rule, wanted):
    assert value(rule, sure=None) is wanted


@pytest.mark.parametrize(
    ("sure", "wanted"), [(True, ("met", 2, True)), (False, ("not_met", 0, True)), (None, ("not_answered", 0, True))]
)
def test_a_verdict_is_met_not_met_or_not_answered_and_unknown_is_never_wrong(found_of, sure, wanted):
    assert found_of("answer.sure", sure=sure) == wanted


@pytest.mark.parametrize(("sure", "outcome"), [(False, "critical_fail"), (None, "cannot_certify")])
def test_a_critical_rule_that_is_unknown_cannot_certify_and_fails_nobody(marked, sure, outcome):
    assert marked("answer.sure", severity="critical", sure=sure).outcome == outcome


def test_answered_is_never_unknown(value):
    assert value("answered(answer.margin)") is True
    assert value("answered(answer.margin)", margin=None) is False


@pytest.mark.parametrize(
    ("rule", "wanting"),
    [
        ("any(s.wet for s in answer.steps if s.grit > 3)", "s.grit > 3"),
        ("count(s.grit > 3 for s in answer.steps) > 1", "s.grit > 3"),
        ("sum(s.grit for s in answer.steps) > 1", "s.grit"),
        ("least(s.grit for s in answer.steps) > 1", "s.grit"),
        ("most(s.grit for s in answer.steps) > 1", "s.grit"),
        ("2 > (1 if answer.sure else 3)", "answer.sure"),
    ],
)
def test_answered_comes_first_where_a_field_may_be_missing(found, rule, wanting):
    ((part, _, offered),) = found(rule)
    assert (part, offered) == (wanting, "answered")
    asked = f"answered({wanting.partition(' ')[0]}) and {wanting}"
    mended = {"s.grit": f"{wanting} for s in answer.steps if answered(s.grit)"}.get(wanting)
    sound = rule.replace(f"{wanting} for s in answer.steps", mended) if mended else rule.replace(wanting, asked)
    assert found(sound) == []


def test_any_and_every_may_test_what_is_missing_in_an_item(found):
    assert found("every(s.grit > 3 for s in answer.steps)") == found("any(s.grit > 3 for s in answer.steps)") == []


def test_an_unanswered_record_makes_every_field_of_it_unknown(value):
    assert value("answer.schedule.place == 'bay'", schedule=None) is None
    assert value("answered(answer.schedule.place)", schedule=None) is False


@pytest.mark.parametrize(
    "rule",
    [
        "every(s.wet for s in answer.steps)",
        "any(s.wet for s in answer.steps)",
        "count(s.wet for s in answer.steps) == 0",
        "sum(s.um for s in answer.steps) == 0",
        "least(s.um for s in answer.steps) < 1",
        "most(s.um for s in answer.steps) > 1",
        "overlap(answer.next_steps, key.kit) == 0",
        "'tell_owner' in answer.next_steps",
        "'tell_owner' not in answer.next_steps",
        "before(answer.steps, 'wash', 'sand')",
        "starts_before(answer.steps, 'wash', 'sand')",
        "after_each(answer.steps, 'sand', 'dry')",
        "len(answer.steps) == 0",
    ],
)
def test_whatever_walks_an_unanswered_list_is_unknown(value, rule):
    assert value(rule, steps=None, next_steps=None) is None


@pytest.mark.parametrize(
    ("rule", "wanted"),
    [
        ("every(s.wet for s in answer.steps)", True),
        ("any(s.wet for s in answer.steps)", False),
        ("count(s.wet for s in answer.steps)", 0),
        ("sum(s.um for s in answer.steps)", 0),
        ("least(s.um for s in answer.steps)", None),
        ("'tell_owner' in answer.next_steps", False),
        ("overlap(answer.next_steps, key.kit)", 0),
        ("before(answer.steps, 'wash', 'sand')", False),
        ("after_each(answer.steps, 'sand', 'dry')", True),
    ],
)
def test_an_empty_list_is_an_answer(value, rule, wanted):
    assert value(rule, steps=[], next_steps=[]) == wanted


def test_a_false_that_rests_only_on_answered_of_something_not_answered_is_not_answered(found_of):
    rule = "answered(answer.margin) and answer.margin > 2"
    assert found_of(rule, margin=None) == ("not_answered", 0, True)
    assert found_of(f"{rule} and key.packs == 3", margin=None) == ("not_met", 0, True)


@pytest.mark.parametrize(
    ("sure", "wanted"),
    [(True, ("met", 2, True)), (False, ("not_applicable", 0, True)), (None, ("not_answered", 0, True))],
)
def test_a_guard_that_is_false_takes_the_rule_out_and_one_that_is_unknown_leaves_it_not_answered(
    found_of, sure, wanted
):
    assert found_of("answer.packs == 2", when="answer.sure", sure=sure) == wanted


def test_a_rule_that_is_unknown_though_everything_was_answered_failed_to_judge(marked, found_of):
    rule = "answer.margin / (answer.margin - answer.margin) > 1"
    assert found_of(rule) == ("not_answered", 0, False)
    assert (marked(rule).failed, marked(rule).outcome) == (("COA-01.1",), "cannot_certify")


def test_a_function_that_raises_leaves_its_rule_alone_failed_to_judge(marked):
    mark = marked("broken(answer.margin) > 1")
    assert (mark.failed, mark.outcome) == (("COA-01.1",), "cannot_certify")


def test_a_rule_on_the_model_is_not_answered_while_the_answer_it_was_worked_from_is_not(found_of):
    rests = {"model": ["answer.steps"]}
    assert found_of("model.film_um > 40", rests=rests) == ("met", 2, True)
    assert found_of("model.film_um > 40", rests=rests, steps=None) == ("not_answered", 0, True)


def test_a_filtered_every_that_nothing_backs_is_warned_of(warned):
    rule = "every(s.wet for s in answer.steps if s.op == 'sand')"
    assert [part for part, _ in warned(rule)] == [rule]
    assert warned(f"{rule} and any(s.op == 'sand' for s in answer.steps)") == []


@pytest.mark.parametrize(
    ("grits", "every", "some"),
    [
        ([1500, 2000], True, True),
        ([1500, None], None, True),
        ([None, 80], False, None),
        ([80, 120], False, False),
        ([None, None], None, None),
    ],
)
def test_a_quantifier_over_unknowns_is_settled_by_one_that_decides(value, grits, every, some):
    walked = [{"n": 1, "op": "sand", "um": 1.0, "wet": True, "grit": grit} for grit in grits]
    assert value("every(s.grit >= 1000 for s in answer.steps)", steps=walked) is every
    assert value("any(s.grit >= 1000 for s in answer.steps)", steps=walked) is some


def test_whole_numbers_and_fractions_mix_and_a_quotient_is_a_fraction(value):
    assert value("answer.packs + 0.5") == 2.5
    assert value("answer.packs / 2") == 1.0
    assert isinstance(value("answer.packs / 2"), float)


@pytest.mark.parametrize("value_", [float("nan"), float("inf"), -float("inf"), 1e13, True, "3"])
def test_nothing_infinite_enters_and_no_yes_for_a_number(value_):
    with pytest.raises(CaseRefused, match="^n: "):
        bind(Schema({"n": num()}), {"n": value_})


def test_yes_is_not_the_number_one(found):
    assert found("answer.sure == 1") == [("1", "Yes/no can't be compared with a whole number.", None)]
    assert found("answer.sure + 1 > 1") == [("answer.sure", "'+' needs numbers; this is yes/no.", None)]


def test_equality_with_a_fraction_warns_that_near_is_meant(warned):
    ((part, said),) = warned("answer.margin == 2.8")
    assert part == "2.8"
    assert "near(…, 2.8, tolerance) is meant" in said
    assert warned("answer.margin == 3.0") == []


def test_a_tolerance_includes_its_limit_in_spite_of_binary_fractions():
    # IEEE 754 binary64: 1.1 - 1.0 is 0.10000000000000009, 0.3 - 0.2 is 0.09999999999999998 (computed by CPython)
    assert abs(1.1 - 1.0) > 0.1
    assert near(1.1, 1.0, 0.1)
    assert near(0.2, 0.3, 0.1)
    assert not near(1.1001, 1.0, 0.1)


def test_near_rel_is_in_per_cent_of_the_second_value(value):
    assert value("near_rel(105, 100, 5)") is True
    assert value("near_rel(106, 100, 5)") is False
    assert value("near_rel(100, 105, 5)") is True


def test_a_computed_value_is_rounded_to_its_step_before_it_is_compared(shape, case):
    shape["fields"]["model"]["fields"]["film_um"]["step"] = 0.1
    schema = Schema.of(shape)
    case["model"]["film_um"] = 39.96
    rule = check("model.film_um >= facts.reserve_um", schema)
    assert evaluate(rule, bind(schema, case))[0] is True


def test_units_are_compared_and_compounded(found):
    assert found("facts.rate * facts.area_m2 > 30") == []
    assert found("facts.film_um > facts.air_rh") == [
        ("facts.air_rh", "This is in rh, but the left side is in um.", None),
    ]


def test_a_number_written_in_the_rule_takes_the_unit_of_the_other_side(found):
    for rule in ("facts.film_um > 40", "40 < facts.film_um", "facts.film_um + 3 > 40", "near(facts.film_um, 40, 5)"):
        assert found(rule) == []
    assert found("facts.film_um + 3 > facts.air_rh") == [
        ("facts.air_rh", "This is in rh, but the left side is in um.", None),
    ]


@pytest.mark.parametrize(
    ("rule", "left"),
    [
        ("facts.rate * facts.area_m2", "ml"),
        ("facts.area_m2 * facts.rate", "ml"),
        ("facts.film_um / facts.film_um", "a pure number"),
        ("facts.film_um * facts.film_um", "um2"),
        ("facts.film_um / facts.area_m2 * facts.area_m2", "um"),
        ("facts.area_m2 / answer.schedule.at_h", "m2/h"),
    ],
)
def test_a_product_and_a_quotient_make_compound_units(found, rule, left):
    assert found(f"{rule} > facts.air_rh") == [
        ("facts.air_rh", f"This is in rh, but the left side is in {left}.", None),
    ]


@pytest.mark.parametrize(
    ("rule", "sound"),
    [
        ("facts.panel_degc - answer.dew_point >= answer.margin", True),
        ("answer.dew_point + answer.margin <= facts.panel_degc", True),
        ("answer.margin + answer.dew_point <= facts.panel_degc", True),
        ("facts.panel_degc - answer.margin >= answer.dew_point", True),
        ("facts.panel_degc - 3 >= answer.dew_point", True),
        ("facts.panel_degc + answer.dew_point > 3", False),
        ("answer.margin - facts.panel_degc > 3", False),
        ("facts.panel_degc - answer.dew_point >= facts.panel_degc", False),
        ("facts.panel_degc > answer.margin", False),
    ],
)
def test_a_difference_of_temperatures_is_no_temperature(checked, rule, sound):
    assert checked(rule).ok is sound


def test_a_choice_is_compared_with_its_own_words(found):
    assert found("answer.decision == 'wiat'") == [
        (
            "'wiat'",
            "'wiat' is none of the choices coat_now, wait, warm_the_panel, measure_again; did you mean 'wait'?",
            "wait",
        ),
    ]


def test_free_text_goes_through_norm(value, warned):
    assert value("norm(answer.note) == 'it stays, a bit.'") is True
    assert value("norm(answer.note) in ['leave it', 'it stays, a bit.']") is True
    assert warned("answer.note == 'it stays'")[0][0] == "answer.note"
    assert warned("answer.note in ['it stays']")[0][0] == "answer.note"
    assert warned("norm(answer.note) == 'it stays'") == []


def test_mentions_looks_for_whole_words(value):
    assert value("mentions(answer.note, ['stays', 'left'])") is True
    assert value("mentions(answer.note, ['stay'])") is False


@pytest.mark.parametrize("rule", ["answer.note < 'b'", "answer.decision > 'wait'", "answer.sure > False"])
def test_only_numbers_have_an_order(found, rule):
    assert found(rule)[0][1].startswith("Only numbers have an order")


@pytest.mark.parametrize(
    ("ops", "before", "starts", "each"),
    [
        (["wash", "sand", "dry"], True, True, True),
        (["sand", "dry", "wash"], False, False, True),
        (["wash", "sand", "wash", "dry"], False, True, False),
        (["wash"], False, False, True),
        (["wash", "sand"], True, True, False),
    ],
)
def test_order_is_told_by_place(value, ops, before, starts, each):
    assert value("before(answer.steps, 'wash', 'sand')", steps=steps(*ops)) is before
    assert value("starts_before(answer.steps, 'wash', 'sand')", steps=steps(*ops)) is starts
    assert value("after_each(answer.steps, 'sand', 'dry')", steps=steps(*ops)) is each


def test_a_pick_list_counts_each_pick_once(value):
    assert value("overlap(answer.next_steps, key.kit)", next_steps=["tell_owner", "tell_owner"]) == 1


@pytest.mark.parametrize(("packs", "wanted"), [(2, False), (3, True), (8, True), (9, False), (None, None)])
def test_a_chain_of_comparisons_means_all_of_them(value, packs, wanted):
    assert value("3 <= answer.packs <= 8", packs=packs) is wanted


def test_each_part_of_a_chain_is_worked_out_once(schema, case):
    seen = []
    counted = Function("counted", (integer(),), integer(), 1, lambda n: seen.append(n) or n)
    rule = check("1 <= counted(answer.packs) <= 8", schema, [counted])
    assert evaluate(rule, bind(schema, case))[0] is True
    assert seen == [2]


def test_a_chain_is_decided_by_a_link_that_fails_beside_an_unknown_one(value):
    assert value("answer.margin < 9 < 8", margin=None) is False


def test_what_stands_behind_a_decision_is_not_looked_at(checked, schema, case):
    rule = checked("facts.cold and broken(1) > 0")
    assert evaluate(rule, bind(schema, case))[0] is False


def test_the_trace_shows_only_what_was_looked_at_from_left_to_right(checked, schema, case):
    rule = checked("answer.sure or answer.packs > 1 or answer.margin > 2")
    case["answer"]["sure"] = False
    _, trace = evaluate(rule, bind(schema, case))
    assert [rule.said(rule.nodes[event[0]]) for event in trace.events] == ["answer.sure", "answer.packs > 1"]


def test_an_event_holds_part_result_and_what_was_compared(checked, schema, case):
    rule = checked("answer.packs > 1 and any(s.um > 3 for s in answer.steps)")
    _, trace = evaluate(rule, bind(schema, case))
    texts = [(rule.said(rule.nodes[event[0]]), *event[1:]) for event in trace.events]
    assert texts == [
        ("answer.packs > 1", True, 2, 1),
        ("any(s.um > 3 for s in answer.steps)", True, 2, 1),
        ("s.um > 3", True, 4.0, 3),
    ]


def test_a_choice_between_values_needs_a_condition_that_is_there(value, found):
    assert found("answer.packs == (2 if answer.sure else 3)")[0][0] == "answer.sure"
    rule = "answer.packs == (2 if answered(answer.sure) and answer.sure else 3)"
    assert value(rule) is True
    assert value(rule, sure=None) is False
