"""Removal: published arithmetic of circles, Preston's law, and the cuts and times of the fact sheet."""

from math import pi

import pytest
from hypothesis import given
from hypothesis import strategies as st

from courses.trade import removal
from courses.trade.abrasives import d50_um, sanding_k
from courses.trade.errors import OutOfRange
from tests.courses.trade.model import constants

STRIPE = removal.stripe_m(0.2, 0.5)


def rotary_set(pad: str, compound: str, speeds: tuple[int, ...], pad_m: float = 0.2) -> float:
    """Return what a rotary set takes off at 30 N, 0.05 m/s, half overlapped."""
    k, stripe = constants().k_of(pad, compound), removal.stripe_m(pad_m, 0.5)
    slips = [removal.rotary_slip_mps(pad_m, rpm) for rpm in speeds]
    return sum(removal.pass_removal_um(k, 30, slip, 0.05, stripe) for slip in slips)


@pytest.mark.parametrize(
    ("pad", "compound", "speeds", "cut"),
    [
        ("wool", "heavy", (600, 900, 1500), 4.00),
        ("wool", "heavy", (700, 1000, 1300), 4.00),
        ("wool", "medium", (900, 1500, 1650), 3.00),
        ("wool", "medium", (1350, 1350, 1350), 3.00),
        ("foam_cut", "medium", (1650,) * 4, 2.77),
        ("foam_finish", "fine", (900, 1500, 1800), 1.00),
    ],
)
def test_rotary_sets_cut_what_they_were_fitted_on(pad: str, compound: str, speeds: tuple[int, ...], cut: float) -> None:
    assert rotary_set(pad, compound, speeds) == pytest.approx(cut, abs=0.006)


@pytest.mark.parametrize(
    ("pad", "compound", "passes", "force", "cut"),
    [
        ("foam_cut", "medium", 6, 50, 2.72),
        ("microfibre", "heavy", 6, 50, 7.1),
        ("foam_finish", "fine", 4, 30, 0.62),
    ],
)
def test_dual_action_sets_cut_what_they_were_fitted_on(
    pad: str, compound: str, passes: int, force: float, cut: float
) -> None:
    slip, stripe = removal.dual_action_slip_mps(0.15, 0.015, 4800, 300), removal.stripe_m(0.15, 0.5)
    one = removal.pass_removal_um(constants().k_of(pad, compound), force, slip, 0.06, stripe)
    assert passes * one == pytest.approx(cut, abs=0.04)


@pytest.mark.parametrize(
    ("grade", "cut"),
    [("P320", 9.6), ("P600", 4.6), ("P800", 3.7), ("P1000", 3.0), ("P1500", 1.9), ("P2000", 1.5), ("P3000", 0.9)],
)
def test_paper_cuts_what_it_was_fitted_on(grade: str, cut: float) -> None:
    law = constants().sanding
    k = sanding_k(d50_um(grade), law.k, law.k_exponent, law.reference_um)
    slip, stripe = removal.dual_action_slip_mps(0.15, 0.005, 8000, 250), removal.stripe_m(0.15, 0.5)
    assert removal.pass_removal_um(k, 25, slip, 0.15, stripe) == pytest.approx(cut, abs=0.05)


@given(pad=st.floats(0.05, 0.3), rpm=st.floats(300, 3000))
def test_on_a_rotary_the_size_of_the_pad_cancels(pad: float, rpm: float) -> None:
    """Preston 1927: pressure times area is the force; speed and stripe grow alike."""

    def cut(size: float) -> float:
        slip = removal.rotary_slip_mps(size, rpm)
        return removal.pass_removal_um(1e-11, 30, slip, 0.05, removal.stripe_m(size, 0.5))

    assert cut(pad) == pytest.approx(cut(0.2))


