"""Roughness mixed of scratches, strays and trails: properties of any mean, and the model's own figures."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from courses.trade import finish
from courses.trade.errors import OutOfRange

DEPTHS = st.floats(0.0, 10.0)


@given(DEPTHS, st.floats(1.0, 2.0), st.floats(0.0, 0.5))
def test_strays_are_never_smoother_than_the_field(depth: float, times: float, share: float) -> None:
    even = finish.rms_um(depth, depth, 0.0, 0.2, share)
    assert even == pytest.approx(0.2 * depth)
    assert finish.rms_um(depth, depth * times, 0.0, 0.2, share) >= even - 1e-12


@given(DEPTHS, DEPTHS)
def test_trails_add_in_squares_and_stretch_the_length(depth: float, trail: float) -> None:
    both = finish.rms_um(depth, depth, trail, 0.2, 0.05)
    assert both**2 == pytest.approx((0.2 * depth) ** 2 + (0.2 * trail) ** 2, abs=1e-12)
    assert 3.0 - 1e-9 <= finish.length_um(depth, trail, 3.0, 8.0) <= 8.0 + 1e-9


def test_a_perfect_film_has_the_length_of_its_scratches() -> None:
    assert (finish.rms_um(0.0, 0.0, 0.0, 0.2, 0.05), finish.length_um(0.0, 0.0, 3.0, 8.0)) == (0.0, 3.0)


def test_what_lies_outside_is_refused() -> None:
    with pytest.raises(OutOfRange, match="trail_um"):
        finish.rms_um(0.1, 0.1, 60.0, 0.2, 0.05)
    with pytest.raises(OutOfRange, match="scratch_um"):
        finish.length_um(-0.1, 0.0, 3.0, 8.0)
