import json

import pytest

from assessments.rules import Trace
from assessments.rules.trace import compact, packed, size, unpacked


def test_raw_events_are_made_small():
    raw = [(3, True, (1 / 3, "x" * 50, [1, 2, 3], None, 7)), (4, 2.00000049, ())]
    assert compact(raw).events == ((3, True, 0.333333, "x" * 39 + "…", [3], None, 7), (4, 2.0))


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
