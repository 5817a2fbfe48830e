import random

import pytest

from assessments.rules import Function, num
from assessments.rules.compiler.runtime import grouped, lent, placed, places, six, sixes, sixes_or_none
from assessments.rules.faults import FunctionFailed


def test_places_are_those_of_the_first_and_the_last():
    steps = [{"op": op} for op in ("wash", "sand", "wash", "dry")]
    assert places(steps) == ({"wash": 0, "sand": 1, "dry": 3}, {"wash": 2, "sand": 1, "dry": 3})
    assert places([]) == ({}, {})
    assert places([{"op": None}]) == places([None]) == (None, None)


def test_groups_keep_the_order_of_the_rows():
    rows = [{"op": "wash", "n": 1}, {"op": "sand", "n": 2}, {"op": "wash", "n": 3}]
    assert grouped(rows, "op")["wash"] == [rows[0], rows[2]]
    assert placed(rows, "op")["wash"] == [(0, rows[0]), (2, rows[2])]


def test_six_decimals_are_those_of_round():
    chance = random.Random(6)
    values = [0.0, -0.0, 0.1 + 0.2, 1e300, -1e300, 1e-7, 5e-7, 2**52 / 1e6, 7, -2.5e9 - 0.3]
    values += [round(chance.uniform(-1e4, 1e4), chance.randrange(9)) for _ in range(20_000)]
    values += [chance.uniform(-1, 1) * 10 ** chance.randrange(-8, 16) for _ in range(20_000)]
    values += [-(2.25e9 + chance.randrange(10**10) / 2 / 1e6) for _ in range(20_000)]
    assert [repr(six(value)) for value in values] == [repr(round(value, 6)) for value in values]
    assert sixes(values) == [round(value, 6) for value in values] == sixes_or_none(values)
    assert sixes_or_none([None, 1 / 3]) == [None, 0.333333]


@pytest.mark.parametrize(("gives", "wanted"), [(2.5, 2.5), (2, 2), (None, None), (float("inf"), None)])
def test_a_lent_function_gives_what_it_promised(gives, wanted):
    assert lent(Function("lent", (), num(), 1, lambda: gives))() == wanted


@pytest.mark.parametrize("gives", ["x", True, [1.0]])
def test_a_lent_function_that_breaks_its_promise_has_failed(gives):
    with pytest.raises(FunctionFailed, match=r"lent\(\) failed: TypeError, it gave"):
        lent(Function("lent", (), num(), 1, lambda: gives))()
