"""The six classes of mistakes that are caught when a rule is saved, each at its very characters; several at once."""

import pytest

from assessments.rules import Fault, Rule, RuleBook, Schema, check_book, integer, many, record, truth


@pytest.fixture
def faults(checked):
    def ask(rule):
        return checked(rule).errors

    return ask


def test_a_syntax_error_has_its_column(faults):
    assert faults("answer.margin > 3 answer.sure") == (
        Fault("A comma, a sign or a word such as and is missing before this.", 18, 24),
    )
    assert faults("answer.margin >") == (
        Fault("The rule breaks off here; a value, a test or a bracket has to follow.", 15, 15),
    )
    assert faults("norm(answer.note) == 'häß' and answer.margin = 3") == (Fault("Write == to compare.", 45, 46, "=="),)


def test_an_unknown_field_is_told_at_its_name_with_the_near_miss(faults):
    assert faults("answer.stpes") == (Fault("There is no field 'stpes'; did you mean 'steps'?", 7, 12, "steps"),)
    assert faults("any(s.opp == 'sand' for s in answer.steps)") == (
        Fault("There is no field 'opp'; did you mean 'op'?", 6, 9, "op"),
    )


def test_unlike_kinds_are_told_at_the_right_hand_operand(faults):
    assert faults("facts.air_rh > 'x'") == (Fault("A number can't be compared with a text.", 15, 18),)
    assert faults("'x' < facts.air_rh") == (Fault("A text can't be compared with a number.", 6, 18),)


def test_a_misspelt_choice_is_told_at_the_word_with_the_near_miss(faults):
    said = "'snad' is none of the choices wash, tape, sand, dry, inspect, wipe, cut, coat …; did you mean 'sand'?"
    assert faults("any(s.op == 'snad' for s in answer.steps)") == (Fault(said, 12, 18, "sand"),)
    assert faults("any(s.op in ['wash', 'snad'] for s in answer.steps)") == (Fault(said, 21, 27, "sand"),)
    assert faults("not before(answer.steps, 'wash', 'snad')") == (Fault(said, 33, 39, "sand"),)
    assert faults("any('snad' == s.op for s in answer.steps)") == (Fault(said, 4, 10, "sand"),)


def test_a_temperature_against_a_percentage_is_told_at_the_right_hand_operand(faults):
    assert faults("facts.panel_degc > facts.air_rh") == (Fault("This is in rh, but the left side is in degc.", 19, 31),)
    assert faults("facts.panel_degc - facts.air_rh > 3") == (
        Fault("This is in rh, but the left side is in degc.", 19, 31),
    )


def test_a_temperature_against_a_difference_of_temperatures_is_told_at_the_right_hand_operand(faults):
    assert faults("facts.panel_degc > answer.margin") == (Fault("This is in K, but the left side is in degc.", 19, 32),)
    assert faults("facts.panel_degc - facts.air_degc > facts.panel_degc") == (
        Fault("This is in degc, but the left side is in K.", 36, 52),
    )
    assert faults("facts.panel_degc + facts.air_degc > 3") == (
        Fault("Two temperatures can't be added; a temperature and a difference in K can.", 19, 33),
    )


ROWS = many(record({"n": integer(), "wet": truth()}), 60)
TWICE = "every(any(t.n > s.n and t.wet for t in rows) for s in rows)"


@pytest.fixture
def cost():
    """The faults of a book over rows of sixty items, each rule asking the same pair of them so many times over."""

    def ask(*times):
        rules = [
            Rule(f"COA-01.{n}", "S", "points", 1, "B", "practice", test=" and ".join([TWICE] * many_times))
            for n, many_times in enumerate(times, 1)
        ]
        found = check_book(RuleBook("COA-01", 1, tuple(rules)), Schema({"rows": ROWS}))
        return [(each.code, each.fault) for each in found]

    return ask


def test_what_a_rule_can_cost_is_told_over_its_whole_text(cost):
    assert cost(2) == []
    said = "The rule can cost 86767 steps on full lists, 60000 are allowed; walk fewer or shorter lists."
    assert cost(3) == [("COA-01.1", Fault(said, 0, 187))]


def test_what_a_book_can_cost_is_told_of_the_book(cost):
    assert cost(*[2] * 5) == []
    said = "The book can cost 347070 steps on full lists, 300000 are allowed; walk fewer or shorter lists."
    assert cost(*[2] * 6) == [("COA-01", Fault(said))]


def test_several_faults_of_one_rule_are_told_together_each_at_its_place(faults):
    rule = (
        "answer.stpes and facts.air_rh > 'x' and answer.decision == 'wiat' and facts.panel_degc > answer.margin"
        " and facts.film_um > facts.air_rh and naer(answer.qqq, 1, 1)"
    )
    assert [(rule[each.start : each.end], each.suggestion) for each in faults(rule)] == [
        ("stpes", "steps"),
        ("'x'", None),
        ("'wiat'", "wait"),
        ("answer.margin", None),
        ("facts.air_rh", None),
        ("naer", "near"),
        ("qqq", None),
    ]


def test_faults_and_warnings_are_told_together(checked):
    found = checked("answer.margin == 2.5 and answer.stpes")
    assert ([each.start for each in found.errors], [each.start for each in found.warnings]) == ([32], [17])
