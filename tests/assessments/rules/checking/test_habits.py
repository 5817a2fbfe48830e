"""The habits of a rule, each broken and each kept; common practice of those who write marking rules, no source."""

import pytest

from assessments.rules import Rule, RuleBook, prepare

OWN = (
    "This list is the trainee's own, and an empty one meets the rule; "
    "walk the key's list, or ask for an item with any() or len() as well."
)
UNORDERED = (
    "This is not met when 'wash' or 'sand' was left out; where one may be, "
    "write not any(s.op == 'sand' for s in answer.steps) or before it."
)
UNDONE = (
    "This is met when nothing was done; "
    "ask for the act as well: any(s.op == 'sand' for s in answer.steps) and before it."
)
UNFOLLOWED = "This is met when there is no 'sand'; ask for one with any() or count() as well."
UNBACKED = "This is met when no item is there with s.op == 'sand'; ask for one with any() or count() as well."


@pytest.fixture
def in_a_book(schema):
    """The warnings of a book whose rules have these tests, each as code and message."""

    def ask(*tests, when=None):
        rules = [
            Rule(f"COA-01.{n}", "S", "points", 1, "B", "practice", test=test, when=when if n == 1 else None)
            for n, test in enumerate(tests, 1)
        ]
        return [
            (each.code, each.fault.message) for each in prepare(RuleBook("COA-01", 1, tuple(rules)), schema).warnings
        ]

    return ask


@pytest.mark.parametrize(
    ("rule", "part"),
    [
        ("every(d in key.kit for d in answer.next_steps)", "answer.next_steps"),
        ("every(s.wet for s in answer.steps)", "answer.steps"),
        ("every(s.um <= 6 for s in answer.steps) and answer.sure", "answer.steps"),
        (
            "every(d in key.kit for d in answer.next_steps) and count(s.wet for s in answer.steps) > 1",
            "answer.next_steps",
        ),
        ("not any(s.wet for s in answer.steps) and every(s.um > 1 for s in answer.steps)", "answer.steps"),
        ("overlap(answer.next_steps, key.kit) == len(answer.next_steps)", "answer.next_steps"),
        ("count(d in key.kit for d in answer.next_steps) >= len(answer.next_steps)", "answer.next_steps"),
    ],
)
def test_a_rule_that_walks_only_the_trainees_own_list_is_warned_of(warned, rule, part):
    assert warned(rule) == [(part, OWN)]


@pytest.mark.parametrize(
    "rule",
    [
        "every(k in answer.next_steps for k in key.kit)",
        "every(d in key.kit for d in answer.next_steps) and len(answer.next_steps) > 0",
        "every(d in key.kit for d in answer.next_steps) and 'tell_owner' in answer.next_steps",
        "every(s.wet for s in answer.steps) and any(s.um > 1 for s in answer.steps)",
        "len(answer.steps) == 0 or every(s.wet for s in answer.steps)",
        "not any(d in key.kit for d in answer.next_steps)",
        "every(d not in key.kit for d in answer.next_steps)",
        "every(not s.wet and s.op != 'cut' for s in answer.steps)",
        "every(count(t.wet for t in answer.steps) == 0 for s in answer.steps)",
        "not every(s.wet for s in answer.steps)",
        "count(d not in key.kit for d in answer.next_steps) <= 2",
        "overlap(answer.next_steps, key.kit) == 0",
        "overlap(answer.next_steps, key.kit) == len(key.kit)",
    ],
)
def test_a_rule_that_walks_the_keys_list_or_bans_is_not(warned, rule):
    assert warned(rule) == []


@pytest.mark.parametrize(
    ("rule", "part", "said"),
    [
        ("before(answer.steps, 'wash', 'sand')", "before(answer.steps, 'wash', 'sand')", UNORDERED),
        ("True and before(answer.steps, 'wash', 'sand')", "before(answer.steps, 'wash', 'sand')", UNORDERED),
        ("starts_before(answer.steps, 'wash', 'sand')", "starts_before(answer.steps, 'wash', 'sand')", UNORDERED),
        ("not starts_before(answer.steps, 'dry', 'sand')", "starts_before(answer.steps, 'dry', 'sand')", UNDONE),
        ("not before(answer.steps, 'dry', 'sand')", "before(answer.steps, 'dry', 'sand')", UNDONE),
        ("after_each(answer.steps, 'sand', 'dry')", "after_each(answer.steps, 'sand', 'dry')", UNFOLLOWED),
    ],
)
def test_an_order_of_steps_that_may_be_absent_is_warned_of(warned, rule, part, said):
    assert warned(rule) == [(part, said)]


