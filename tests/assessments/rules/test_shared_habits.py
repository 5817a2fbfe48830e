"""The rules that are shipped keep the habits: those that need a partner in their book are warned of without it."""

from pathlib import Path

import pytest

from assessments.rules import Rule, RuleBook, prepare, read_shared
from assessments.rules.books.names import read_names
from assessments.shipped import marker, scenarios

BOOKS = Path(__file__).parents[3] / "fixtures" / "rulebooks"
ABRASIVE = "any(s.family=='abrade' for s in answer.steps)"
SANDING = "any(s.op=='sand' for s in answer.steps)"
CHEMISTRY = "any(s.family=='chem' and s.next_chem>0 for s in answer.steps)"
PARTNERS = {
    "R01": ABRASIVE,
    "R02": ABRASIVE,
    "R09": SANDING,
    "R11": ABRASIVE,
    "R28": CHEMISTRY,
    "R29": CHEMISTRY,
}
"""The shared rules with a filtered `every`, each with a test that asks for what its filter lets through."""


@pytest.fixture(scope="module")
def shared():
    return read_shared((BOOKS / "shared.toml").read_text(encoding="utf-8")).rules


@pytest.fixture(scope="module")
def warned_of(shared):
    """The codes that a book of some shared rules and some tests of its own warns of."""
    names = read_names((BOOKS / "names.toml").read_text(encoding="utf-8"))

    def ask(codes, *tests):
        texts = [(code, shared[code].test, shared[code].when) for code in codes]
        texts += [(f"COA-01.{n}", test, None) for n, test in enumerate(tests, 1)]
        rules = [Rule(code, "S", "points", 1, "B", "practice", test=test, when=when) for code, test, when in texts]
        return {each.code for each in prepare(RuleBook("COA-01", 1, tuple(rules)), names).warnings}

    return ask


def test_alone_only_those_that_need_a_partner_are_warned_of(shared, warned_of):
    assert {code for code in shared if warned_of([code])} == set(PARTNERS)


@pytest.mark.parametrize(("code", "partner"), PARTNERS.items())
def test_beside_its_partner_none_is(warned_of, code, partner):
    assert warned_of([code], partner) == set()


def test_a_whole_plan_may_stand_in_one_book(shared, warned_of):
    assert warned_of(shared) == set(PARTNERS)
    assert warned_of(shared, ABRASIVE, SANDING, CHEMISTRY) == set()


@pytest.mark.parametrize("code", list(scenarios()))
def test_no_shipped_book_is_warned_of(code):
    assert marker(code).book.warnings == ()
