"""What a step does to a sound film, worked out once."""

from typing import Any

import pytest

from courses.trade.surface import read_plan
from courses.trade.surface.work import Work, work_of
from tests.courses.trade.model import constants
from tests.courses.trade.surface.plans import act, sand


def work(step: dict[str, Any], hardness: float = 1.0) -> Work:
    """Return what one set of a step does."""
    return work_of(read_plan([step])[0], hardness, constants())


@pytest.mark.parametrize(
    ("step", "cut", "gain", "rz", "trail", "minutes"),
    [
        (act("cut"), 4.00, 3.00, 0.27, 0.25, 15),
        (act("refine"), 3.00, 2.25, 0.135, 0.25, 15),
        (act("cut", pad="foam_cut", compound="medium", speeds_rpm=[1650] * 4), 2.77, 1.80, 0.12, 0.12, 21),
        (act("finish", machine="rotary"), 1.00, 0.40, 0.03, 0.05, 15),
        (act("cut", machine="da"), 2.72, 1.77, 0.12, 0.0, 34),
        (act("cut", machine="da", pad="microfibre", compound="heavy"), 7.1, 5.3, 0.27, 0.0, 34),
        (act("finish"), 0.62, 0.25, 0.03, 0.0, 23),
        (sand(1000, 1), 3.00, 2.85, 2.75, 0.0, 2.3),
    ],
)
def test_the_table_of_combinations(
    step: dict[str, Any], cut: float, gain: float, rz: float, trail: float, minutes: float
) -> None:
    """The fact sheet's table of what each combination cuts, gains, leaves and takes."""
    found = work(step)
    assert (found.cut_um, found.cut_um * found.eta) == pytest.approx((cut, gain), rel=0.01)
    assert (found.rz_um, found.trail_um) == pytest.approx((rz, trail), abs=0.005)
    assert found.minutes == pytest.approx(minutes, abs=0.55)


def test_a_soft_pad_under_the_disc_halves_nothing_but_the_scratch() -> None:
    hard, soft = work(sand(1500, 4)), work(sand(1500, 4, pad="disc_soft"))
    assert (soft.cut_um, soft.rz_um) == pytest.approx((hard.cut_um, 0.7 * hard.rz_um))
    assert soft.planing < 0.3 < hard.planing


@pytest.mark.parametrize(
    ("disc", "sharp"), [("fresh", 1.0), (0.0, 1.0), (0.5, 1.0), (0.75, 0.85), ("used", 0.7), (5.0, 0.3)]
)
def test_a_disc_wears_by_the_area_it_has_done(disc: str | float, sharp: float) -> None:
    assert work(sand(1500, 4, disc=disc)).sharpness == pytest.approx(sharp)


def test_a_fresh_disc_is_changed_by_area_and_one_carried_in_is_not_counted() -> None:
    assert work(sand(1500, 4)).discs == pytest.approx(1.6)
    assert work(sand(1500, 4, disc="used")).discs == 0.0


def test_a_soft_film_loses_more() -> None:
    assert work(act("cut"), 1.3).cut_um == pytest.approx(1.3 * work(act("cut")).cut_um)


def test_too_fast_a_rotary_leaves_a_deeper_trail() -> None:
    assert work(act("cut", speeds_rpm=[2700])).trail_um == pytest.approx(0.25 * 1.5)


def test_a_hand_needs_no_speed() -> None:
    by_hand = work(sand(1500, 4, pad="block"))
    assert by_hand.by_hand
    assert 0 < by_hand.cut_um < work(sand(1500, 4)).cut_um
    assert work(act("finish", machine="hand")).trail_um == 0.0


def test_it_is_worked_out_once() -> None:
    (step,) = read_plan([act("cut")])
    assert work_of(step, 1.0, constants()) is work_of(step, 1.0, constants())
