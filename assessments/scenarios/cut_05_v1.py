"""CUT-05 *Too hot to hold*, version 1: a warm film, a contact probe, and a boss who wants more speed.

Ranges and weights stand in ``fixtures/scenarios/CUT-05-v1.toml``. An infra-red thermometer sees part of the room in the
gloss, and so reads low by what is drawn.
"""

from collections.abc import Mapping
from typing import Final

from assessments.scenarios.chance import Chance
from assessments.scenarios.fields import Record
from assessments.scenarios.spec import Kind

SPOT_LIMIT_DEGC: Final = 43.0
END_DEGC: Final = 60.0
LOWER_RPM: Final = 300.0
LOWER_N: Final = 5.0
_PICKED: Final = ("colour", "pad", "stands")
_SPANNED: Final = ("rpm", "force_n", "contact_degc", "before_degc")
_DECISION: Final[Mapping[str, str]] = {"cool": "go", "warm": "cool_and_change", "hot": "stop"}


def draw(chance: Chance, kind: Kind) -> Mapping[str, object]:
    """Return the facts of one try; nothing here throws one away."""
    facts: dict[str, object] = {name: kind.pick(chance, name) for name in _PICKED}
    read = {name: kind.between(chance, name) for name in _SPANNED}
    contact = read["contact_degc"]
    band = "hot" if contact > END_DEGC else "warm" if contact > SPOT_LIMIT_DEGC else "cool"
    return {**facts, **read, "infrared_degc": contact - kind.between(chance, "off_k"), "band": band}


def key(facts: Record) -> dict[str, object]:
    """Return what the band asks for: go on, or cool and lower, or stop."""
    band = str(facts["band"])
    lower = 0.0 if band == "cool" else 1.0
    sun = band != "cool" and facts.number("before_degc") > SPOT_LIMIT_DEGC
    return {
        "asked": ["probe", "panel_before"],
        "decision": _DECISION[band],
        "cool": "none" if band == "cool" else "wait",
        "reason": "nothing" if band == "cool" else "sun" if sun else "pad",
        "place": "shade" if sun else "here",
        "rpm": facts.number("rpm") - lower * LOWER_RPM,
        "force_n": facts.number("force_n") - lower * LOWER_N,
    }
