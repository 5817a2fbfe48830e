"""How a shop sets its machines: common practice, no source."""

import pytest

from courses.trade.surface.shop import COMPOUNDS, MACHINES, PADS, SPEEDS_RPM, runs_on, settings
from tests.courses.trade.model import constants


def test_sets_are_those_of_the_trade() -> None:
    """Spread about 600, work at 900 to 1500, never over 1800; three passes a section; dual action at 4800."""
    heavy, medium, finish = (settings(op) for op in ("cut", "refine", "finish"))
    assert (heavy.passes, medium.passes) == (3, 3)
    assert max(*heavy.speeds_rpm, *medium.speeds_rpm, *settings("finish", "rotary").speeds_rpm) <= 1800
    assert min(heavy.speeds_rpm) == 600
    assert set(finish.speeds_rpm) == {4800}
    assert (heavy.section_m2, heavy.force_n, heavy.overlap) == (0.36, 30, 0.5)


@pytest.mark.parametrize("op", ["sand", "cut", "refine", "finish"])
def test_every_machine_has_its_settings(op: str) -> None:
    for machine in MACHINES["sand" if op == "sand" else "polish"]:
        found = settings(op, machine)
        assert len(found.speeds_rpm) == (0 if machine == "hand" else found.passes)
        if found.speeds_rpm:
            low, high = SPEEDS_RPM[runs_on(op, machine)]
            assert low <= min(found.speeds_rpm) <= max(found.speeds_rpm) <= high


def test_words_stand_for_what_the_constants_hold() -> None:
    assert {*PADS["sand"], *PADS["polish"]} == set(constants().pads)
    assert set(COMPOUNDS) == set(constants().grain_um)
    assert {pad.called for pad in constants().pads.values()} == {*PADS["sand"].values(), *PADS["polish"].values()}
    assert {(pad, compound) for pad in PADS["polish"] for compound in COMPOUNDS} == set(constants().preston)


def test_a_sanding_section_is_five_to_eight_feet_of_a_side_of_80_centimetres() -> None:
    """Common practice, no source; polishing is done in squares of two feet."""
    assert 5 * 0.3048 <= settings("sand").section_m2 / 0.8 <= 8 * 0.3048
    assert settings("cut").section_m2 == pytest.approx((2 * 0.3048) ** 2, abs=0.02)
