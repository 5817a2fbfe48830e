import pytest

from assessments.rules import Function, Schema, check, choice, integer, many, num, record, text, truth
from assessments.rules.checking.words import QUANTIFIERS, RESERVED, WORDS

LENT = [
    Function("of_choice", (choice(["a", "b"]),), num(), 1, lambda word: 1.0),
    Function("of_whole", (integer(),), truth(), 1, lambda whole: True),
    Function("of_list", (many(num()),), truth(), 1, lambda items: True),
    Function("of_text", (text(),), text(), 1, lambda said: said),
]
SCHEMA = Schema(
    {
        "word": choice(["a", "b"]),
        "n": integer(),
        "x": num(),
        "xs": many(num("um")),
        "ys": many(num("h")),
        "note": text(),
    }
)


def said(rule, wants="any"):
    return [fault.message for fault in check(rule, SCHEMA, LENT, wants).errors]


def test_every_word_tells_how_it_is_written():
    assert all(word.usage.startswith(f"{name}(") for name, word in WORDS.items())
    assert set(RESERVED) == {*WORDS, *QUANTIFIERS}


@pytest.mark.parametrize(
    ("rule", "wanted"),
    [
        ("of_choice('a')", []),
        ("of_choice(word)", []),
        ("of_choice('c')", ["'c' is none of the choices a, b."]),
        ("of_choice(3)", ["This has to be a choice; it is a whole number."]),
        ("of_whole(n)", []),
        ("of_whole(x)", ["This has to be a whole number; it is a number."]),
        ("of_list(xs)", []),
        ("of_list(n)", ["This has to be a list; it is a whole number."]),
        ("of_text(note) == of_text('a')", []),
        ("of_text(word)", ["This has to be a text; it is a choice."]),
        ("overlap(xs, ys)", ["This is in h, but the left side is in um."]),
        ("overlap(xs, [1, 2])", []),
        ("overlap([1, 2], xs)", []),
    ],
)
def test_values_fit_the_words_they_are_given_to(rule, wanted):
    assert said(rule) == wanted


def test_an_act_may_be_any_word_where_the_acts_are_texts():
    schema = Schema({"steps": many(record({"op": text(opt=True)}))})
    found = check("before(steps, 'anything', 'else')", schema)
    assert found.ok
    assert found.root.sort.missing == {"()"}


def test_the_cost_of_a_word_grows_with_its_lists():
    short, long = Schema({"xs": many(num(), 2)}), Schema({"xs": many(num(), 50)})
    assert check("overlap(xs, xs) > 1", short).cost == 3 + 4 + 2
    assert check("overlap(xs, xs) > 1", long).cost == 2500 + 5


def test_reading_a_text_costs_by_its_longest_length():
    schema = Schema({"short": text(80), "long": text(2000), "rows": many(record({"note": text(2000)}), 60)})
    assert [check(f"norm({name}) == 'a'", schema).cost for name in ("short", "long")] == [40, 424]
    assert check("mentions(long, ['a', 'b'])", schema).cost == 847
    assert not check("any(any(norm(s.note) == norm(t.note) for t in rows) for s in rows)", schema).ok
