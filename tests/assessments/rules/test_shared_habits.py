"""The rules that are shipped keep the habits: none is met by a plan in which there was nothing to judge."""

from pathlib import Path

import pytest

from assessments.rules import Rule, RuleBook, prepare, read_shared
from assessments.rules.books.names import read_names
from assessments.shipped import marker, scenarios

BOOKS = Path(__file__).parents[3] / "fixtures" / "rulebooks"
SHARED = read_shared((BOOKS / "shared.toml").read_text(encoding="utf-8")).rules
NAMES = read_names((BOOKS / "names.toml").read_text(encoding="utf-8"))
GUARDED = ("R01", "R02", "R09", "R11", "R28", "R29")
"""The shared rules with a filtered `every`: each applies only where its filter lets something through."""


def warned_of(*rules):
    """The codes that a book of these rules warns of."""
    made = [Rule(code, "S", "points", 1, "B", "practice", test=test, when=when) for code, test, when in rules]
    return {each.code for each in prepare(RuleBook("COA-01", 1, tuple(made)), NAMES).warnings}


def test_every_shared_rule_stands_alone():
    assert {code for code, rule in SHARED.items() if warned_of((code, rule.test, rule.when))} == set()


@pytest.mark.parametrize("code", GUARDED)
def test_without_its_guard_a_filtered_every_is_warned_of(code):
    assert warned_of((code, SHARED[code].test, None)) == {code}


@pytest.mark.parametrize("code", list(scenarios()))
def test_no_shipped_book_is_warned_of(code):
    assert marker(code).book.warnings == ()
