"""Shipped tables of the trade: what they hand over, and how a broken one is refused."""

import pytest

from courses.trade.errors import TableRefused
from courses.trade.tables import Entry, line_of, tables_in


def test_a_text_that_is_no_toml_is_refused_with_its_line() -> None:
    with pytest.raises(TableRefused) as refusal:
        tables_in("[a]\nb = ", "t.toml")
    assert str(refusal.value) == "t.toml, line 2: This is not TOML: Invalid value."


def test_a_table_that_stands_nowhere_is_on_line_one() -> None:
    assert (line_of("b", "[a]\n[b]"), line_of("c", "[a]\n[b]")) == (2, 1)


@pytest.mark.parametrize(
    ("values", "method", "arguments", "sentence"),
    [
        ({"x": 1}, "only", ("y",), "There is no field 'x'; there are y."),
        ({}, "text", ("x",), 'x is None; write it as text: x = "words".'),
        ({"x": " "}, "text", ("x",), "x is ' '; write it as text: x = \"words\"."),
        ({"x": "pont"}, "text", ("x", ("point", "raking")), "x is 'pont'; did you mean point?"),
        ({"x": ["pont"]}, "texts", ("x", ("point", "raking")), "x names 'pont'; did you mean point?"),
        ({"x": [1]}, "texts", ("x",), "x is [1]; write a list of texts."),
        ({"x": [1.0, True]}, "numbers", ("x", 2), "x is [1.0, True]; write a list of numbers."),
        ({"x": [1.0]}, "numbers", ("x", 3), "x holds 1 numbers; write 3."),
        ({"x": float("nan")}, "number", ("x",), "x is nan; write a number: x = 3.5."),
        ({"x": "yes"}, "flag", ("x",), "x is 'yes'; write x = true or x = false."),
        ({"x": 1}, "table", ("x",), "x is 1; it is a table of its own."),
    ],
)
def test_a_value_of_the_wrong_kind_is_refused_where_it_stands(values, method, arguments, sentence) -> None:
    with pytest.raises(TableRefused) as refusal:
        getattr(Entry(values, "t.toml, line 3, a"), method)(*arguments)
    assert (refusal.value.input, refusal.value.sentence) == ("t.toml, line 3, a", sentence)


def test_a_value_that_is_no_table_is_refused() -> None:
    with pytest.raises(TableRefused, match=r"a: 3 is no table; open it with \[a\]."):
        Entry.at("a", 3, "a = 3", "t.toml")
