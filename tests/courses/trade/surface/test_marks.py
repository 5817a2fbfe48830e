"""Families of marks: the share that is left once a depth is gone."""

import pytest

from courses.trade.leftover import d95_um, share_deeper
from courses.trade.surface.marks import Marks


def marks(role: str = "scratch", depth: float = 0.8, spread: float = 1.6) -> Marks:
    """Return a family of marks."""
    return Marks("swirl", "swirl marks", role, depth, spread, 0.06, 2.0)


@pytest.mark.parametrize("gone", [0.1, 0.5, 0.8, 2.0, 4.0])
def test_the_share_left_is_that_of_the_sum(gone: float) -> None:
    assert marks().open_share(gone) == pytest.approx(share_deeper(gone, 0.8, 1.6))


def test_the_deepest_is_that_of_the_sum() -> None:
    assert marks().deepest_um == pytest.approx(d95_um(0.8, 1.6))


def test_without_a_spread_all_go_at_once() -> None:
    assert [marks(spread=1.0).open_share(gone) for gone in (0.79, 0.8)] == [1.0, 0.0]


def test_what_has_no_height_left_is_gone_and_what_has_no_depth_stays() -> None:
    assert marks("proud", 0.0).open_share(0.0) == 0.0
    assert marks("stain", 0.0).open_share(5.0) == 1.0
    assert marks("stain", 0.0).deepest_um == 0.0


@pytest.mark.parametrize(
    ("role", "ground", "drags"),
    [("scratch", True, False), ("proud", True, False), ("deposit", False, True), ("through", False, False)],
)
def test_a_role_says_what_abrasion_does(role: str, ground: bool, drags: bool) -> None:
    assert (marks(role).ground, marks(role).drags) == (ground, drags)
