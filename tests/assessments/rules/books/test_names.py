"""The names shared rules may use, read from TOML and refused with file, line and key."""

import pytest

from assessments.rules import BookRefused, Schema, choice, integer, many, num, read_names, record, text, truth

TEXT = """
[words]
acts = ["wash", "sand"]
zones = ["side", "bow"]

[rows.step]
n = { t = "int" }
op = { t = "enum", vals = "acts" }
covers = { t = "list", item = { t = "enum", vals = "zones" }, max = 8 }

[facts]
reserve = { t = "num", unit = "um" }

[answer]
steps = { t = "list", item = "step", max = 40 }
note = { t = "str" }

[model]
worked = { t = "bool" }

[key]
zones = { t = "list", item = { t = "enum", vals = "zones" } }
"""


def said(text):
    with pytest.raises(BookRefused) as refused:
        read_names(text)
    return str(refused.value)


def test_words_and_rows_are_written_once_and_named_where_they_are_used():
    step = record({"n": integer(), "op": choice(["wash", "sand"]), "covers": many(choice(["side", "bow"]), 8)})
    assert read_names(TEXT) == Schema(
        {
            "facts": record({"reserve": num("um")}),
            "answer": record({"steps": many(step, 40, opt=True), "note": text(opt=True)}),
            "model": record({"worked": truth(opt=True)}),
            "key": record({"zones": many(choice(["side", "bow"]))}),
        }
    )


def test_what_is_answered_or_worked_from_it_may_be_missing_and_nothing_else():
    schema = read_names(TEXT)
    missing = {root: [kind.opt for kind in schema.names[root].fields.values()] for root in schema.names}
    assert missing == {"facts": [False], "answer": [True, True], "model": [True], "key": [False]}


def test_a_root_that_is_left_out_has_no_names():
    assert read_names("[facts]\n").names["key"] == record({})


@pytest.mark.parametrize(
    ("old", "new", "refused"),
    [
        ('"acts" }', '"akts" }', "line 8, op: No list of words is called 'akts'; did you mean 'acts'?"),
        ('item = "step"', 'item = "stpe"', "line 15, steps: No row is called 'stpe'; did you mean 'step'?"),
        ('{ t = "num", unit', '{ t = "num", unti', "line 12, reserve: 'unti' says nothing about kind 'num'"),
        ('reserve = { t = "num", unit = "um" }', "reserve = 3", "line 12, reserve: a kind is an object such as"),
        ("reserve =", "class =", "line 12, class: 'class' is no name; "),
        ("max = 8", "max = 0", "line 9, covers: 'max' is 0, it has to be a whole number from 1 to "),
        ('["side", "bow"]', '["side", "side"]', "line 9, covers: item: 'vals' names a word twice: side, side."),
        ("[model]", "[modle]", "line 18, modle: Nothing reads the key 'modle'; did you mean 'model'?"),
        ("[words]", "facts = 1\n[words]", "line 12, file: This is no TOML: "),
        ("[words]", "rows.step = 1\n[words]", "line 7, file: This is no TOML: "),
    ],
)
def test_what_is_wrong_is_refused_at_its_line(old, new, refused):
    assert old in TEXT
    assert said(TEXT.replace(old, new, 1)).startswith(f"names.toml, {refused}")


@pytest.mark.parametrize(
    ("text", "refused"),
    [
        ("facts = 1", "names.toml, line 1, facts: This has to be a table of names."),
        ("[rows]\nstep = 1", "names.toml, line 2, step: This has to be a table of names."),
        ("words = []", "names.toml, line 1, words: This has to be a table of names."),
    ],
)
def test_what_is_no_table_is_refused(text, refused):
    assert said(text) == refused
