import ast
from itertools import product

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assessments.rules import (
    PHRASES,
    PhraseRefused,
    Schema,
    check,
    choice,
    integer,
    joined,
    many,
    num,
    phrase,
    record,
    text,
    truth,
    written,
)

SCHEMA = Schema(
    {
        "answer": record(
            {
                "te": num("h"),
                "packs": integer(),
                "decision": choice(["wait", "coat_now"]),
                "sure": truth(),
                "note": text(),
                "picks": many(choice(["a", "b"])),
            }
        ),
        "key": record({"te": num("h"), "picks": many(choice(["a", "b"]))}),
    }
)


def refused(code, **values):
    with pytest.raises(PhraseRefused) as found:
        written(SCHEMA, phrase(code), values)
    return str(found.value), found.value.slot


@pytest.mark.parametrize(
    ("typed", "wanted"),
    [
        ("3", "3"),
        (" 3.50 ", "3.5"),
        ("007", "7"),
        ("-2", "-2"),
        ("−2.25", "-2.25"),
        ("0.0", "0"),
        ("100", "100"),
        ("1000000000", "1000000000"),
    ],
)
def test_a_typed_number_is_written_plainly(typed, wanted):
    assert written(SCHEMA, phrase("over"), {"value": "answer.te", "target": typed}) == f"answer.te > {wanted}"


@pytest.mark.parametrize("typed", ["3,5", "1e5", "three", "1000000001", "0x10", "3 h", "1_000", "1 or True", "nan"])
def test_what_is_no_plain_number_is_refused_at_its_gap(typed):
    wanted = f"'{typed}' is no number; write it plainly, such as 3 or 0.5."
    assert refused("over", value="answer.te", target=typed) == (wanted, "target")


@pytest.mark.parametrize(
    ("code", "values", "sentence", "slot"),
    [
        ("over", {}, "Say which number.", "value"),
        ("over", {"value": "answer.te"}, "Say what the limit is.", "target"),
        ("over", {"value": ["answer.te"], "target": "3"}, "Say which number.", "value"),
        (
            "over",
            {"value": "answer.decision", "target": "3"},
            "answer.decision doesn't fit here; choose from the list.",
            "value",
        ),
        (
            "is",
            {"value": "answer.decision", "target": "'wiat'"},
            "'wiat' doesn't fit here; choose from the list.",
            "target",
        ),
        (
            "is",
            {"value": "answer.te", "target": "2.5"},
            "Hardly any answer is 2.5 to the last digit; take the phrase 'is within … of …'.",
            "target",
        ),
        ("one_of", {"value": "answer.decision", "options": []}, "Say which are right.", "options"),
        (
            "one_of",
            {"value": "answer.decision", "options": ["'wait'", "'x'"]},
            "'x' doesn't fit here; choose from the list.",
            "options",
        ),
        ("between", {"value": "answer.te", "low": "8", "high": "3"}, "The lower limit is above the upper one.", "low"),
        (
            "within",
            {"value": "answer.te", "target": "3", "tolerance": "-1"},
            "This has to be 0 or more.",
            "tolerance",
        ),
        (
            "within_percent",
            {"value": "answer.te", "target": "3", "percent": "0"},
            "This has to be over 0 and at most 100.",
            "percent",
        ),
        (
            "at_most_outside",
            {"number": "1.5", "given": "answer.picks", "wanted": "key.picks"},
            "This has to be a whole number, 0 or more.",
            "number",
        ),
        (
            "mentions",
            {"value": "answer.note", "words": " , -"},
            "Write the words with commas between, such as stays, remains.",
            "words",
        ),
        (
            "mentions",
            {"value": "answer.note", "words": ", ,"},
            "Write the words with commas between, such as stays, remains.",
            "words",
        ),
        (
            "mentions",
            {"value": "answer.note", "words": "it\\n"},
            "A rule can't hold this text; leave out backslashes and one kind of quotes.",
            "words",
        ),
        (
            "is",
            {"value": "norm(answer.note)", "target": 'don\'t "stay"'},
            "A rule can't hold this text; leave out backslashes and one kind of quotes.",
            "target",
        ),
    ],
)
def test_what_does_not_fit_is_refused_with_a_sentence_at_its_gap(code, values, sentence, slot):
    assert refused(code, **values) == (sentence, slot)


