import pytest

from assessments.rules import Schema
from assessments.rules.checking.language import parse
from assessments.rules.checking.sheet import Sheet
from assessments.rules.nodes import Sort


@pytest.fixture
def sheet():
    return Sheet(parse("a > 3"), Schema({}), {})


def test_a_fault_is_noted_once(sheet):
    sheet.fault(0, 1, "Wrong.")
    sheet.fault(0, 1, "Wrong.")
    sheet.fault(0, 2, "Wrong.")
    assert len(sheet.faults) == 2


def test_costs_multiply_with_the_loops_round_them(sheet):
    sheet.spend(2)
    with sheet.looping("s", Sort(), 10):
        sheet.spend(1)
        with sheet.looping("t", Sort(), 5):
            sheet.spend(1)
            assert set(sheet.variables) == {"s", "t"}
    assert (sheet.cost, sheet.factor, sheet.variables) == (62, 1, {})


def test_what_is_assumed_holds_only_inside(sheet):
    with sheet.assuming(frozenset({"a"})), sheet.assuming(frozenset({"b"})):
        assert sheet.given == {"a", "b"}
    assert sheet.given == frozenset()
