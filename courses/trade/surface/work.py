"""What a step does to a sound film: its cut, what it leaves, its heat, its time, worked out once and kept."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from courses.trade.abrasives import d50_um, sanding_k, scratch_um
from courses.trade.constants import Constants, Machine
from courses.trade.removal import (
    bulk_rise_k,
    dual_action_slip_mps,
    heat_flux,
    local_rise_k,
    pass_min_m2,
    pass_removal_um,
    pass_s_m2,
    rotary_slip_mps,
    stripe_m,
)
from courses.trade.surface.shop import runs_on
from courses.trade.surface.steps import Step

__all__ = ["Work", "work_of"]


@dataclass(frozen=True, slots=True)
class Work:
    """One set of a step on a square metre; lengths in model micrometres.

    ``cut_um`` of a fresh abrasive in the field, ``sharpness`` what is left of it; ``eta`` and ``planing`` as of the
    pad; ``rz_um``, ``tail_um`` (deepest stray), ``trail_um`` and ``corr_um`` what it leaves; ``local_k`` and ``bulk_k``
    how much warmer the film gets under the pad and over the section; ``discs``, ``pads`` and ``grams`` used up.
    """

    cut_um: float
    sharpness: float
    eta: float
    planing: float
    rz_um: float
    tail_um: float
    trail_um: float
    corr_um: float
    local_k: float
    bulk_k: float
    minutes: float
    discs: float
    pads: float
    grams: float
    by_hand: bool


@lru_cache(maxsize=4096)
def work_of(step: Step, hardness: float, constants: Constants) -> Work:
    """What one set of an abrasive ``step`` does to a film of this ``hardness``; sources: those of the constants."""
    pad, machine = constants.pads[step.pad], constants.machines[runs_on(step.op, step.machine)]
    slips = _slips(machine, step)
    stripe = stripe_m(machine.pad_m, step.overlap)
    k = _k(step, constants) * hardness
    fresh = sum(pass_removal_um(k, step.force_n, slip, step.arm_m_s, stripe) for slip in slips)
    rz, corr = _left_by(step, constants)
    flux = heat_flux(pad.heat_share, pad.friction, step.force_n, machine.pad_m, max(slips))
    work_s = step.passes * step.section_m2 * pass_s_m2(step.arm_m_s, stripe)
    sanding = step.op == "sand"
    discs = constants.disc.discs_per_pass_m2 * step.passes if sanding and step.disc == "fresh" else 0.0
    return Work(
        cut_um=fresh,
        sharpness=_sharpness(step.disc, constants),
        eta=pad.eta,
        planing=pad.planing,
        rz_um=rz,
        tail_um=rz * pad.stray,
        trail_um=_trail_um(step, constants),
        corr_um=corr,
        local_k=local_rise_k(flux, machine.pad_m, step.arm_m_s, constants.heat.effusivity),
        bulk_k=bulk_rise_k(flux, machine.pad_m, step.section_m2, work_s, constants.heat.effusivity),
        minutes=step.passes * pass_min_m2(step.arm_m_s, stripe, constants.film.on_panel),
        discs=discs,
        pads=pad.per_m2,
        grams=0.0 if sanding else constants.compound_g_m2,
        by_hand=step.machine == "hand",
    )


def _slips(machine: Machine, step: Step) -> list[float]:
    """Mean speed over the film in each pass, m/s."""
    if step.machine == "hand":
        return [machine.hand_m_s] * step.passes
    if machine.orbit_m:
        return [dual_action_slip_mps(machine.pad_m, machine.orbit_m, rpm, machine.spin_rpm) for rpm in step.speeds_rpm]
    return [rotary_slip_mps(machine.pad_m, rpm) for rpm in step.speeds_rpm]


def _k(step: Step, constants: Constants) -> float:
    law = constants.sanding
    if step.op == "sand":
        return sanding_k(d50_um(step.grade), law.k, law.k_exponent, law.reference_um)
    return constants.k_of(step.pad, step.compound)


def _left_by(step: Step, constants: Constants) -> tuple[float, float]:
    """Mean scratch it leaves, and over what length heights stay alike, µm."""
    law, pad = constants.sanding, constants.pads[step.pad]
    if step.op != "sand":
        return pad.rest * constants.grain_um[step.compound], constants.optics.corr_um
    grain = d50_um(step.grade)
    rz = scratch_um(grain, law.rz_um, law.rz_exponent, law.reference_um)
    return rz * pad.rz_share, grain * constants.optics.corr_per_grain


def _trail_um(step: Step, constants: Constants) -> float:
    """The trail that only a rotary leaves, deeper beyond the speed it should be kept under."""
    if step.machine != "rotary":
        return 0.0
    return constants.pads[step.pad].trail_um * max(1.0, max(step.speeds_rpm) / constants.film.rotary_limit_rpm)


def _sharpness(disc: str | float, constants: Constants) -> float:
    """Share of its cut that a disc has left once it has done an area: all of it up to its life, then less and less."""
    if disc in ("", "fresh"):
        return 1.0
    law = constants.disc
    done = law.used_m2 if isinstance(disc, str) else disc
    return max(law.least, 1.0 - law.dull * max(0.0, done - law.life_m2))
