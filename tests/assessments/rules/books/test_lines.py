import tomllib

import pytest

from assessments.rules.books.lines import Lines, syntax_error

TEXT = '''# a comment
code = "A"   # [[rule]]
"quoted" = 1

[table]
key = """
[[rule]]
code = 3
"""
after = [
  ["x = 1", 2], # ]
  [3],
]
[[rule]]
code = 'it is [open'
[[rule]]
code = {a = 1, b = [2]}
long = \'\'\'one line\'\'\'
last = "a \\\\"
'''


def test_keys_are_found_past_long_texts_lists_and_comments():
    tomllib.loads(TEXT)
    lines = Lines.of(TEXT)
    assert lines.keys == {
        ("", "code"): 2,
        ("", "quoted"): 3,
        ("table", ""): 5,
        ("table", "key"): 6,
        ("table", "after"): 10,
        ("rule[0]", ""): 14,
        ("rule[0]", "code"): 15,
        ("rule[1]", ""): 16,
        ("rule[1]", "code"): 17,
        ("rule[1]", "long"): 18,
        ("rule[1]", "last"): 19,
    }


def test_a_key_that_is_not_there_stands_where_its_table_does():
    lines = Lines.of(TEXT)
    assert lines.line("rule[1]", "points") == 16
    assert lines.line("nothing", "points") == 1


@pytest.mark.parametrize(
    ("text", "line"),
    [("a = 1\nb =\n", 2), ("a = [1,\n2", 2), ("a =", 1)],
)
def test_a_syntax_error_has_its_line(text, line):
    with pytest.raises(tomllib.TOMLDecodeError) as raised:
        tomllib.loads(text)
    assert syntax_error(text, raised.value)[0] == line


def test_a_syntax_error_without_a_place_stands_at_the_end():
    assert syntax_error("a\nb", tomllib.TOMLDecodeError("Odd")) == (2, "Odd")
