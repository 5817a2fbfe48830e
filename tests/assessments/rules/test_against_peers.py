"""Two engines made by others judge the book of the bench, rule for rule and answer for answer as this one does.

simpleeval walks the syntax tree of Python and is lent the words of the book as plain functions; datalogic-py, in Rust,
gets each test as a tree of JSON logic with near, overlap and order written out. Neither knows three values, so each
test of the book says itself what a missing answer means.
"""

import pytest

from assessments.rules import judge, prepare
from tests.bench.rules.answers import cases
from tests.bench.rules.book import FUNCTIONS, SCHEMA, book, texts
from tests.bench.rules.logic import Datalogic
from tests.bench.rules.ours import Floor
from tests.bench.rules.pythons import Simple
from tests.bench.rules.timing import wrong

OPTIONAL = {"PLN-40.5": "film_um", "PLN-40.7": "surface_degc", "PLN-40.10": "cure_h", "PLN-40.11": "cure_h"}
"""The rules that nobody who leaves this answer out can meet."""


@pytest.fixture(scope="module")
def drawn():
    """Return two hundred cases."""
    return cases()


@pytest.fixture(scope="module")
def marks(drawn):
    """Return what this engine makes of them."""
    prepared = prepare(book(), SCHEMA, FUNCTIONS)
    return [judge(prepared, case) for case in drawn]


def spoken(code, answer, *, holds):
    """Return the verdict that a yes or no of another engine comes to."""
    if code in OPTIONAL and answer[OPTIONAL[code]] is None:
        return "not_answered"
    return "met" if holds else "not_met"


@pytest.mark.parametrize("kind", [Simple, Datalogic])
def test_another_engine_comes_to_every_verdict_of_this_one(kind, drawn, marks):
    peer = kind(texts())
    codes = [rule.code for rule in book().rules]
    for case, mark in zip(drawn, marks, strict=True):
        said = dict(zip(codes, peer.judge(peer.read(case)), strict=True))
        verdicts = {code: spoken(code, case["answer"], holds=holds) for code, holds in said.items()}
        assert {finding.code: finding.verdict for finding in mark.findings} == verdicts


def test_every_rule_of_the_book_is_met_by_some_and_not_by_others(marks):
    met = [[mark.findings[place].verdict == "met" for mark in marks] for place in range(40)]
    assert [place for place, row in enumerate(met) if len(set(row)) == 1] == []


def test_every_optional_answer_is_missing_somewhere(drawn):
    assert {name for case in drawn for name, value in case["answer"].items() if value is None} == {
        *OPTIONAL.values(),
        "sure",
    }


def test_an_engine_that_errs_is_seen(drawn):
    class Hasty(Floor):
        """Says yes to the first test, whatever it is."""

        def judge(self, case):
            return [True, *super().judge(case)[1:]]

    assert (wrong(Hasty(), drawn), wrong(Floor(), drawn)) == ([0], [])
