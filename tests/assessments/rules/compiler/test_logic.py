import itertools

import pytest

from assessments.rules import Schema, check, truth
from assessments.rules.compiler import Compiled
from tests.assessments.rules.oracle import marking

SCHEMA = Schema({"p": truth(opt=True), "q": truth(opt=True), "r": truth(opt=True), "s": truth()})


@pytest.mark.parametrize(
    "rule",
    [
        "p and q and r",
        "p or q or r",
        "p and s or not q",
        "not (p or s) and (q or r)",
        "s and answered(p) and p",
        "not answered(p) or p and q",
        "(p if s else q) and r",
        "s and not s or p",
    ],
)
def test_every_row_of_the_table_is_that_of_the_oracle(rule):
    checked = check(rule, SCHEMA)
    compiled, wanted = Compiled([checked]), marking.runnable(checked)
    for p, q, r, s in itertools.product((True, False, None), (True, False, None), (True, False, None), (True, False)):
        case = {"p": p, "q": q, "r": r, "s": s}
        found = marking.run(wanted, case)
        assert compiled.values(case) == (found.value,)
        assert compiled.run(case).events == tuple((number, result) for number, result, _ in found.events)


def test_what_is_there_is_written_as_python_writes_it(lines):
    (last,) = [line for line in lines("facts.cold and facts.film_um > 3 and not key.short") if "return" in line]
    assert " and " in last
    assert "None" not in last


@pytest.mark.parametrize(
    ("rule", "wanted"),
    [
        ("3 < facts.film_um < 70.0", True),
        ("3 < facts.film_um < 4", False),
        ("70 < facts.film_um < 80", False),
        ("3 < answer.margin < 4 < 5", False),
        ("1 < answer.margin <= answer.margin < 1000", True),
        ("1 < count(s.wet for s in answer.steps) <= 2", True),
        ("5 < count(s.wet for s in answer.steps) <= 2", False),
        ("1 < facts.film_um / answer.packs < facts.film_um + 1 < 1000", True),
    ],
)
def test_a_chain_stops_where_it_is_decided(ran, rule, wanted):
    assert ran(rule).value is wanted


def test_an_unknown_link_leaves_a_chain_open(ran):
    assert ran("1 < answer.margin < 5", margin=None).value is None
    assert ran("1 < answer.margin < 5 < 4", margin=None).value is False


@pytest.mark.parametrize(
    "rule",
    [
        "sum(s.um for s in answer.steps) > 1 and 1 < facts.film_um < sum(s.um for s in answer.steps)",
        "1 < facts.film_um / 7 < sum(s.um for s in answer.steps) < facts.film_um",
        "1 < facts.reserve_um < facts.film_um / 7 < facts.film_um",
        "70 < facts.film_um < facts.film_um / 7",
        "any(s.um < facts.econ / 7 < s.um * 2 for s in answer.steps)",
    ],
)
def test_the_operands_of_a_chain_are_had_whole_as_far_as_it_was_looked_at(ran, rule):
    assert ran(rule).whole
