"""The parts of the grammar: what each reads into, and the sentence for each that is left out."""

import pytest


@pytest.mark.parametrize(
    ("rule", "part", "said"),
    [
        ("answer.steps[0].wet", "answer.steps[0]", "Picking an item by its place is not part of the language."),
        ("(lambda: True)()", "lambda: True", "Only a function named by one word can be called."),
        ("f'a' == norm(answer.note)", "f'a'", "A text with { } in it is not part of the language."),
        ("{} == 1", "{}", "A { } of pairs is not part of the language."),
        ("{1} == 1", "{1}", "A { } set is not part of the language."),
        (
            "[s for s in answer.steps] == 1",
            "[s for s in answer.steps]",
            "A list worked out in [ ] is not part of the language.",
        ),
        ("(s for s in answer.steps) == 1", "(s for s in answer.steps)", "A bare 'for' is not part of the language."),
        ("(x := True)", "x := True", "':=' is not part of the language."),
        ("(yield)", "yield", "This is not part of the language."),
        ("2 ** 3 > 1", "**", "There are no powers; write a * a."),
        ("2 << (3) > 1", "<<", "Of the arithmetic signs only + - * / are read."),
        ("~1 > 1", "~1", "Of the signs before a value only '-' and 'not' are read."),
        ("answer.sure is True", "answer.sure is True", "'is' is not part of the language; write == to compare."),
        ("answer.note == None", "None", "Only numbers, texts, True and False are written; for missing use answered()."),
        ("answer.packs > 2000000000", "2000000000", "The number is larger than 1e+09."),
        ("answer.note == 'a' 'b'", "'a' 'b'", "A text stands in one pair of quotes; a comma is missing between two."),
        (
            "answer.margin > 3,5",
            "answer.margin > 3,5",
            "Commas stand inside ( ) or [ ] only; a fraction is written with a point, 3.5.",
        ),
        ("answer.packs in []", "[]", "A list holds at least one number, or text, written out; all of one kind."),
        ("answer.note.upper() == 'A'", "answer.note.upper", "Only a function named by one word can be called."),
        ("near(a=1, b=2, c=3)", "near(a=1, b=2, c=3)", "near() takes its values in order, without names or stars."),
    ],
)
def test_what_is_left_out_of_the_language_is_said(found, rule, part, said):
    assert (part, said, None) in found(rule)


def test_lists_may_be_written_in_either_bracket(value):
    assert value("answer.packs in [1, 2.5, 2]") is True
    assert value("answer.packs in (1, 3)") is False
    assert value("answer.sure in [True]") is True


def test_a_minus_belongs_to_the_number(value, warned):
    assert value("answer.margin > -3.5") is True
    assert warned("answer.margin == -2.5")[0][0] == "-2.5"


def test_an_optional_item_of_a_list_may_be_missing(case):
    from assessments.rules import Schema, bind, check, evaluate, many, num

    schema = Schema({"rows": many(num("um", opt=True))})
    assert not check("count(r > 3 for r in rows) > 1", schema).ok
    rule = check("count(answered(r) and r > 3 for r in rows) == 1", schema)
    assert evaluate(rule, bind(schema, {"rows": [4, None, 2]}))[0] is True
