"""The sums of removal: what a set takes off, and how many sets clear a mark."""

from __future__ import annotations

from math import ceil

from courses.trade import abrasives, removal
from courses.trade.abrasives import D50_UM
from courses.trade.errors import ImpossibleChoice, MissingInput
from courses.trade.sums import cuts as shop
from courses.trade.sums.shape import Input, Note, Output, Quantity, Sum, Worked
from courses.trade.units import rounded

_K_DOUBT = 0.30
_PASCALS = 1000.0
_K_IS = (("k", Quantity(_K_DOUBT * 100, "percent", 0)),)

_MODEL_UM = Note("Model micrometres: the trade’s own figures differ tenfold. Gauge before and after on a test panel.")
_CANCELS = Note("On a rotary the size of the pad cancels: the same cut, less pressure, wider stripes.")


def _removal(
    cuts: str,
    machine: str,
    speed_rpm: float,
    passes: float,
    force_n: float,
    arm_mps: float,
    overlap: float,
    pad_mm: float | None,
    k: float | None,
    eta: float | None,
) -> Worked:
    cut, pad_m = shop.CUTS[cuts], shop.pad_of(machine, pad_mm)
    stripe = removal.stripe_m(pad_m, overlap)
    own_k = (cut.k if k is None else k) / shop.TERA
    one = removal.pass_removal_um(own_k, force_n, shop.slip_mps(machine, pad_m, speed_rpm), arm_mps, stripe)
    whole = one * passes
    return Worked(
        {
            "removed_um": whole,
            "per_pass_um": one,
            "levelled_um": whole * (shop.BACKINGS[cut.backing].eta if eta is None else eta),
            "pressure_kpa": removal.pressure_pa(force_n, pad_m) / _PASCALS,
            "minutes_m2": passes * removal.pass_min_m2(arm_mps, stripe, shop.ON_PANEL),
        },
        whole * _K_DOUBT,
        (_MODEL_UM, *_of_rotary(machine, speed_rpm)),
    )


def _of_rotary(machine: str, speed_rpm: float) -> tuple[Note, ...]:
    if machine != "rotary":
        return ()
    return (shop.OVER_1800,) if speed_rpm > shop.TOO_FAST_RPM else (_CANCELS,)


def _sets_to_clear(
    grade: str | None, depth_um: float | None, cuts: str, machine: str, cut_um: float | None, eta: float | None
) -> Worked:
    cut, used = shop.CUTS[cuts], shop.usual(cuts, machine)
    depth = _depth_of(grade, depth_um)
    of_set = _cut_of_set(cuts, used) if cut_um is None else cut_um
    sets = removal.sets_to_clear(depth, of_set, shop.BACKINGS[cut.backing].eta if eta is None else eta)
    whole = ceil(rounded(sets, 2))
    stripe = removal.stripe_m(shop.MOVERS[used.machine].pad_m, 0.5)
    return Worked(
        {
            "sets": sets,
            "whole_sets": whole,
            "mark_um": depth,
            "film_um": whole * of_set,
            "minutes_m2": whole * used.passes * removal.pass_min_m2(used.arm_mps, stripe, shop.ON_PANEL),
        },
        sets * _K_DOUBT,
        (_counted(cuts, used), _MODEL_UM),
    )


def _depth_of(grade: str | None, depth_um: float | None) -> float:
    if grade is not None and depth_um is not None:
        raise ImpossibleChoice("Give the grade whose marks these are, or a depth, not both.", "depth_um")
    if depth_um is not None:
        return depth_um
    if grade is None:
        raise MissingInput("Give the grade whose marks these are, or their depth.", "grade")
    law = shop.SANDING
    return abrasives.stray_um(D50_UM[grade], law.rz_um, law.rz_exponent, law.reference_um, shop.BACKINGS["disc"].stray)


def _cut_of_set(cuts: str, used: shop.Usual) -> float:
    pad_m = shop.MOVERS[used.machine].pad_m
    slip = shop.slip_mps(used.machine, pad_m, used.speed_rpm)
    k = shop.CUTS[cuts].k / shop.TERA
    return used.passes * removal.pass_removal_um(k, used.force_n, slip, used.arm_mps, removal.stripe_m(pad_m, 0.5))


def _counted(cuts: str, used: shop.Usual) -> Note:
    if shop.CUTS[cuts].is_paper:
        return Note("Counted in passes of a fine sander; every line of the coarser grade has to go.")
    words = shop.MOVERS[used.machine].words.lower()
    return Note(f"One set: {words}, {used.passes} passes at {used.speed_rpm:.0f} on the mean, half a pad over.")


_SPEED = Input.over(removal.SPEED_RPM, "speed_rpm", "Speed, mean of the passes", 1000.0)
_OWN_K = Input.over(shop.K, "k", "Own k, 10⁻¹² per Pa", optional=True)
_OWN_ETA = Input.over(shop.SHARE, "eta", "Own depth gained ÷ film", optional=True)

CUTTING_SUMS = (
    Sum(
        "removal",
        "What a set takes off",
        "Cut of a pass and of the set, the depth that is levelled, pressure and time, by Preston’s law.",
        (
            shop.CUTS_INPUT,
            shop.MACHINE_INPUT,
            _SPEED,
            shop.PASSES_INPUT,
            shop.FORCE_INPUT,
            shop.ARM_INPUT,
            shop.OVERLAP_INPUT,
            shop.PAD_INPUT,
            _OWN_K,
            _OWN_ETA,
        ),
        (
            Output("removed_um", "Cut of the set", "um", 2, model=True),
            Output("per_pass_um", "Cut of one pass", "um", 2, model=True),
            Output("levelled_um", "Depth gained", "um", 2, model=True),
            Output("pressure_kpa", "Mean pressure", "kpa", 3, page_decimals=2),
            Output("minutes_m2", "Minutes for 1 m²", "min", 1, page_decimals=1),
        ),
        "cut = passes·k·F·v ÷ (arm speed·stripe), stripe = pad·(1 − overlap), v = mean rubbing speed",
        "preston-1927",
        "model",
        Note("With k known to ±{k} the set is known to ±{doubt} at best.", _K_IS),
        _removal,
    ),
    Sum(
        "sets_to_clear",
        "Sets to clear a mark",
        "How many sets, or passes of paper, level a mark of this depth, and the film and time that costs.",
        (
            Input("grade", "Marks of", choices=shop.GRADES, optional=True),
            Input("depth_um", "Or: depth of the mark", "um", 0.01, 500.0, optional=True, model=True),
            shop.CUTS_INPUT,
            shop.POLISHER_INPUT,
            Input("cut_um", "Cut of one set, if you gauged it", "um", 0.01, 500.0, optional=True),
            _OWN_ETA,
        ),
        (
            Output("sets", "Sets, or passes of paper", "ratio", 2, page_decimals=2),
            Output("whole_sets", "That is, whole", "ratio", 0, page_decimals=0),
            Output("mark_um", "Depth to clear", "um", 2, model=True),
            Output("film_um", "Film it costs", "um", 1, model=True),
            Output("minutes_m2", "Minutes for 1 m²", "min", 1, page_decimals=1),
        ),
        "sets = depth ÷ (cut of a set·depth gained for each unit of film)",
        "model",
        "model",
        Note("With k known to ±{k} it is known to ±{doubt}.", _K_IS),
        _sets_to_clear,
    ),
)
