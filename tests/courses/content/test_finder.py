import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from courses.content.errors import FileRefused
from courses.content.finder import Choice, Column, find, read_finder

HEAD = """code = "which"
title = "Which reading"
about = "Below {3.0 K} nothing."

[[choice]]
name = "meter"
title = "Read with"
options = [{ id = "probe", text = "contact probe" }, { id = "infra_red", text = "infra-red" }]

[[choice]]
name = "place"
title = "Where"
options = [{ id = "roof", text = "under a roof" }, { id = "sky", text = "out of doors" }, { id = "bay", text = "bay" }]

[[result]]
name = "act"
title = "What to do"
"""
PROBE = """
[[row]]
when = { meter = "probe", place = "any" }
then = { act = "Believe it." }
source = "practice"
mark = "practice"
"""
ROOF = """
[[row]]
when = { meter = "infra_red", place = ["roof", "bay"] }
then = { act = "Decide by contact." }
source = "planck"
mark = "calc"
caution = "Burns."
"""
SKY = """
[[row]]
when = { meter = "infra_red", place = "sky" }
then = { act = "Throw it away." }
source = "practice"
mark = "practice"
"""
WHOLE = HEAD + PROBE + ROOF + SKY


def read(text: str):
    return read_finder(text, "which.toml", ("practice", "planck"))


def said(row) -> tuple[str, ...]:
    return tuple(str(prose.pieces[0]) for prose in row.results)


def test_a_finder_is_choices_columns_and_rows():
    table = read(WHOLE)
    assert (table.code, table.title, len(table.rows)) == ("which", "Which reading", 3)
    assert table.choices[0] == Choice("meter", "Read with", (("probe", "contact probe"), ("infra_red", "infra-red")))
    assert table.columns == (Column("act", "What to do"),)
    assert table.sources == ("practice", "planck")
    assert [quantity.value for quantity in table.about.quantities] == [3.0]


@pytest.mark.parametrize(
    ("meter", "place", "act"),
    [
        ("probe", "roof", "Believe it."),
        ("probe", "sky", "Believe it."),
        ("infra_red", "bay", "Decide by contact."),
        ("infra_red", "sky", "Throw it away."),
    ],
)
def test_choices_find_their_row(meter, place, act):
    assert said(find(read(WHOLE), {"meter": meter, "place": place})) == (act,)


def test_a_row_carries_its_source_mark_and_caution():
    table = read(WHOLE)
    roof = find(table, {"meter": "infra_red", "place": "roof"})
    assert (roof.source, roof.mark, roof.caution.pieces) == ("planck", "calc", ("Burns.",))
    assert find(table, {"meter": "probe", "place": "roof"}).caution is None


@given(st.dictionaries(st.sampled_from(["meter", "place", "x"]), st.sampled_from(["probe", "sky", "", "any", "bay"])))
def test_any_choices_find_one_row_or_nothing(chosen):
    row = find(read(WHOLE), chosen)
    complete = chosen.get("meter") == "probe" and chosen.get("place") in ("sky", "bay")
    assert (row is not None) == complete


@pytest.mark.parametrize(
    ("text", "line", "key", "words"),
    [
        (HEAD + PROBE + ROOF, 19, "row", "no row for meter infra_red, place sky; every combination has exactly one"),
        (WHOLE + SKY, 39, "row[4].when", "meter infra_red, place sky has rows on lines 32 and 38"),
        (WHOLE.replace('"sky" }', '"skye" }'), 33, "row[3].when.place", "did you mean sky?"),
        (WHOLE.replace('place = "sky" }', 'plaec = "sky" }'), 33, "row[3].when.plaec", "did you mean place?"),
        (WHOLE.replace(', place = "sky" }', " }"), 33, "row[3].when.place", "this is missing"),
        (WHOLE.replace('act = "Throw it away."', 'act = "Throw {3 Q}."'), 34, "act", "names no base unit"),
        (WHOLE.replace('source = "planck"', 'source = "plank"'), 28, "row[2].source", "did you mean planck?"),
        (WHOLE.replace('mark = "calc"', 'mark = "calx"'), 29, "row[2].mark", "did you mean calc"),
        (WHOLE.replace('id = "infra_red"', 'id = "probe"'), 8, "choice[1].options", "each with an id of its own"),
        (WHOLE.replace('title = "Which reading"', ""), 1, "title", "this is missing"),
        (WHOLE.replace('about = "Below', 'abuot = "Below'), 3, "abuot", "did you mean about?"),
    ],
)
def test_a_broken_finder_is_refused_with_file_line_and_key(text, line, key, words):
    with pytest.raises(FileRefused, match=re.escape(words)) as error:
        read(text)
    assert (error.value.file, error.value.line, error.value.key) == ("which.toml", line, key)


def test_more_than_five_choices_are_refused():
    choice = (
        '[[choice]]\nname = "c{0}"\ntitle = "C"\noptions = [{{ id = "a", text = "a" }}, {{ id = "b", text = "b" }}]\n'
    )
    head = HEAD + "".join(choice.format(n) for n in range(4))
    with pytest.raises(FileRefused, match="6 choices stand here; a finder has one to five"):
        read(head + PROBE)
