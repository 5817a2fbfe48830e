"""TOML with places: a refusal names file, line and key."""

import pytest

from assessments.scenarios.errors import SpecRefused
from assessments.scenarios.located import Table, lines_of

TEXT = '''code = "COA-01"
number = 3

[[tasks]]
id = "margin"
"""
[[tasks]]
id = "why"
[[tasks.model]]
text = """
given = "not a key"
"""
[[tasks.model]]
text = "second"
[draw.kinds.wait]
weight = 4
draw.deep = 1
'''


def test_every_header_and_key_has_its_line() -> None:
    text = TEXT.replace('id = "margin"\n"""\n', 'id = "margin"\n')
    lines = lines_of(text)
    assert lines[("code",)] == 1
    assert lines[("tasks", 0, "id")] == 5
    assert lines[("tasks", 1)] == 6
    assert lines[("tasks", 1, "model", 0, "text")] == 9
    assert lines[("tasks", 1, "model", 1, "text")] == 13
    assert lines[("draw", "kinds", "wait", "weight")] == 15
    assert lines[("draw", "kinds", "wait", "draw", "deep")] == 16
    assert ("tasks", 1, "model", 0, "given") not in lines


def test_a_refusal_names_file_line_and_key() -> None:
    table = Table.of('code = "COA-01"\n[[tasks]]\nid = 3\n', "coa.toml")
    with pytest.raises(SpecRefused) as refused:
        table.tables("tasks")[0].text("id")
    assert str(refused.value) == "coa.toml, line 3, tasks[1].id: should be a text, not 3."


def test_a_missing_key_is_refused_at_the_table_that_lacks_it() -> None:
    table = Table.of('code = "COA-01"\n[[tasks]]\nid = "margin"\n', "coa.toml").tables("tasks")[0]
    with pytest.raises(SpecRefused, match=r"coa.toml, line 2, tasks\[1\].ask: 'ask' is missing."):
        table.text("ask")


@pytest.mark.parametrize(("text", "line"), [("a = 1\ncode = 'A", 2), ("a = 1\ncode = ]\nb = 2", 2), ("a = [1,", 1)])
def test_what_isnt_toml_is_refused_with_file_and_line(text: str, line: int) -> None:
    with pytest.raises(SpecRefused, match=rf"^coa.toml, line {line}: this isn't TOML: [A-Z].*[^)]\.$"):
        Table.of(text, "coa.toml")


def test_a_key_nobody_asked_for_is_refused_with_the_near_miss() -> None:
    table = Table.of('titel = "A"\n', "coa.toml")
    table.text("title", "")
    with pytest.raises(SpecRefused, match=r"line 1, titel: 'titel' isn't known here; did you mean title\?"):
        table.finish()


@pytest.mark.parametrize(
    ("text", "read", "says"),
    [
        ("a = ' '", lambda table: table.text("a"), "should be a text"),
        ("a = 'x'", lambda table: table.number("a"), "should be a number, not 'x'"),
        ("a = true", lambda table: table.number("a"), "should be a number, not True"),
        ("a = -1", lambda table: table.whole("a"), "should be a whole number from 0, not -1"),
        ("a = 1.5", lambda table: table.whole("a"), "should be a whole number"),
        ("a = 1", lambda table: table.flag("a"), "should be true or false"),
        ("a = 1", lambda table: table.texts("a"), "should be a list of texts"),
        ("a = [1]", lambda table: table.texts("a"), "should be a list of texts"),
        ("a = 'x'", lambda table: table.one_of("a", ("y",)), "'x' isn't known here; there are y."),
        ("a = 1", lambda table: table.table("a"), "should be a table"),
        ("a = 1", lambda table: table.tables("a"), "should be repeated tables"),
        ("a = []", lambda table: table.some("a"), r"at least one '\[\[a\]\]' is needed"),
        ("b = 1", lambda table: table.anything("a"), "'a' is missing"),
        ("b = 1", lambda table: table.once("b", ["x", "x"]), "'x' stands twice"),
    ],
)
def test_a_value_of_the_wrong_type_is_refused(text: str, read: object, says: str) -> None:
    assert callable(read)
    with pytest.raises(SpecRefused, match=says):
        read(Table.of(text, "coa.toml"))


def test_what_is_left_out_takes_its_default() -> None:
    table = Table.of("", "coa.toml")
    assert (table.text("a", "x"), table.number("b", 2.5), table.whole("c", 3)) == ("x", 2.5, 3)
    assert (table.flag("d"), table.texts("e", ()), table.tables("f")) == (False, (), [])
    assert not table.has("a")
    assert table.table("g").names() == ()


def test_a_refusal_of_the_whole_file_says_so() -> None:
    with pytest.raises(SpecRefused, match=r"coa.toml, line 1, the file: empty"):
        raise Table.of("a = 1", "coa.toml").refusal("", "empty")
