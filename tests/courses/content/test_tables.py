import pytest

from courses.content.errors import PackError
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


def refused(error: pytest.ExceptionInfo[PackError]) -> tuple[int, str]:
    return error.value.line, error.value.key


def test_values_come_out_with_their_kind(top):
    assert top.text("title") == "Coat"
    assert top.whole("minutes", 1, 60) == 30
    assert top.texts("names") == ("a", "b")
    assert top.table("place").text("meter") == "probe"
    assert [lesson.text("code") for lesson in top.tables("lesson")] == ["L24", "L25"]
    assert [option.text("id") for option in top.tables("lesson")[1].tables("options")] == ["x", "y"]
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
    with pytest.raises(PackError, match=words) as error:
        read_table(text, "a.toml")
    assert refused(error) == (line, "toml")


def test_an_unknown_key_is_refused_with_near_misses():
    with pytest.raises(PackError, match="no such key; did you mean minutes") as error:
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
        (lambda t: t.tables("none"), 7, "not a list of tables"),
    ],
)
def test_a_wrong_value_is_refused_at_its_line_with_what_would_be_right(read, line, words):
    text = 'title = "A"\nminutes = 30\nmixed = [7, "b"]\ntwice = ["a", "a"]\nblank = " "\nsure = true\nnone = []'
    with pytest.raises(PackError, match=words) as error:
        read(read_table(text, "a.toml"))
    assert error.value.line == line


def test_a_key_inside_a_table_is_named_with_its_table():
    with pytest.raises(PackError) as error:
        read_table("[[lesson]]\ncode = 4", "a.toml").tables("lesson")[0].text("code")
    assert str(error.value) == 'a.toml, line 2, lesson.code: 4 is not text; write code = "Seeing".'


def test_a_triple_quote_of_one_kind_inside_the_other_does_not_end_it():
    text = "note = '''\n\"\"\"\na = 1\n'''\nb = 2"
    assert read_table(text, "a.toml").line_of("b") == 5
    assert read_table(text, "a.toml").line_of("a") == 1
