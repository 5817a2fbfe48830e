"""What the calculators of cutting open with is what is shipped, figure by figure."""

from typing import Any

import pytest

from courses.shipped import catalogue, constants
from courses.trade.abrasives import D50_UM
from courses.trade.errors import OutOfRange
from courses.trade.sums import SUMS, work_out
from courses.trade.sums import cuts as shop
from courses.trade.sums.leftover import SKINS
from tests.courses.trade.surface.plans import FINISH, FINISH_ROTARY, GEL, HEAVY, MEDIUM, WASH, sand, worked


def default_of(name: str, wanted: str) -> object:
    return next(one.default for one in SUMS[name].inputs if one.name == wanted)


def test_every_k_is_the_shipped_one() -> None:
    shipped, law = constants(), constants().sanding
    for name, cut in shop.CUTS.items():
        if cut.is_paper:
            expected = law.k * (D50_UM[name] / law.reference_um) ** law.k_exponent
        else:
            expected = shipped.k_of(cut.backing, name.rpartition("_")[2])
        assert cut.k == pytest.approx(expected * shop.TERA), name


def test_the_law_of_scratches_is_the_shipped_one() -> None:
    law = constants().sanding
    ours = shop.SANDING
    assert (ours.reference_um, ours.k / shop.TERA) == pytest.approx((law.reference_um, law.k))
    assert (ours.k_exponent, ours.rz_um, ours.rz_exponent) == (law.k_exponent, law.rz_um, law.rz_exponent)
    assert default_of("scratch_depth", "rz_um") == law.rz_um


def test_every_backing_is_the_shipped_pad() -> None:
    for name, pad in constants().pads.items():
        ours = shop.BACKINGS[name]
        assert (ours.eta, ours.friction, ours.heat_share) == (pad.eta, pad.friction, pad.heat_share), name
        assert (ours.rz_share, ours.stray) == (pad.rz_share, pad.stray), name


def test_every_machine_is_the_shipped_one() -> None:
    for name, machine in constants().machines.items():
        ours = shop.MOVERS[name]
        assert (ours.pad_m, ours.orbit_m, ours.spin_rpm) == (machine.pad_m, machine.orbit_m, machine.spin_rpm)
        assert ours.hand_mps == machine.hand_m_s


def test_edges_limits_and_heat_are_the_shipped_ones() -> None:
    film, heat = constants().film, constants().heat
    assert (film.on_panel, film.rotary_limit_rpm) == (shop.ON_PANEL, shop.TOO_FAST_RPM)
    for name in ("film_left", "burn_probability"):
        assert (default_of(name, "edge_gain"), default_of(name, "edge_ratio")) == (film.edge_gain, film.edge_ratio)
    assert default_of("panel_temperature", "panel_degc") == heat.air_degc
    assert default_of("panel_temperature", "softens_degc") == heat.soft_gel_coat
    assert f"e = {heat.effusivity:.0f}" in SUMS["panel_temperature"].formula


def test_every_film_is_the_shipped_one() -> None:
    spreads = constants().film
    for name, skin in SKINS.items():
        shipped = catalogue().surface(name)
        assert (skin.reserve_um, skin.budget_um) == (shipped.reserve_um, shipped.budget_um)
        assert skin.spread == getattr(spreads, f"spread_{name}")


def test_a_set_is_that_of_common_practice() -> None:
    """Rotary three passes; 700, 1000, 1300 are 1000 on the mean. Practice, no source; the model's nominal sets."""
    assert shop.usual("wool_heavy", "rotary") == shop.Usual("rotary", 3, (700 + 1000 + 1300) / 3, 30.0, 0.05)
    assert shop.usual("wool_medium", "rotary").speed_rpm == (900 + 1500 + 1650) / 3 == 1350
    assert shop.usual("foam_finish_fine", "rotary").speed_rpm == (900 + 1500 + 1800) / 3 == 1400
    assert shop.usual("foam_cut_medium", "da") == shop.Usual("da", 6, 4800.0, 50.0, 0.06)
    assert shop.usual("foam_finish_fine", "da") == shop.Usual("da", 4, 4800.0, 30.0, 0.06)
    assert shop.usual("P1500", "rotary") == shop.Usual("sander", 1, 8000.0, 25.0, 0.15)


def test_a_machine_refuses_what_it_cannot_turn() -> None:
    with pytest.raises(OutOfRange) as refusal:
        shop.slip_mps("rotary", 0.2, 9000.0)
    assert str(refusal.value) == "speed_rpm: Rotary: 9000 a minute is more than it can turn; give up to 3500."
    assert shop.slip_mps("hand", 0.12, 9000.0) == 0.4


# What a calculator says of a set and what the simulator makes of the same step are one.
@pytest.mark.parametrize(
    ("step", "cuts", "settings"),
    [
        (HEAVY, "wool_heavy", {"speed_rpm": 1000}),
        (MEDIUM, "wool_medium", {"speed_rpm": 1350}),
        (FINISH, "foam_finish_fine", {"machine": "da", "speed_rpm": 4800, "passes": 4, "arm_mps": 0.06}),
        (FINISH_ROTARY, "foam_finish_fine", {"speed_rpm": 1400}),
        (sand(1500, 4), "P1500", {"machine": "sander", "speed_rpm": 8000, "passes": 4, "force_n": 25, "arm_mps": 0.15}),
    ],
)
def test_the_simulator_takes_off_what_the_calculator_says(
    step: dict[str, Any], cuts: str, settings: dict[str, object]
) -> None:
    found = worked(GEL, (WASH, step)).outcome
    told = work_out("removal", {"cuts": cuts, **settings})
    assert found.removed_um == pytest.approx(told.value, abs=0.006)
    assert found.minutes - worked(GEL, (WASH,)).outcome.minutes == pytest.approx(told.also[3].value, abs=0.06)


def test_the_simulator_gets_as_warm_as_the_calculator_says() -> None:
    """The fastest of 600, 900 and 1500 rpm counts."""
    told = work_out("panel_temperature", {"cuts": "wool_heavy", "speed_rpm": 1500})
    assert worked(GEL, (WASH, HEAVY)).outcome.heat_degc == pytest.approx(told.value, abs=0.06)


@pytest.mark.parametrize(
    ("last", "cuts", "machine"), [(MEDIUM, "wool_medium", "rotary"), (FINISH, "foam_finish_fine", "da")]
)
def test_the_simulator_shines_as_the_calculator_says(last: dict[str, Any], cuts: str, machine: str) -> None:
    steps = (WASH, HEAVY, MEDIUM, last) if last is FINISH else (WASH, HEAVY, last)
    found = worked(GEL | {"tail_um": 2.0, "rz_um": 1.0}, steps).outcome
    told = work_out("finish_left", {"cuts": cuts, "machine": machine})
    shone = {one.name: one.value for one in (told.output, *told.also)}
    assert (found.gloss60, found.gloss20) == pytest.approx((shone["gloss60_gu"], shone["gloss20_gu"]), abs=0.06)
    assert (found.trail_um, found.tail_um) == pytest.approx((shone["own_trail_um"], shone["stray_um"]), abs=0.006)
