"""What Python says of a text it can't read never reaches who wrote the rule; what to write instead does."""

import pytest

from assessments.rules.checking.language import parse

SAID_OF_SIGNS = [
    ("answer.a == 3 && answer.ok", "&&", "Write and to join tests.", "and"),
    ("answer.ok || answer.a > 3", "||", "Write or to join tests.", "or"),
    ("!answer.ok", "!", "Write not before a test.", "not"),
    ("answer.a = 3", "=", "Write == to compare.", "=="),
    ("answer.a === 3", "===", "Write == to compare.", "=="),
    ("answer.a !== 3", "!==", "Write != for 'is not equal'.", "!="),
    ("answer.a <> 3", "<>", "Write != for 'is not equal'.", "!="),
    ("answer.a => 3", "=>", "Write >= for 'at least'.", ">="),
    ("answer.a =< 3", "=<", "Write <= for 'at most'.", "<="),
    ("answer.a > 5%", "%", "A per cent sign is not read; write the number alone, as in near_rel(a, b, 5).", None),
    ("answer.ok ? 1 : 2", "?", "Write a if test else b to choose between two values.", None),
    ("answer.ok; answer.a > 3", ";", "A rule is one test; write and to join two.", "and"),
    (
        "1 if answer.ok else if answer.b else 3",
        "else if",
        "There is no 'else if'; write a if test else (b if other else c).",
        None,
    ),
    ("if answer.ok then answer.b", "then", "Write a if test else b, without 'then'.", None),
    ("answer.ok AND answer.b", "AND", "Write and in small letters.", "and"),
    ("NOT answer.ok", "NOT", "Write not in small letters.", "not"),
    ("answer.a between 3 and 5", "between", "Write 3 <= value <= 5 for 'between'.", None),
    ("answer.kit contains 'gloves'", "contains", "Write value in list for 'contains'.", None),
    ("answer.ok xor answer.b", "xor", "Write != for 'one or the other'.", "!="),
    ("$answer.a > 3", "$", "'$' is not part of the language.", None),
    ("answer->a > 3", "->", "'->' is not part of the language.", None),
    ("answer..a > 3", "..", "'..' is not part of the language.", None),
    ("007 > 3", "007", "A number has no 0 before it; write 7, not 007.", None),
]
SAID_OF_PLACES = [
    ("answer.a >", "", "The rule breaks off here; a value, a test or a bracket has to follow."),
    ("answer.ok and", "", "The rule breaks off here; a value, a test or a bracket has to follow."),
    (
        "answer.a == 'wait",
        "'",
        "The quote opened here is never closed; a text with an apostrophe stands in double quotes.",
    ),
    ("(answer.ok", "(", "This bracket is never closed."),
    ("answer.ok)", ")", "This bracket was never opened."),
    ("(answer.ok]", "]", "This bracket closes one of another kind."),
    ("3 if answer.ok", "3 if answer.ok", "An if needs its else: a if test else b."),
    ("if answer.ok", "if", "A rule starts with no 'if'; write a if test else b."),
    ("for s in answer.steps", "for", "A list is walked inside a word, as in any(test for x in list)."),
    ("every s in answer.steps", "s", "A list is walked inside a word, as in any(test for x in list)."),
    ("answer.a > 3 K", "K", "A number is written without its unit, 'K'; it takes that of the other side."),
    ("answer.a > 3 m2", "m2", "A number is written without its unit, 'm2'; it takes that of the other side."),
    ("answer.a > 3 len(answer.b)", "len", "A comma, a sign or a word such as and is missing before this."),
    ("answer.ok and and answer.b", "and", "A value or a test is missing before 'and'."),
    ("answer.a > > 3", ">", "A value or a test is missing before '>'."),
    ("import os", "import", "'import' is not part of the language."),
    ("answer.ok answer.b", "answer", "A comma, a sign or a word such as and is missing before this."),
    ("near(answer.a 3, 1)", "answer.a 3", "A comma, a sign or a word such as and is missing here."),
    (
        "any(s.wet for s in answer.a, 3)",
        "s.wet for s in answer.a",
        "A word that walks a list takes nothing beside it: any(test for x in list).",
    ),
]


def told(rule):
    fault = parse(rule)
    return rule[fault.start : fault.end], fault.message, fault.suggestion


@pytest.mark.parametrize(("rule", "part", "said", "instead"), SAID_OF_SIGNS)
def test_a_sign_of_another_language_is_told_at_the_sign(rule, part, said, instead):
    assert told(rule) == (part, said, instead)


@pytest.mark.parametrize(("rule", "part", "said"), SAID_OF_PLACES)
def test_what_is_missing_is_told_where_it_is_missing(rule, part, said):
    assert told(rule) == (part, said, None)


@pytest.mark.parametrize("name", ["between", "contains", "then", "xor", "a0"])
def test_a_field_of_that_name_is_no_sign(name):
    assert told(f"answer.{name} > 1.05 answer.ok")[0] == "answer"


def test_a_sign_inside_quotes_is_text():
    assert told("norm(answer.note) == 'a = b & c' answer.ok")[0] == "answer"
