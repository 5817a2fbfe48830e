"""A page of TOML: what it holds, and at which place it is refused."""

import pytest

from assessments.rules import BookRefused
from assessments.rules.books.page import MAX_BYTES, Page

TEXT = 'title = "A"\n\n[facts]\nrh = { t = "num" }\n'


def test_a_page_holds_its_tables_and_the_lines_of_their_keys():
    page = Page.of(TEXT, "names.toml")
    assert (page.file, page.table) == ("names.toml", {"title": "A", "facts": {"rh": {"t": "num"}}})
    assert [page.lines.line(*key) for key in (("", "title"), ("facts", ""), ("facts", "rh"))] == [1, 3, 4]


def test_a_refusal_says_file_line_and_key():
    refusal = Page.of(TEXT, "names.toml").refusal("facts", "rh", "No such unit.")
    assert (refusal.file, refusal.line, refusal.key) == ("names.toml", 4, "rh")
    assert str(refusal) == "names.toml, line 4, rh: No such unit."


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("a = 1\nb = ", "names.toml, line 2, file: This is no TOML: Invalid value."),
        ("#" * (MAX_BYTES + 1), "names.toml, line 1, file: The book has more than 40000 bytes."),
    ],
)
def test_what_is_no_toml_or_too_long_is_refused(text, said):
    with pytest.raises(BookRefused) as refused:
        Page.of(text, "names.toml")
    assert str(refused.value) == said


def test_a_page_of_just_the_longest_text_is_read():
    assert Page.of("#" * MAX_BYTES, "names.toml").table == {}


def test_a_key_nobody_reads_is_refused_with_the_near_miss():
    page = Page.of(TEXT, "names.toml")
    page.only("", page.table, ("title", "facts"))
    with pytest.raises(BookRefused) as refused:
        page.only("", page.table, ("title", "fact"))
    assert str(refused.value) == "names.toml, line 3, facts: Nothing reads the key 'facts'; did you mean 'fact'?"
