"""Paint that lost pigment."""

import numpy as np
from hypothesis import given
from hypothesis import strategies as st

from courses.pictures.arrays import F32
from courses.pictures.pigment import bleached

colours = st.floats(0.01, 0.95)
losses = st.floats(0.0, 0.95)


def bleach(colour: float, loss: float) -> float:
    """Return one channel of a colour after a loss."""
    return float(bleached(np.array([colour], F32), loss)[0])


@given(colours, losses, losses)
def test_the_more_is_lost_the_paler_it_gets(colour: float, one: float, other: float) -> None:
    less, more = sorted((one, other))
    assert colour - 1e-3 <= bleach(colour, less) <= bleach(colour, more) + 1e-3 <= 1.001


@given(colours)
def test_nothing_lost_nothing_changed(colour: float) -> None:
    assert abs(bleach(colour, 0.0) - colour) < 1e-3


def test_white_hardly_changes_where_navy_does() -> None:
    white, navy = bleach(0.82, 0.6), bleach(0.012, 0.6)
    assert white / 0.82 < 1.15
    assert navy / 0.012 > 2


def test_it_follows_kubelka_and_munk_worked_by_hand() -> None:
    # R = 0.20: K/S = 0.64 / 0.4 = 1.6; half the pigment leaves 0.8; R = 1.8 - sqrt(0.64 + 1.6) = 0.3033
    assert abs(bleach(0.20, 0.5) - 0.3033) < 1e-3
