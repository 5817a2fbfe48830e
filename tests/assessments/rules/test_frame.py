import pytest

from assessments.rules.frame import Frame, finite


def test_events_are_noted_only_while_somebody_keeps_them():
    kept = []
    Frame({}, kept).note(3, True, 1.5)
    Frame({}, None).note(4, True)
    assert kept == [(3, True, (1.5,))]


@pytest.mark.parametrize("value", [float("inf"), float("-inf"), float("nan"), 10**301, -1e301])
def test_what_has_run_out_of_bounds_is_unknown(value):
    assert finite(value) is None


@pytest.mark.parametrize("value", [0, -2.5, 10**300, 1e300])
def test_what_is_within_bounds_is_kept(value):
    assert finite(value) == value
