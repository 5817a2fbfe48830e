"""The sum of heat: how warm a film gets under a set."""

from __future__ import annotations

from courses.trade import removal
from courses.trade.sums import cuts as shop
from courses.trade.sums.shape import Input, Note, Output, Quantity, Sum, Worked
from courses.trade.units import rounded

_RISE_DOUBT = 0.30
_SPOT_DEGC, _NEVER_DEGC = 43.0, 60.0
_SOFT_DEGC, _AIR_DEGC, _EFFUSIVITY, _SECTION_M2 = 71.0, 22.0, 581.0, 0.36


def _panel_temperature(
    cuts: str,
    machine: str,
    speed_rpm: float,
    passes: float,
    force_n: float,
    arm_mps: float,
    panel_degc: float,
    section_m2: float,
    softens_degc: float,
    overlap: float,
    pad_mm: float | None,
    heat_share: float | None,
) -> Worked:
    behind, pad_m = shop.BACKINGS[shop.CUTS[cuts].backing], shop.pad_of(machine, pad_mm)
    share = behind.heat_share if heat_share is None else heat_share
    flux = removal.heat_flux(share, behind.friction, force_n, pad_m, shop.slip_mps(machine, pad_m, speed_rpm))
    work_s = passes * section_m2 * removal.pass_s_m2(arm_mps, removal.stripe_m(pad_m, overlap))
    local = removal.local_rise_k(flux, pad_m, arm_mps, _EFFUSIVITY)
    bulk = removal.bulk_rise_k(flux, pad_m, section_m2, work_s, _EFFUSIVITY)
    peak = panel_degc + local + bulk
    return Worked(
        {
            "peak_degc": peak,
            "local_rise_k": local,
            "bulk_rise_k": bulk,
            "heat_index": (peak - _AIR_DEGC) / (softens_degc - _AIR_DEGC),
        },
        (local + bulk) * _RISE_DOUBT,
        _hot(rounded(peak, 1)),
    )


def _hot(peak_degc: float) -> tuple[Note, ...]:
    if peak_degc > _NEVER_DEGC:
        return (Note("Over {never}: stop. No page we read allows it.", _LIMITS),)
    if peak_degc > _SPOT_DEGC:
        return (Note("Over {spot} on a spot: lift off, slower, lighter, let it cool.", _LIMITS),)
    return (
        Note("Under {spot}; the end is at {never}. Read the panel with a contact probe before you start.", _LIMITS),
    )


_LIMITS = (("spot", Quantity(_SPOT_DEGC, "degc", 0)), ("never", Quantity(_NEVER_DEGC, "degc", 0)))

_FASTEST = Input.over(removal.SPEED_RPM, "speed_rpm", "Speed, fastest pass", 1300.0)

HEAT_SUMS = (
    Sum(
        "panel_temperature",
        "How warm the panel gets",
        "The hottest the film gets under a set: what the passing pad adds, and what stays in the section.",
        (
            shop.CUTS_INPUT,
            shop.MACHINE_INPUT,
            _FASTEST,
            shop.PASSES_INPUT,
            shop.FORCE_INPUT,
            shop.ARM_INPUT,
            Input("panel_degc", "Panel before", "degc", -10.0, 90.0, _AIR_DEGC),
            Input("section_m2", "Section", "m2", 0.05, 5.0, _SECTION_M2),
            Input("softens_degc", "Film softens at", "degc", 40.0, 150.0, _SOFT_DEGC),
            shop.OVERLAP_INPUT,
            shop.PAD_INPUT,
            Input.over(shop.SHARE, "heat_share", "Own share of heat", optional=True),
        ),
        (
            Output("peak_degc", "Hottest", "degc", 1),
            Output("local_rise_k", "Under the pad", "K", 1),
            Output("bulk_rise_k", "In the section", "K", 1),
            Output("heat_index", "Share of the way to soft", "ratio", 2),
        ),
        "rise = 2·q·√(t ÷ π) ÷ e, once for the crossing pad and once for the section; q = share·μ·F ÷ A·v, e = 581",
        "heat-under-a-pad",
        "model",
        Note("Friction and share of heat are common practice; ±30 % of the rise is ±{doubt}."),
        _panel_temperature,
    ),
)
