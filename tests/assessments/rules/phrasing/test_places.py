import ast

import pytest

from assessments.rules import Kind, Schema, choice, integer, many, num, record, text, truth
from assessments.rules.phrasing.places import Place, places, quoted, variables, writable


def test_every_field_outside_of_lists_is_a_place_and_the_trainees_come_first():
    schema = Schema(
        {
            "facts": record({"air_degc": num("degc")}),
            "key": record({"kit": many(choice(["a"]))}),
            "answer": record({"day": record({"te": num("h")}), "steps": many(record({"op": choice(["a"])}))}),
            "limit": num(),
        }
    )
    assert [place.text for place in places(schema)] == [
        "answer.day",
        "answer.day.te",
        "answer.steps",
        "facts.air_degc",
        "key.kit",
        "limit",
    ]


@pytest.mark.parametrize(
    ("one", "other", "wanted"),
    [
        (num("um"), num("um"), True),
        (num("um"), integer("um"), True),
        (num("m/s"), num("mps"), True),
        (num("um"), num("mm"), False),
        (num("um"), num(), False),
        (num("ratio"), num(), True),
        (num(), truth(), False),
        (truth(), truth(), True),
        (text(), text(), True),
        (text(), choice(["a"]), False),
        (choice(["a", "b"]), choice(["b"]), True),
        (choice(["a"]), choice(["b"]), False),
        (many(choice(["a"])), choice(["a"]), True),
        (many(num("um")), many(num("mm")), False),
        (record({}), record({}), False),
    ],
)
def test_values_fit_that_may_be_compared_without_a_warning(one, other, wanted):
    assert Place(("a",), one).fits(Place(("b",), other)) is wanted


def test_a_word_stands_in_quotes_it_does_not_hold():
    assert [ast.literal_eval(quoted(word)) for word in ("wait", "don't", 'a "b"')] == ["wait", "don't", 'a "b"']


def test_words_that_no_rule_can_hold_are_left_out():
    assert list(writable(Kind("enum", vals=("wait", "a\\b", "'\"", "don't")))) == ["wait", "don't"]


def test_loop_variables_take_names_that_are_free():
    assert variables(Schema({})) == ("s", "t")
    assert variables(Schema({"s": num(), "t": num(), "item0": num()})) == ("item1", "item2")
