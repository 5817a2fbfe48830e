"""docs/rulebook.md says what the engine says: its mistakes are run, its words are the language's, its book is read."""

import re
from pathlib import Path

import pytest

from assessments.rules import SharedBook, SharedRule, read_book
from assessments.rules.checking.words import QUANTIFIERS, WORDS

PAGE = (Path(__file__).parents[3] / "docs" / "rulebook.md").read_text(encoding="utf-8")
ROW = re.compile(r"^\| `(.+?)` \| (?:`(.+?)`)? ?\| (.+?) \|$", re.MULTILINE)
MISTAKES, RISKS = PAGE.split("## Mistakes, and what is said")[1].split("What is sound but risky")


def test_the_page_has_its_rows():
    assert len(ROW.findall(MISTAKES)) >= 15
    assert len(ROW.findall(RISKS)) >= 4


@pytest.mark.parametrize(("rule", "part", "said"), ROW.findall(MISTAKES))
def test_a_mistake_brings_the_sentence_on_the_page(found, rule, part, said):
    assert [(where, message) for where, message, _ in found(rule)] == [(part, said)]


@pytest.mark.parametrize(("rule", "part", "said"), ROW.findall(RISKS))
def test_a_risk_brings_the_warning_on_the_page(warned, rule, part, said):
    assert warned(rule) == [(part, said)]


@pytest.mark.parametrize("word", [*WORDS, *QUANTIFIERS])
def test_every_word_of_the_language_is_on_the_page(word):
    assert re.search(rf"\b{word}\b", PAGE.split("## The language")[1].split("## Four habits")[0])


def test_the_book_on_the_page_is_read():
    text = PAGE.split("```toml")[1].split("```")[0]
    shared = SharedBook({"R41": SharedRule("R41", "S", "answer.decision != 'coat_now'", "B", "practice")})
    assert [rule.code for rule in read_book(text, "page.toml", shared).rules] == ["COA-01.1", "R41"]
