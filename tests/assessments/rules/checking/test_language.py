import pytest

from assessments.rules.checking.language import Parsed, parse
from assessments.rules.faults import Fault


def place(rule):
    fault = parse(rule)
    assert isinstance(fault, Fault)
    return fault.start, fault.end, fault.message


@pytest.mark.parametrize(
    ("rule", "start", "end", "said"),
    [
        ("answer.te >", 11, 11, "The rule breaks off here; a value, a test or a bracket has to follow."),
        ("(answer.te > 3", 0, 1, "This bracket is never closed."),
        ("answer.te > > 3", 12, 13, "A value or a test is missing before '>'."),
        ("  answer.te = 3", 12, 13, "Write == to compare."),
        ("norm(answer.note) == 'häß=' and answer.te = 3", 42, 43, "Write == to compare."),
        ("answer.te == ‘wait’", 13, 14, "'‘' is LEFT SINGLE QUOTATION MARK; write '."),
        ("answer.te ≥ 3", 10, 11, "'≥' is GREATER-THAN OR EQUAL TO; write >=."),
        ("answer.te > 3", 11, 12, "' ' is NO-BREAK SPACE; outside quotes only plain ASCII is read."),
        ("answer.te\x07", 9, 10, "There is a control character here; a rule is one line of plain text."),
        ("answer.té > 3", 8, 9, "'é' is LATIN SMALL LETTER E WITH ACUTE; outside quotes only plain ASCII is read."),
        ("1_000 > 3", 0, 5, "'1_000' is no number; write it plainly, as 100 or 0.5."),
        ("answer.te\\", 9, 10, "A backslash is not part of the language."),
        ("", 0, 0, "The rule is empty; write a test such as answer.decision == key.decision."),
        ("a" * 601, 600, 601, "The rule has 601 characters, at most 600 are read."),
        ("(" * 25 + "1" + ")" * 25, 24, 25, "Brackets are nested more than 24 deep here."),
    ],
)
def test_what_bars_a_text_is_told_at_its_place(rule, start, end, said):
    assert place(rule) == (start, end, said)


def test_what_is_no_text_has_no_place():
    assert parse(3) == Fault("A rule is a text, not 3.")


def test_brackets_and_quotes_inside_a_quote_are_text():
    assert isinstance(parse("answer.a == '((((((((((((((((((((((((((('"), Parsed)
    assert isinstance(parse('answer.a == "it\'s"'), Parsed)


@pytest.mark.parametrize("rule", ["1.5 > .5", "1e3 > 1", "1e-3 < 1", "1.5e+2 > 1", "s1.x2 > 3"])
def test_plain_numbers_are_read(rule):
    assert isinstance(parse(rule), Parsed)


def test_brackets_that_close_again_are_no_depth():
    assert isinstance(parse(" and ".join(["(1 < 2)"] * 26)), Parsed)


def test_places_are_characters_not_bytes():
    rule = "  norm(answer.note) == 'häß' and answer.sure"
    parsed = parse(rule)
    start, end = parsed.place(parsed.tree.values[1])
    assert rule[start:end] == "answer.sure"


def test_a_rule_of_many_parts_or_great_depth_is_refused_before_it_is_walked():
    assert place(" and ".join(["a<b"] * 70))[2] == "The rule has more than 200 parts; split it."
    assert place("not " * 30 + "a")[2] == "The rule is nested more than 24 deep here."


@pytest.mark.parametrize("error", [ValueError, MemoryError, RecursionError, OverflowError])
def test_whatever_the_parser_of_python_raises_is_a_sentence(monkeypatch, error):
    def raising(*args, **kwargs):
        raise error

    monkeypatch.setattr("assessments.rules.checking.language.ast.parse", raising)
    assert place("a > 1")[2].startswith("The rule can't be read; it is nested too deep")
