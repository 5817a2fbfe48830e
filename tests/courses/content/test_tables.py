from dataclasses import dataclass

import pytest

from courses.content.errors import FileRefused
from courses.content.tables import Table, read_table

TEXT = '''title = "Coat"
minutes = 30
names = ["a", "b"]
note = """
minutes = 99
[[lesson]]
"""

[place]
meter = "probe"

[[lesson]]
code = "L24"

[[lesson]]
code = "L25"
options = [
    { id = "x" },
    { id = "y" },
]
'''


@pytest.fixture
def top() -> Table:
    return read_table(TEXT, "a.toml")


def refused(error: pytest.ExceptionInfo[FileRefused]) -> tuple[int, str]:
    return error.value.line, error.value.key


def test_values_come_out_with_their_kind(top):
    assert top.text("title") == "Coat"
    assert top.whole("minutes", 1, 60) == 30
    assert top.texts("names") == ("a", "b")
    assert top.table("place").text("meter") == "probe"
    assert [lesson.text("code") for lesson in top.tables("lesson")] == ["L24", "L25"]
    assert [option.text("id") for option in top.some("lesson")[1].tables("options")] == ["x", "y"]
    assert top.text("missing", default="") == ""
    assert top.has("title")
    assert not top.has("missing")


def test_each_key_knows_its_line_even_after_text_of_several_lines(top):
    first, second = top.tables("lesson")
    assert [top.line_of("title"), top.line_of("minutes"), top.table("place").line_of("meter")] == [1, 2, 10]
    assert [first.line, first.line_of("code"), second.line_of("code"), second.line_of("options")] == [12, 13, 16, 17]
    assert second.line_of("missing") == 15
    assert [option.line for option in second.tables("options")] == [17, 17]


def test_lines_are_counted_from_where_the_table_begins_in_its_file():
    assert read_table('\ncode = "L24"', "L24.md", first_line=2).line_of("code") == 3


@pytest.mark.parametrize(
    ("text", "line", "words"),
    [
        ("a = 1\nb = ", 2, "Invalid value"),
        ("a = 1\na = 2", 2, "Cannot overwrite"),
        ('a = """', 1, "this is not TOML"),
    ],
)
def test_text_that_is_not_toml_is_refused_at_its_line(text, line, words):
    with pytest.raises(FileRefused, match=words) as error:
        read_table(text, "a.toml")
    assert refused(error) == (line, "toml")


def test_an_unknown_key_is_refused_with_near_misses():
    with pytest.raises(FileRefused, match="'minuts' isn't known here; did you mean minutes") as error:
        read_table('title = "A"\nminuts = 3', "a.toml").only("title", "minutes")
    assert refused(error) == (2, "minuts")


def test_a_known_set_of_keys_passes(top):
    assert top.only("title", "minutes", "names", "note", "place", "lesson") is top


@pytest.mark.parametrize(
    ("read", "line", "words"),
    [
        (lambda t: t.text("gone"), 1, "this is missing; write gone = "),
        (lambda t: t.text("minutes"), 2, "30 is not text"),
        (lambda t: t.text("blank"), 5, "this is empty"),
        (lambda t: t.whole("title", 1, 9), 1, "'A' is not a whole number; write title = 1"),
        (lambda t: t.whole("sure", 1, 9), 6, "True is not a whole number"),
        (lambda t: t.whole("minutes", 1, 9), 2, "30 is outside 1 to 9"),
        (lambda t: t.texts("title"), 1, "'A' is not a list"),
        (lambda t: t.texts("mixed"), 3, "7 is not text"),
        (lambda t: t.texts("twice"), 4, "'a' stands twice"),
        (lambda t: t.texts("none"), 7, "the list is empty"),
        (lambda t: t.table("title"), 1, "'A' is not a table"),
        (lambda t: t.tables("title"), 1, r"'A' is not a list; write \[\[title\]\]"),
        (lambda t: t.tables("mixed"), 3, r"begin each with \[\[mixed\]\]"),
        (lambda t: t.some("none"), 7, r"none stands here; begin at least one with \[\[none\]\]"),
        (lambda t: t.some("gone"), 1, "none stands here"),
        (lambda t: t.number("title"), 1, "'A' is not a number; write title = 3.5"),
        (lambda t: t.number("sure"), 6, "True is not a number"),
        (lambda t: t.number("endless"), 8, "inf is not a finite number"),
        (lambda t: t.number("gone"), 1, "this is missing; write gone = 3.5"),
        (lambda t: t.flag("minutes"), 2, "30 is not true or false; write minutes = true"),
        (lambda t: t.one_of("title", ("B", "C")), 1, "'A' isn't known here; there are B, C."),
        (lambda t: t.some_of("letters", ("one", "two")), 9, r"'tow' isn't known here; did you mean two\?"),
        (lambda t: t.new("title", {"A"}), 1, "'A' stands above already; each title is used once"),
    ],
)
def test_a_wrong_value_is_refused_at_its_line_with_what_would_be_right(read, line, words):
    text = 'title = "A"\nminutes = 30\nmixed = [7, "b"]\ntwice = ["a", "a"]\nblank = " "\nsure = true\nnone = []'
    text += '\nendless = inf\nletters = ["one", "tow"]'
    with pytest.raises(FileRefused, match=words) as error:
        read(read_table(text, "a.toml"))
    assert error.value.line == line


