"""COA-01 *Two thermometers*, version 1: a shed, a rail that flatters, a panel that may not have been read.

The kinds, their ranges and what throws a draw away stand in ``fixtures/scenarios/COA-01-v1.toml``; here is only the
arithmetic between them. Every margin is taken with the dew point to 0.1 °C, as the key takes it.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from itertools import pairwise
from typing import Final

from assessments.scenarios.chance import Chance
from assessments.scenarios.fields import Record
from assessments.scenarios.sketch import Thrown
from assessments.scenarios.spec import Kind
from courses.trade.air import dew_point_degc, infrared_reading_degc, surface_rh, water_content_gkg
from courses.trade.units import rounded

FRESH_H: Final = 4.0
DOUBT_K: Final = (2.2, 3.8)
ENOUGH_K: Final = 4.2

_MAIN_STEP: Final[Mapping[str, str]] = {
    "coat_now": "read_again_within_4h",
    "measure_again": "probe_coldest",
    "warm_the_panel": "warm_electric",
    "wait": "keep_shut_and_wait",
}


@dataclass(frozen=True, slots=True)
class Row:
    """One row of the shed's forecast, ``h`` hours from now, and the margin it leaves a hull that lags behind."""

    h: int
    air_degc: float
    dew_degc: float
    margin_k: float


@dataclass(frozen=True, slots=True)
class Shed:
    """One try: the air, the panel and the rail as they are, the forecast."""

    now_h: float
    air_degc: float
    air_rh: int
    dew_degc: float
    panel_degc: float
    rail_itself_degc: float
    rail_emissivity: float
    lag_k: float
    rows: tuple[Row, ...]


def dew_point_shown(air_degc: float, air_rh: float) -> float:
    """Return the dew point in °C to 0.1, as everybody in this scenario reads and compares it.

    >>> dew_point_shown(20.0, 50)
    9.3
    """
    return rounded(dew_point_degc(air_degc, air_rh), 1)


def draw(chance: Chance, kind: Kind) -> Mapping[str, object] | Thrown:
    """Return the facts of one try, or the condition that threw it away."""
    shed = _shed(chance, kind)
    told = {name: kind.pick(chance, name) for name in ("trend", "heater", "pressure")}
    probed = kind.has("probe_age_h")
    probe_age_h = kind.between(chance, "probe_age_h") if probed else None
    why = next(_against(shed, kind), None)
    if why is not None:
        return Thrown(why)
    rail = _rail_as_read(shed, kind)
    why = next(_against_rail(rail, shed, kind, probed), None)
    if why is not None:
        return Thrown(why)
    return {
        "now_h": shed.now_h,
        **{name: kind.number(name) for name in ("shuts_h", "job_h", "area_m2", "ir_set_emissivity")},
        "air_degc": shed.air_degc,
        "air_rh": shed.air_rh,
        "ir_rail_degc": rail,
        "probe_degc": shed.panel_degc if probed else None,
        "probe_age_h": probe_age_h,
        "forecast": [{"h": row.h, "air_degc": row.air_degc, "dew_degc": row.dew_degc} for row in shed.rows],
        "hull_lag_k": shed.lag_k,
        **told,
    }


def key(facts: Record) -> dict[str, object]:
    """Return the answer worked from the readings, and beside it what the rules and exemplars read."""
    dew = dew_point_shown(facts.number("air_degc"), facts.number("air_rh"))
    probed = "probe_degc" in facts
    margin = round(facts.number("probe_degc" if probed else "ir_rail_degc") - dew, 1)
    fresh = probed and facts.number("probe_age_h") <= FRESH_H
    in_doubt = fresh and DOUBT_K[0] <= margin <= DOUBT_K[1]
    brings = _brings(facts)
    decision = _decision(fresh and not in_doubt, margin, facts["heater"] == "electric" and not brings)
    return {
        "dew_point": dew,
        "margin": margin,
        "decision": decision,
        "next_steps": _next_steps(decision, in_doubt),
        "main_step": _MAIN_STEP[decision],
        "short": decision != "coat_now",
        "in_doubt": in_doubt,
        "fresh": fresh,
        "brings": brings,
        "thumb_degc": rounded(facts.number("air_degc") - (100 - facts.number("air_rh")) / 5, 1),
        "row_margins": [_row_margin(facts, row) for row in _rows(facts)],
    }


def _shed(chance: Chance, kind: Kind) -> Shed:
    air = kind.between(chance, "air_degc")
    rh = round(kind.between(chance, "air_rh"))
    dew = dew_point_shown(air, rh)
    panel = round(dew + kind.between(chance, "panel_over_dew_k"), 1)
    lag = kind.between(chance, "hull_lag_k")
    return Shed(
        now_h=kind.between(chance, "now_h"),
        air_degc=air,
        air_rh=rh,
        dew_degc=dew,
        panel_degc=panel,
        rail_itself_degc=panel + kind.between(chance, "rail_off_panel_k"),
        rail_emissivity=kind.between(chance, "rail_emissivity"),
        lag_k=lag,
        rows=tuple(_row(chance, kind, hours, dew, lag) for hours in (2, 4, 6)),
    )


