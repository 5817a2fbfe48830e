"""A zone as it stands: a copy stays as it was, and depths count by what the mark is."""

from courses.trade.surface.condition import Condition
from tests.courses.trade.model import constants
from tests.courses.trade.surface.plans import GEL, SWIRLS, panel

ZONE = panel(
    GEL | {"oxidation_um": 4.0, "defects": [SWIRLS, {"kind": "decal_ghost", "depth_um": 8}, {"kind": "high_spot"}]}
).parts[0]


def test_a_copy_stays_as_it_was() -> None:
    one = Condition.of(ZONE, constants())
    kept = one.copy()
    one.film_um -= 3
    one.firsts["budget"] = 2
    assert (kept.film_um, kept.firsts) == (500.0, {})


def test_valleys_are_levelled_steps_come_down_and_skins_go_with_the_film() -> None:
    one = Condition.of(ZONE, constants())
    one.levelled_um, one.planed_um, one.removed_um = 1.0, 2.0, 3.0
    assert [one.gone_um(mark) for mark in one.marks] == [1.0, 2.0, 3.0]
    assert [one.left_um(mark) for mark in one.marks] == [
        max(0.0, mark.deepest_um - gone) for mark, gone in zip(one.marks, (1, 2, 3), strict=True)
    ]
    assert one.layer_left_um == ZONE.layer_um - 3.0
    assert 0.8 < one.oxidised < 0.9


def test_what_may_stay_is_no_need() -> None:
    stays = panel(GEL | {"defects": [{"kind": "scratch", "depth_um": 12}], "agreed": {"may_stay": ["scratch"]}}).parts[
        0
    ]
    assert Condition.of(stays, constants()).need_tail == 0.1
    assert Condition.of(ZONE, constants()).need_tail > 8


def test_what_goes_through_is_as_deep_as_the_film_was() -> None:
    one = Condition.of(panel(GEL | {"defects": [{"kind": "crack_star"}]}).parts[0], constants())
    assert one.left_um(one.marks[0]) == 500.0


def test_patches_that_were_cut_less_keep_more_of_their_marks() -> None:
    even, patchy = (Condition.of(ZONE, constants()) for _ in range(2))
    for one in (even, patchy):
        one.levelled_um, one.planed_um, one.removed_um = 1.5, 8.0, 4.0
    patchy.worst_um, patchy.uneven_um = 1.0, 1.2
    for mark in ZONE.marks:
        assert patchy.open_share(mark) > even.open_share(mark)
    assert patchy.oxidised > even.oxidised
    swirls = ZONE.marks[0]
    assert patchy.open_share(swirls) == 0.8 * swirls.open_share(1.5) + 0.2 * swirls.open_share(0.5)