@pytest.mark.parametrize(
    "rule",
    [
        "not any(s.op == 'sand' for s in answer.steps) or before(answer.steps, 'wash', 'sand')",
        "not any(s.op in ['sand', 'cut'] for s in answer.steps) or before(answer.steps, 'wash', 'sand')",
        "any(s.op == 'sand' for s in answer.steps) and before(answer.steps, 'wash', 'sand')",
        "any(s.op == 'sand' for s in answer.steps) and not starts_before(answer.steps, 'dry', 'sand')",
        "count(s.op == 'sand' for s in answer.steps) > 1 and after_each(answer.steps, 'sand', 'dry')",
        "not after_each(answer.steps, 'sand', 'dry')",
    ],
)
def test_an_order_beside_what_asks_for_or_leaves_out_the_act_is_not(warned, rule):
    assert warned(rule) == []


@pytest.mark.parametrize("act", ["wash", "cut"])
def test_an_order_is_settled_only_by_one_of_its_own_acts(warned, act):
    rule = f"any(s.op == '{act}' for s in answer.steps) and before(answer.steps, 'wash', 'sand')"
    assert [said for _, said in warned(rule)] == ([] if act == "wash" else [UNORDERED])


def test_the_same_habit_broken_twice_is_told_twice(warned):
    rule = " or ".join(f"every(s.{test} for s in answer.steps if s.op == 'sand')" for test in ("wet", "um > 1"))
    assert [said for _, said in warned(rule)] == [UNBACKED, UNBACKED]


def test_what_one_rule_asks_for_settles_the_others_of_its_book(in_a_book):
    asking = "any(s.op == 'sand' for s in answer.steps)"
    sanded = "every(s.wet for s in answer.steps if s.op == 'sand')"
    broken = [sanded, "every(s.um > 1 for s in answer.steps)", "after_each(answer.steps, 'sand', 'dry')"]
    assert in_a_book(*broken) == [("COA-01.1", UNBACKED), ("COA-01.2", OWN), ("COA-01.3", UNFOLLOWED)]
    assert in_a_book(*broken, asking) == []


def test_a_ban_an_alternative_or_an_order_settles_nothing_in_another_rule(in_a_book):
    sanded = "every(s.wet for s in answer.steps if s.op == 'sand')"
    assert in_a_book(sanded, "not any(s.op == 'sand' for s in answer.steps)") == [("COA-01.1", UNBACKED)]
    assert in_a_book(sanded, "answer.sure or any(s.op == 'sand' for s in answer.steps)") == [("COA-01.1", UNBACKED)]
    orders = ["before(answer.steps, 'wash', 'sand')", "before(answer.steps, 'sand', 'wipe')"]
    assert len(in_a_book(*orders)) == 2
    assert in_a_book(sanded, orders[0]) == [("COA-01.2", UNORDERED)]


def test_a_guard_settles_its_own_rule_and_no_other(in_a_book):
    sanded = "every(s.wet for s in answer.steps if s.op == 'sand')"
    asking = "any(s.op == 'sand' for s in answer.steps)"
    assert in_a_book(sanded, when=asking) == []
    assert in_a_book("answer.sure", sanded, when=asking) == [("COA-01.2", UNBACKED)]


def test_a_guard_takes_nothing_for_granted(in_a_book):
    assert in_a_book("answer.sure", when="before(answer.steps, 'wash', 'sand')") == []


def test_a_word_without_its_values_brings_no_habit(checked):
    for rule in ("before()", "after_each(answer.steps)", "len()", "after_each(answer.steps, answer.note, 'dry')"):
        assert checked(rule).warnings == ()


def test_lists_that_are_not_the_trainees_are_no_habit_of_theirs(warned):
    assert warned("every(k != 'log_meter' or answer.sure for k in key.kit)") == []