def _rail_as_read(shed: Shed, kind: Kind) -> float:
    """Return what the infra-red meter shows on the rail, which mirrors the air of the shed, in °C to 0.1."""
    seen = infrared_reading_degc(
        shed.rail_itself_degc, shed.air_degc, shed.rail_emissivity, kind.number("ir_set_emissivity")
    )
    return rounded(seen, 1)


def _row(chance: Chance, kind: Kind, hours: int, dew_now: float, lag: float) -> Row:
    dew = round(dew_now + kind.between(chance, "dew_drift_k"), 1)
    margin = kind.between(chance, "row_margin_k")
    return Row(hours, round(dew + lag + margin, 1), dew, margin)


def _against_rail(rail_degc: float, shed: Shed, kind: Kind, probed: bool) -> Iterator[str]:
    if round(rail_degc - shed.dew_degc, 1) < kind.number("rail_over_dew_least_k"):
        yield "the rail doesn't flatter"
    if probed and round(abs(rail_degc - shed.panel_degc), 1) < kind.number("rail_off_probe_least_k"):
        yield "rail and probe nearly agree"


def _against(shed: Shed, kind: Kind) -> Iterator[str]:
    """Walk the conditions of the file that this try breaks."""
    if shed.panel_degc not in kind.span("panel_degc"):
        yield "the panel is too cold or too hot"
    if round(shed.panel_degc - shed.air_degc, 1) > kind.number("panel_over_air_most_k"):
        yield "the panel is warmer than the air of the shed"
    water = water_content_gkg(shed.air_degc, shed.air_rh)
    if kind.has("water_least_gkg") and water < kind.number("water_least_gkg"):
        yield "the air is too dry to cure"
    yield from _against_forecast(shed, kind)


def _against_forecast(shed: Shed, kind: Kind) -> Iterator[str]:
    for row in shed.rows:
        if surface_rh(row.dew_degc, 100.0, row.air_degc) > kind.number("row_rh_most"):
            yield "a row of the forecast is too damp"
        if row.air_degc not in kind.span("row_degc"):
            yield "a row of the forecast is too cold or too hot"
        if round(abs(row.air_degc - shed.air_degc), 1) > kind.number("row_off_air_most_k"):
            yield "a row of the forecast is too far from the air now"
    steps = (abs(round(after.air_degc - before.air_degc, 1)) for before, after in pairwise(shed.rows))
    if any(step > kind.number("row_step_most_k") for step in steps):
        yield "the forecast jumps"
    if kind.has("best_row_least_k"):
        yield from _against_waiting(shed, kind)


def _against_waiting(shed: Shed, kind: Kind) -> Iterator[str]:
    airs = [row.air_degc for row in shed.rows]
    if airs[0] <= shed.air_degc:
        yield "the first row isn't warmer than now"
    falls = (round(before - after, 1) for before, after in pairwise(airs))
    if any(fall > kind.number("row_fall_most_k") for fall in falls):
        yield "the forecast falls back"
    if round(max(airs) - shed.air_degc, 1) < kind.number("best_row_least_k"):
        yield "the best row is hardly warmer than now"
    if shed.now_h + 4 + kind.number("job_h") > kind.number("shuts_h"):
        yield "waiting runs past the hour the shed shuts"


def _rows(facts: Record) -> list[Record]:
    rows = facts["forecast"]
    return [row for row in rows if isinstance(row, Record)] if isinstance(rows, tuple) else []


def _row_margin(facts: Record, row: Record) -> float:
    return round(row.number("air_degc") - facts.number("hull_lag_k") - row.number("dew_degc"), 1)


def _brings(facts: Record) -> bool:
    """Whether some row leaves time for the job, and it and every later row leave margin enough."""
    start_by = facts.number("shuts_h") - facts.number("job_h") - facts.number("now_h")
    rows = _rows(facts)
    return any(
        row.number("h") <= start_by + 1e-9 and all(_row_margin(facts, later) >= ENOUGH_K for later in rows[n:])
        for n, row in enumerate(rows)
    )


def _decision(carries: bool, margin: float, must_warm: bool) -> str:
    """Return the decision; a sure margin that isn't enough is waited for unless only the heater can bring it.

    A fresh, short reading without heater and without a forecast that brings it is never drawn: waiting is then
    the careful answer.
    """
    if not carries:
        return "measure_again"
    if margin >= ENOUGH_K:
        return "coat_now"
    return "warm_the_panel" if must_warm else "wait"


def _next_steps(decision: str, in_doubt: bool) -> list[str]:
    steps = ["log_meter_place_time", "tell_owner", _MAIN_STEP[decision]]
    if decision in ("wait", "warm_the_panel"):
        steps.append("probe_coldest")
    if in_doubt:
        steps.append("second_rh_meter")
    return steps