@given(
    k=st.floats(1e-12, 1e-9), force=st.floats(1, 100), slip=st.floats(0.1, 30), arm=st.floats(0.01, 0.4),
    factor=st.floats(1.1, 2.5),
)  # fmt: skip
def test_a_cut_is_linear_in_k_force_and_speed_and_inverse_in_arm_speed(
    k: float, force: float, slip: float, arm: float, factor: float
) -> None:
    one = removal.pass_removal_um(k, force, slip, arm, STRIPE)
    assert removal.pass_removal_um(k * factor, force, slip, arm, STRIPE) == pytest.approx(one * factor)
    assert removal.pass_removal_um(k, force * factor, slip, arm, STRIPE) == pytest.approx(one * factor)
    assert removal.pass_removal_um(k, force, slip * factor, arm, STRIPE) == pytest.approx(one * factor)
    assert removal.pass_removal_um(k, force, slip, arm * factor, STRIPE) == pytest.approx(one / factor)
    assert removal.pass_removal_um(k, force, slip, arm, STRIPE / factor) == pytest.approx(one * factor)


def test_the_mean_speed_of_a_turning_pad_is_two_thirds_of_its_edge() -> None:
    """The mean of r over a circle, summed ring by ring."""
    rings = [(n + 0.5) / 1000 for n in range(1000)]
    assert sum(r * r for r in rings) / sum(rings) == pytest.approx(removal.MEAN_OF_EDGE, abs=1e-6)
    assert removal.rotary_slip_mps(0.2, 1500) == pytest.approx(removal.edge_speed_mps(0.2, 1500) * 2 / 3)


def test_pressure_is_force_over_the_area_of_the_pad() -> None:
    assert removal.pressure_pa(30, 0.2) == pytest.approx(30 / (pi * 0.01))


@pytest.mark.parametrize(
    ("passes", "arm", "pad", "minutes"),
    [(3, 0.05, 0.2, 15.4), (3, 0.05, 0.15, 20.5), (6, 0.06, 0.15, 34.2), (4, 0.06, 0.15, 22.8), (1, 0.15, 0.15, 2.28)],
)
def test_minutes_are_those_of_the_table_of_minutes(passes: int, arm: float, pad: float, minutes: float) -> None:
    one = removal.pass_min_m2(arm, removal.stripe_m(pad, 0.5), 0.65)
    assert passes * one == pytest.approx(minutes, abs=0.05)


@pytest.mark.parametrize(
    ("pad", "rpm", "force", "warm"),
    [("wool", 1500, 30, 33), ("wool", 2500, 70, 67), ("wool", 3000, 100, 98), ("foam_cut", 1650, 30, 40)],
)
def test_temperatures_of_the_fact_sheet(pad: str, rpm: int, force: float, warm: float) -> None:
    """Above air of 22 °C; the last is of the order of a report of 93 °C. A cutting foam makes four passes."""
    one, passes = constants().pads[pad], 4 if pad == "foam_cut" else 3
    flux = removal.heat_flux(one.heat_share, one.friction, force, 0.2, removal.rotary_slip_mps(0.2, rpm))
    work_s = passes * 0.36 * removal.pass_s_m2(0.05, STRIPE)
    local = removal.local_rise_k(flux, 0.2, 0.05, 581)
    assert 22 + local + removal.bulk_rise_k(flux, 0.2, 0.36, work_s, 581) == pytest.approx(warm, abs=0.6)


@pytest.mark.parametrize(("depth", "removed", "eta", "sets"), [(4.67, 4.0, 0.75, 1.6), (4.67, 3.0, 0.75, 2.1)])
def test_sets_to_clear_strays_of_p1000(depth: float, removed: float, eta: float, sets: float) -> None:
    assert removal.sets_to_clear(depth, removed, eta) == pytest.approx(sets, abs=0.05)


@pytest.mark.parametrize(
    ("function", "args"),
    [
        (removal.edge_speed_mps, (0.0, 1500)),
        (removal.edge_speed_mps, (0.2, -1)),
        (removal.orbit_speed_mps, (0.5, 4800)),
        (removal.stripe_m, (0.2, 1.0)),
        (removal.pressure_pa, (0.0, 0.2)),
        (removal.pass_s_m2, (0.0, 0.1)),
        (removal.pass_min_m2, (0.05, 0.1, 0.0)),
    ],
)
def test_what_no_machine_does_is_refused(function: object, args: tuple[float, ...]) -> None:
    assert callable(function)
    with pytest.raises(OutOfRange):
        function(*args)
