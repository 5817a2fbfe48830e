import json

import pytest

from assessments.rules import Trace
from assessments.rules.trace import packed, size, small, unpacked


def test_operands_are_made_small():
    given = [1 / 3, 2.00000049, "x" * 50, "x" * 40, [1, 2, 3], None, 7, True]
    assert [small(value) for value in given] == [0.333333, 2.0, "x" * 39 + "…", "x" * 40, [3], None, 7, True]


@pytest.mark.parametrize(
    "trace", [Trace(), Trace(((1, True, 2.5),)), Trace(((1, None),), cut=True), Trace((), failed="broken() failed.")]
)
def test_a_trace_comes_back_from_json_as_it_was(trace):
    assert Trace.from_json(json.loads(json.dumps(trace.as_json()))) == trace


def events(count):
    return Trace(tuple((n, True, 1.5, "wait") for n in range(count)))


def test_a_record_that_fits_is_whole():
    record = packed([("R21", "test", events(2)), ("R41", "when", events(1)), ("R41", "test", Trace())])
    assert "cut" not in record
    assert unpacked(record, "R21", "test") == events(2)
    assert unpacked(record, "R41", "when") == events(1)
    assert unpacked(record, "R41", "test") == Trace()
    assert unpacked(record, "R99", "test") == Trace()


def test_a_record_that_does_not_fit_keeps_the_first_events_of_every_rule():
    record = packed([("R21", "test", events(500)), ("R41", "test", events(3)), ("R42", "test", events(500))])
    assert size(record) <= 4096
    assert record["cut"] is True
    assert unpacked(record, "R41", "test").events == events(3).events
    assert 40 < len(record["rules"]["R21"]) < 100
    assert len(record["rules"]["R42"]) > 40


@pytest.mark.parametrize("most", [30, 60, 100, 500, 4096])
def test_no_bound_is_ever_passed(most):
    record = packed([(f"COA-01.{n}", "test", events(9)) for n in range(40)], most)
    assert size(record) <= most
