import pytest

from assessments.rules.frame import finite


@pytest.mark.parametrize("value", [float("inf"), float("-inf"), float("nan"), 10**301, -1e301])
def test_what_has_run_out_of_bounds_is_unknown(value):
    assert finite(value) is None


@pytest.mark.parametrize("value", [0, -2.5, 10**300, 1e300])
def test_what_is_within_bounds_is_kept(value):
    assert finite(value) == value
