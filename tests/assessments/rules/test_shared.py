"""Checking the shared rules: each by itself, against the names all scenarios have in common."""

import pytest

from assessments.rules import (
    BookRefused,
    Fault,
    Function,
    RuleFault,
    check,
    check_shared,
    num,
    points_only,
    read_names,
    read_shared,
    refuse_shared,
)
from assessments.rules.prepare import MAX_BOOK_COST

NAMES = read_names(
    '[facts]\nrh = { t = "num", unit = "rh" }\nair = { t = "enum", vals = ["known", "unknown"] }\n'
    '[answer]\ndecision = { t = "enum", vals = ["coat_now", "wait"] }\nnote = { t = "str" }\n'
)
RULE = '[[rule]]\ncode = "{}"\nsentence = "Right"\ntest = "{}"\nbecause = "So."\nsource = "practice"\n'
SOUND = RULE.format("R21", "answer.decision == 'wait'")
MISSPELT = RULE.format("R22", "answer.decison == 'wait'")
GUARDED = RULE.format("R39", "answer.decision == 'wait'") + "when = \"facts.air != 'knwon'\"\n"
WORDS = RULE.format("R36", "mentions(answer.note, ['stays'])")
FUNCTION = Function("doubled", (num("rh"),), num("rh"), 1, lambda rh: 2 * rh)


def shared(*rules):
    return read_shared("".join(rules), "shared.toml")


def test_sound_rules_have_no_fault():
    assert check_shared(shared(SOUND, WORDS), NAMES) == ()
    assert refuse_shared(shared(SOUND, WORDS), NAMES) is None


def test_every_fault_of_every_rule_is_told_its_guard_included():
    no_field = Fault("There is no field 'decison'; did you mean 'decision'?", 7, 14, "decision")
    no_word = Fault("'knwon' is none of the choices known, unknown; did you mean 'known'?", 13, 20, "known")
    assert check_shared(shared(SOUND, MISSPELT, GUARDED), NAMES) == (
        RuleFault("R22", "test", no_field),
        RuleFault("R39", "when", no_word),
    )


@pytest.mark.parametrize(
    ("rules", "line", "key"), [((SOUND, MISSPELT, GUARDED), 10, "test"), ((SOUND, GUARDED), 13, "when")]
)
def test_the_first_fault_is_refused_with_file_line_and_key(rules, line, key):
    with pytest.raises(BookRefused) as refused:
        refuse_shared(shared(*rules), NAMES)
    assert (refused.value.file, refused.value.line, refused.value.key) == ("shared.toml", line, key)


def test_functions_of_the_trade_may_be_called_where_they_are_lent():
    rule = shared(RULE.format("R44", "doubled(facts.rh) > 80"))
    assert check_shared(rule, NAMES, [FUNCTION]) == ()
    assert [one.fault.start for one in check_shared(rule, NAMES)] == [0]


def test_a_rule_that_looks_for_words_is_named_because_it_gives_points_only():
    assert points_only(shared(SOUND, WORDS), NAMES) == {"R36"}


def test_rules_are_checked_one_by_one_so_that_many_of_them_never_cost_too_much_together():
    walked = "every(every(s == t for t in answer.steps) for s in answer.steps)"
    names = read_names('[answer]\nsteps = { t = "list", item = { t = "int" }, max = 90 }\n')
    rules = [RULE.format(f"R{number}", walked) for number in range(10, 30)]
    assert check(walked, names).cost * len(rules) > MAX_BOOK_COST
    assert check_shared(shared(*rules), names) == ()
