import re
from itertools import product

import pytest

from assessments.rules import Schema, Trace, bind, check, evaluate, truth, unlooked


@pytest.fixture
def left_out(checked, schema, case):
    """What a rule never looked at on the case, answers changed as said."""

    def ask(rule, wants="bool", named=False, **answers):
        case["answer"].update(answers)
        found = checked(rule, wants)
        assert found.ok, found.errors
        bound = bind(schema, case)
        trace = evaluate(found, bound)[1]
        return unlooked(found, trace, lambda value, unit: f"{value} {unit}", bound if named else None)

    return ask


@pytest.mark.parametrize(
    ("rule", "wanted"),
    [
        ("answer.decision == 'wait'", []),
        ("answer.decision == 'wait' and answer.margin > 1", []),
        (
            "answer.decision == 'coat_now' and answer.margin > 3",
            ["not looked at: the margin, because the decision settled it"],
        ),
        (
            "answer.decision == 'wait' or answer.margin > 3 or near(answer.dew_point, key.dew_point, 1)",
            ["not looked at: the margin and the dew point, because the decision settled it"],
        ),
        ("facts.cold and answer.margin > 3", ["not looked at: the margin, because the cold settled it"]),
        ("not facts.cold or answer.margin > 3", ["not looked at: the margin, because the cold settled it"]),
        (
            "answer.decision == 'wait' or answer.decision == 'coat_now'",
            ["not looked at: what else is asked of the decision, because that settled it"],
        ),
        (
            "(facts.cold or answer.margin > 3) and (answer.packs > 3 or key.short)",
            ["not looked at: the packs and the short, because the cold and the margin settled it"],
        ),
        (
            "not (facts.cold and answer.margin > 3) or answer.packs > 3",
            [
                "not looked at: the margin, because the cold settled it",
                "not looked at: the packs, because the cold and the margin settled it",
            ],
        ),
        ("True or answer.margin > 3", ["not looked at: the margin, because the rest settled it"]),
        (
            "facts.cold and (answer.margin > 3 and answer.packs > 3 and answer.sure and answered(answer.note)"
            " and key.short)",
            ["not looked at: the margin, the packs, the sure and more, because the cold settled it"],
        ),
        ("2 <= answer.packs <= 1", []),
        ("5 <= answer.packs <= 8", ["not looked at: 8 None, because the comparison before it settled it"]),
        ("5 <= answer.margin <= 8 <= 9", ["not looked at: 8 K and 9 K, because the comparison before it settled it"]),
        ("9 < answer.packs < key.packs", ["not looked at: the packs, because the comparison before it settled it"]),
        (
            "5 <= facts.econ + 1 <= count(s.wet for s in answer.steps)",
            ["not looked at: the steps, because the comparison before it settled it"],
        ),
        ("3 > 5 > 4", ["not looked at: 4 None, because the comparison before it settled it"]),
        (
            "answer.packs > 3 if facts.cold else answer.margin > 3",
            ["not looked at: the packs, because the cold settled it"],
        ),
        (
            "(answer.packs if key.short else 3) == 3",
            ["not looked at: the rest, because the short settled it"],
        ),
        (
            "any(s.wet for s in answer.steps)",
            ["not looked at: what comes after item 2 in steps, because item 2 settled it"],
        ),
        (
            "every(s.wet and s.um > 3 for s in answer.steps)",
            [
                "not looked at: what comes after item 1 in steps, because item 1 settled it",
                "not looked at: the um, because the wet settled it",
            ],
        ),
        ("every(s.um >= 0 for s in answer.steps)", []),
        ("most(s.um for s in answer.steps) > 1", []),
        ("every(s.grit > 9 for s in answer.steps)", []),
        ("-(2 if facts.cold else 3) * 2 < 0", ["not looked at: the rest, because the cold settled it"]),
        (
            "(facts.cold if key.short else answer.sure) and answer.packs > 3",
            [
                "not looked at: the sure, because the short settled it",
                "not looked at: the packs, because the short, the cold and the sure settled it",
            ],
        ),
        (
            "not (facts.cold if key.short else answer.sure) or not (not facts.cold or answer.sure) or answer.packs > 3",
            [
                "not looked at: the sure, because the short settled it",
                "not looked at: the cold, the sure and the packs, because the short, the cold and the sure settled it",
            ],
        ),
        (
            "((facts.cold if key.short else answer.sure) or answer.margin > 9) and answer.packs > 3",
            [
                "not looked at: the sure, because the short settled it",
                "not looked at: the packs, because the short, the cold, the sure and the margin settled it",
            ],
        ),
        ("facts.cold and -answer.margin + 1 < 0", ["not looked at: the margin, because the cold settled it"]),
        ("facts.cold and not key.short", ["not looked at: the short, because the cold settled it"]),
        (
            "facts.cold and dew_point(facts.air_degc, 65) > 3",
            ["not looked at: the air, because the cold settled it"],
        ),
    ],
)
def test_what_was_never_looked_at_is_said_with_what_settled_it(left_out, rule, wanted):
    assert left_out(rule) == wanted