def test_at_least_of_asks_for_one_or_more():
    schema = Schema({"answer": record({"steps": many(record({"wet": truth()}))})})
    with pytest.raises(PhraseRefused, match="whole number, 1 or more"):
        written(schema, phrase("at_least_of"), {"number": "0", "list": "answer.steps", "kind": "s.wet"})


def test_a_rule_that_outgrows_the_language_is_refused():
    words = ", ".join(f"word number {n}" for n in range(60))
    sentence, slot = refused("mentions", value="answer.note", words=words)
    assert (sentence.endswith("at most 600 are read."), slot) == (True, None)


def test_several_choices_stand_in_the_order_they_were_offered_and_one_may_come_alone():
    several = {"value": "answer.decision", "options": ["'coat_now'", "'wait'"]}
    assert written(SCHEMA, phrase("one_of"), several) == "answer.decision in ['wait', 'coat_now']"
    alone = {"value": "answer.decision", "options": "'wait'"}
    assert written(SCHEMA, phrase("one_of"), alone) == "answer.decision in ['wait']"


def test_typed_words_are_kept_in_one_form_each_once():
    values = {"value": "answer.note", "words": "Stays,  it REMAINS ,stays,don't"}
    assert written(SCHEMA, phrase("mentions"), values) == "mentions(answer.note, ['stays', 'it remains', \"don't\"])"


@given(st.text(max_size=40), st.sampled_from(PHRASES), st.data())
def test_nothing_typed_gets_out_of_its_gap(typed, asked, data):
    values = {
        slot.name: data.draw(st.sampled_from([typed, "answer.note", "norm(answer.note)", "3"])) for slot in asked.slots
    }
    try:
        checked = check(written(SCHEMA, asked, values), SCHEMA)
    except PhraseRefused:
        return
    assert (checked.errors, checked.warnings) == ((), ())


PARTS = ["answer.sure", "answer.packs > 3", "answer.te < 2 or answer.sure", "answer.te < 2 and not answer.sure"]
PARTS += [
    "(answer.te < 2 or answer.sure)",
    "answer.sure if answer.packs > 3 else answer.te < 2",
    "  answer.sure # note",
]


@pytest.mark.parametrize(("test", "more", "word"), list(product(PARTS, PARTS, ["and", "or"])))
def test_joined_tests_keep_their_sense(test, more, word):
    both = ast.parse(joined(test, more, word), mode="eval").body
    wanted = ast.parse(f"({test.split('#')[0].strip()}) {word} ({more.split('#')[0].strip()})", mode="eval").body
    assert truths(both) == truths(wanted)


def truths(tree):
    """What an expression comes to, in Python itself, on every case of its parts."""
    code = compile(ast.Expression(tree), "rule", "eval")

    class Answer:
        def __init__(self, sure, packs, te):
            self.sure, self.packs, self.te = sure, packs, te

    return [eval(code, {"answer": Answer(*case)}) for case in product([False, True], [3, 4], [1, 3])]


@pytest.mark.parametrize(
    ("test", "word", "wanted"),
    [
        ("", "and", "answer.sure"),
        ("  ", "or", "answer.sure"),
        ("key.a or key.b", "and", "(key.a or key.b) and answer.sure"),
        ("key.a and key.b", "or", "key.a and key.b or answer.sure"),
        ("key.a or key.b", "or", "key.a or key.b or answer.sure"),
        ("key.a if key.b else key.c", "or", "(key.a if key.b else key.c) or answer.sure"),
    ],
)
def test_brackets_stand_only_where_they_are_needed(test, word, wanted):
    assert joined(test, "answer.sure", word) == wanted


def test_a_test_that_cannot_be_read_is_mended_first():
    with pytest.raises(PhraseRefused, match="can't be joined to while it can't be read: The rule breaks off here"):
        joined("answer.te >", "answer.sure")


def test_only_and_and_or_join():
    with pytest.raises(PhraseRefused, match="Tests are joined by 'and' or 'or', not by 'xor'."):
        joined("answer.sure", "answer.sure", "xor")
