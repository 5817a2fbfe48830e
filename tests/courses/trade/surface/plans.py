"""Panels and plans of the sketch that the model was fitted on: each with the verdict that was wanted."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from courses.trade.surface import PanelSurface, Run, read_plan, simulate
from tests.courses.pictures.trade import catalogue
from tests.courses.trade.model import constants

Steps = Sequence[Mapping[str, Any]]


def act(op: str, **settings: Any) -> dict[str, Any]:
    """Return one step."""
    return {"op": op, **settings}


def sand(grade: int, passes: int = 3, **settings: Any) -> dict[str, Any]:
    """Return sanding with a P grade."""
    return act("sand", grade=f"P{grade}", passes=passes, **settings)


WASH, TAPE, TEST, WIPE, REFER = (act(op) for op in ("wash", "tape", "test_spot", "wipe", "refer"))
HEAVY, MEDIUM, FINISH = act("cut"), act("refine"), act("finish")
DA_MEDIUM = act("cut", machine="da")
FINISH_ROTARY = act("finish", machine="rotary")
POLISH = (HEAVY, WIPE, MEDIUM, WIPE, FINISH, WIPE)
SWIRL_OUT = (WASH, TAPE, TEST, DA_MEDIUM, WIPE, FINISH, WIPE)

GEL: dict[str, Any] = {"substrate": "gel_coat", "film_um": 500.0, "film_spread": 0.15}
CLEAR: dict[str, Any] = {"substrate": "clear_coat", "film_um": 48.0, "film_spread": 0.08}
SWIRLS = {"kind": "swirl", "depth_um": 0.8, "spread": 1.6, "cover": 0.06}
DEEP = {"kind": "scratch", "depth_um": 12.0, "spread": 1.3, "cover": 0.005}
PEEL = {"kind": "orange_peel", "depth_um": 4.0, "spread": 1.3, "cover": 0.02}
CRACK = {"kind": "crack_star", "cover": 0.002}

HEAVY_CHALK = GEL | {"oxidation_um": 15.0, "oxidation_cv": 0.25, "rz_um": 1.5, "tail_um": 3.0}
MILD_CHALK = GEL | {"oxidation_um": 3.0, "oxidation_cv": 0.3, "rz_um": 0.8, "tail_um": 1.2}
SWIRLED = CLEAR | {"defects": [SWIRLS]}
THIN = CLEAR | {"film_um": 30.0, "film_spread": 0.12, "defects": [PEEL]}
SCRATCHED = CLEAR | {"defects": [SWIRLS, DEEP]}
CRACKED = MILD_CHALK | {"defects": [CRACK]}

LADDER = (WASH, TAPE, TEST, sand(800, 5), sand(1000, 3), sand(1500, 4), sand(2000, 3), *POLISH)
FOURTEEN: dict[str, tuple[dict[str, Any], Steps, str]] = {
    "01 heavy oxidation, full ladder": (HEAVY_CHALK, LADDER, "pass"),
    "02 heavy oxidation, skips a grit": (
        HEAVY_CHALK,
        (WASH, TAPE, TEST, sand(600, 5), sand(2000, 2), MEDIUM, WIPE, FINISH, WIPE),
        "redo",
    ),
    "03 P1000 straight to finish polish": (HEAVY_CHALK, (WASH, TAPE, sand(1000, 8), FINISH, WIPE), "redo"),
    "04 P320 on mild oxidation": (
        MILD_CHALK,
        (WASH, sand(320, 4), sand(800, 3), sand(1500, 3), HEAVY, FINISH),
        "harm",
    ),
    "05 mild oxidation, test spot first": (MILD_CHALK, (WASH, TAPE, TEST, *POLISH), "pass"),
    "06 swirls: dual action cut, then finish": (SWIRLED, SWIRL_OUT, "pass"),
    "07 swirls: heavy wool and stop": (SWIRLED, (WASH, HEAVY), "redo"),
    "08 swirls: finishing polish only": (SWIRLED, (WASH, TAPE, TEST, FINISH, WIPE), "redo"),
    "09 sanding a thin clear coat": (
        THIN,
        (WASH, sand(1000, 3), sand(1500, 3), HEAVY, MEDIUM, FINISH, WIPE),
        "harm",
    ),
    "10 compounding out a 12 µm scratch": (
        SCRATCHED,
        (WASH, TAPE, HEAVY, HEAVY, HEAVY, HEAVY, WIPE, FINISH, WIPE),
        "harm",
    ),
    "11 swirls out, deep scratch referred": (SCRATCHED, (WASH, TAPE, TEST, REFER, *SWIRL_OUT[3:]), "pass"),
    "12 polishing over a stress crack": (CRACKED, (WASH, TAPE, *POLISH), "harm"),
    "13 crack referred, rest polished": (CRACKED, (WASH, TAPE, TEST, REFER, *POLISH), "pass"),
    "14 2500 rpm, leaning on it, no wash": (
        SWIRLED,
        (act("cut", speeds_rpm=[2500, 2500, 2500], force_n=70),),
        "harm",
    ),
}


def panel(surface: Mapping[str, Any]) -> PanelSurface:
    """Return a panel, read."""
    return PanelSurface.of(surface, catalogue(), constants())


def worked(surface: Mapping[str, Any], steps: Steps, optics: str = "last") -> Run:
    """Return a plan, worked on a panel."""
    on = panel(surface)
    return simulate(on, read_plan(steps, on), constants(), optics=optics)