def test_a_share_leaves_out_the_branch_that_was_not_taken(left_out):
    assert left_out("1 if answered(answer.margin) else 0.5", wants="num") == [
        "not looked at: the rest, because the margin settled it"
    ]


def test_with_the_case_the_item_that_decided_is_named_and_the_end_of_its_list_known(left_out):
    assert left_out("any(s.wet for s in answer.steps)", named=True) == [
        "not looked at: what comes after step 2 (sand) in steps, because step 2 (sand) settled it"
    ]
    assert left_out("any(s.n == 4 for s in answer.steps)", named=True) == []


def test_what_is_unknown_settles_nothing(left_out):
    assert left_out("answer.margin > 3 and answer.packs > 3", margin=None) == []
    assert left_out("not answer.margin > 3 or answer.packs > 3", margin=None, packs=None) == []
    assert left_out("any(s.wet for s in answer.steps)", steps=None) == []


def test_a_list_that_was_not_answered_leaves_the_rest_to_be_looked_at(left_out):
    assert left_out("any(s.wet for s in answer.steps) and not facts.cold", steps=None) == []


def test_where_a_test_of_an_if_broke_off_no_branch_is_spoken_of(left_out):
    assert left_out("facts.cold if broken(3) > 3 else key.short") == []
    assert left_out("1 if broken(3) > 3 else 0", wants="num") == []
    assert left_out("not facts.cold and (facts.cold if broken(3) > 3 else key.short)") == [
        "not looked at: the cold and the short, because the judging broke off before it"
    ]


def test_a_function_that_raised_broke_the_judging_off(left_out):
    assert left_out("not facts.cold and broken(answer.margin) > 3 and answer.packs > 3") == [
        "not looked at: the margin and the packs, because the judging broke off before it"
    ]
    assert left_out("broken(answer.margin) > 3 and answer.packs > 3") == []


def test_a_rule_with_errors_and_a_trace_that_was_cut_tell_nothing(checked):
    assert unlooked(checked("answer.stpes"), Trace()) == []
    assert unlooked(checked("answer.sure"), Trace(((1, True),), cut=True)) == [
        "what was not looked at can't be told, for not all was kept"
    ]


FLAGS = Schema({name: truth() for name in "abcd"})


def formulas(names):
    """Return every formula over these names in their order, as (rule, what it comes to and which names it reads)."""
    if len(names) == 1:
        yield names, lambda case: (case[names], {names})
        yield f"not {names}", lambda case: (not case[names], {names})
        return
    for cut in range(1, len(names)):
        for (one, f), (other, g) in product(formulas(names[:cut]), formulas(names[cut:])):
            for word in ("and", "or"):
                yield f"({one}) {word} ({other})", joined_by(word == "or", f, g)
    if len(names) == 3:
        yield (
            f"{names[1]} if {names[0]} else not {names[2]}",
            lambda case: (
                case[names[1]] if case[names[0]] else not case[names[2]],
                {names[0], names[1] if case[names[0]] else names[2]},
            ),
        )


def joined_by(decides, f, g):
    """Return Python's own `and` or `or` of two formulas: the second is read where the first doesn't decide."""

    def run(case):
        value, read = f(case)
        if value is decides:
            return value, read
        other, more = g(case)
        return other, read | more

    return run


def test_exactly_what_python_itself_would_not_read_is_left_out():
    tried = 0
    for rule, run in formulas("abcd"):
        checked = check(rule, FLAGS)
        for values in product([False, True], repeat=4):
            case = dict(zip("abcd", values, strict=True))
            value, read = run(case)
            found, trace = evaluate(checked, case)
            said = " ".join(each.split(", because")[0] for each in unlooked(checked, trace))
            assert (found, set(re.findall(r"the (\w)\b", said))) == (value, set("abcd") - read), (rule, case)
            tried += 1
    assert tried > 10_000