def test_a_key_inside_a_table_is_named_with_its_table():
    with pytest.raises(FileRefused) as error:
        read_table("[[lesson]]\ncode = 4", "a.toml").tables("lesson")[0].text("code")
    assert str(error.value) == 'a.toml, line 2, lesson[1].code: 4 is not text; write code = "Seeing".'


def test_a_triple_quote_of_one_kind_inside_the_other_does_not_end_it():
    text = "note = '''\n\"\"\"\na = 1\n'''\nb = 2"
    assert read_table(text, "a.toml").line_of("b") == 5
    assert read_table(text, "a.toml").line_of("a") == 1


NESTED = """
[draw.kinds.wait]
weight = 4
"air.degc" = 3
span.from = 1

[[task]]
id = "x"
  [[task.model]]  # indented, with a comment
  text = "first"
[[task]]
id = "y"
steps = [
  ["x", "y"],
]
[[task.model]]
text = "second"
[[task.model]]
text = 'third'
[task.place]
meter = "probe"
"""


def test_nested_headers_and_dotted_and_quoted_keys_have_their_lines():
    top = read_table(NESTED, "a.toml")
    wait = top.table("draw").table("kinds").table("wait")
    assert [wait.line, *(wait.line_of(key) for key in ("weight", "air.degc", "span"))] == [2, 3, 4, 5]
    assert [wait.table("span").line, wait.table("span").line_of("from"), top.table("draw").line] == [5, 5, 2]
    first, second = top.tables("task")
    assert [first.line, second.line, second.line_of("steps"), second.table("place").line_of("meter")] == [7, 11, 13, 21]
    assert [[one.line_of("text") for one in task.tables("model")] for task in (first, second)] == [[10], [17, 19]]


def test_a_refusal_names_the_whole_path_counted_from_one():
    error = read_table(NESTED, "a.toml").tables("task")[1].tables("model")[0].refuse("text", "no.")
    assert str(error) == "a.toml, line 17, task[2].model[1].text: no."


def test_what_is_left_out_takes_its_default():
    empty = read_table("", "a.toml")
    assert (empty.text("a", ""), empty.one_of("a", ("x",), ""), empty.number("a", 2.5)) == ("", "", 2.5)
    assert (empty.whole("a", 1, 9, 3), empty.flag("a"), empty.texts("a", ())) == (3, False, ())
    assert (empty.some_of("a", ("x",), ("x",)), empty.tables("a"), empty.table("a").values) == (("x",), (), {})


def test_values_that_are_known_come_out():
    table = read_table('level = "lead"\nlaw = ["us", "uk"]\nlimit = 3\nsafest = true', "a.toml")
    assert (table.one_of("level", ("working", "lead")), table.some_of("law", ("us", "uk"))) == ("lead", ("us", "uk"))
    assert (table.number("limit"), table.flag("safest"), table.new("level", ())) == (3, True, "lead")


def test_a_table_holds_the_fields_of_its_shape_and_no_other():
    @dataclass
    class Meter:
        name: str

    table = read_table('name = "probe"', "a.toml")
    assert table.only_fields_of(Meter) is table
    with pytest.raises(FileRefused, match=r"line 1, nam: 'nam' isn't known here; did you mean name\?"):
        read_table('nam = "probe"', "a.toml").only_fields_of(Meter)


@pytest.mark.parametrize(("taken", "line"), [((), 5), (("a",), 2)])
def test_a_name_that_stands_twice_is_refused_where_it_comes_again(taken, line):
    table = read_table('[[x]]\nid = "a"\n[[x]]\n\nid = "a"', "a.toml")
    with pytest.raises(FileRefused, match="'a' stands above already; each id is used once") as error:
        table.once("x", "id", taken)
    assert error.value.line == line


def test_names_that_differ_pass():
    read_table('[[x]]\nid = "a"\n[[x]]\nid = "b"', "a.toml").once("x", "id", taken=["c"])
