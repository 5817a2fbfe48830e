"""The list of sources: what it says, and how a broken one is refused."""

import re
from pathlib import Path

import pytest

from courses.trade.errors import SourceRefused
from courses.trade.sources import KINDS, MARKS, Source, read_sources
from courses.trade.sums import SUMS

SHIPPED = Path(__file__).parents[3] / "fixtures" / "trade" / "sources.toml"


@pytest.fixture(scope="module")
def shipped() -> dict[str, Source]:
    return dict(read_sources(SHIPPED.read_text(encoding="utf-8"), "sources.toml"))


def test_every_sum_names_a_known_source_and_mark(shipped: dict[str, Source]) -> None:
    assert {declared.source for declared in SUMS.values()} <= set(shipped)
    assert {declared.mark for declared in SUMS.values()} <= set(MARKS)


def test_common_practice_and_our_model_are_sources_of_their_own(shipped: dict[str, Source]) -> None:
    assert (shipped["practice"].mark, shipped["model"].mark) == ("practice", "model")


def test_the_three_degree_rule_is_said_to_be_known_second_hand(shipped: dict[str, Source]) -> None:
    assert all(shipped[key].note.startswith("Second-hand") for key in ("iso-8502-4", "iso-12944-7"))


def test_pages_of_makers_and_shops_stand_under_a_number(shipped: dict[str, Source]) -> None:
    pages = [source.title for source in shipped.values() if source.kind == "trade_page"]
    numbers = [re.match(r"Trade page (\d+), ", title) for title in pages]
    assert [number and int(number[1]) for number in numbers] == list(range(1, len(pages) + 1))


def test_every_source_has_a_place_or_a_note(shipped: dict[str, Source]) -> None:
    assert all(source.clause or source.date or source.note for source in shipped.values())
    assert {source.kind for source in shipped.values()} <= set(KINDS)


def test_a_source_is_cited_with_what_it_has() -> None:
    assert Source("a", "ISO 0000", "", "", "read", "standard").cited() == "ISO 0000"
    assert Source("a", "ISO 0000", "5.2", "2017", "read", "standard").cited() == "ISO 0000, 5.2 (2017)"


BAD_KEY = "A source is a table under a key of small letters, digits and hyphens."
GOOD = 'title = "T"\nmark = "read"\nkind = "law"\n'


@pytest.mark.parametrize(
    ("text", "sentence"),
    [
        ("[a]\ntitle = ", "s.toml, line 2: This is not TOML: Invalid value."),
        ("[a", "s.toml, line 1: This is not TOML: Expected ']' at the end of a table declaration."),
        (f"[a]\n{GOOD}page = 1\n", "s.toml, line 1, a: There is no field 'page'; there are"),
        ("[a]\ntitle = 1\n", "s.toml, line 1, a: title is 1; write it as text in quotes."),
        ('\n[a]\ntitle = "T"\nmark = "red"\n', "s.toml, line 2, a: mark is 'red'; did you mean read?"),
        ('[a]\ntitle = "T"\nmark = "read"\n', "s.toml, line 1, a: kind is None; there are standard, law,"),
        (f"[a]\n{GOOD}".replace('"T"', '" "'), 's.toml, line 1, a: The title is missing; write title = "ISO 0000".'),
        (
            f"[A_b]\n{GOOD}",
            f"s.toml, line 1, A_b: {BAD_KEY}",
        ),
        ('a = "T"', f"s.toml, line 1, a: {BAD_KEY}"),
    ],
)
def test_a_broken_list_is_refused_with_file_line_and_key(text: str, sentence: str) -> None:
    with pytest.raises(SourceRefused) as refusal:
        read_sources(text, "s.toml")
    assert str(refusal.value).startswith(sentence)
