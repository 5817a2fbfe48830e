"""INS-05 *Domes below the line*, version 1: something that stands up from a painted bottom, to map and to refer.

Whether it sits under the paint or in the laminate is never drawn: from outside nobody can say. Ranges stand in
``fixtures/scenarios/INS-05-v1.toml``.
"""

from collections.abc import Mapping
from typing import Final

from assessments.scenarios.chance import Chance
from assessments.scenarios.fields import Record
from assessments.scenarios.scenes import about, mark, scene
from assessments.scenarios.shown import Shown, Zone
from assessments.scenarios.spec import Kind

REACH: Final = (0.2, 0.25)
"""How far the worst place reaches from its middle, in fractions of the picture across and down."""


def draw(chance: Chance, kind: Kind) -> Mapping[str, object]:
    """Return the facts of one try."""
    return {
        **{name: kind.pick(chance, name) for name in ("hull", "colour")},
        **{name: kind.between(chance, name) for name in ("largest_mm", "severity", "across", "down")},
        **{name: round(kind.between(chance, name)) for name in ("count", "seed")},
        "signs": kind.name,
    }


def key(facts: Record) -> dict[str, object]:
    """Return the answer: map, photograph, refer, tell; hard pinheads are noted where there are any."""
    return {
        "actions": ["map", "photo", "measure", *(["pinheads"] if facts["signs"] == "pinheads" else [])],
        "layer": "survey",
        "steps": [
            {"op": "inspect"},
            {"op": "record", "zone": "domes"},
            {"op": "refer", "zone": "domes"},
            {"op": "tell"},
        ],
        "whom": "owner",
        "refer_zones": ["domes"],
        "record_zones": ["domes"],
    }


def pictures(facts: Record) -> tuple[Shown, ...]:
    """Return the one picture: the worst place of the bottom under a lamp held low."""
    worst = about(facts.number("across"), facts.number("down"), REACH)
    domes = mark("blisters", worst, severity=facts.number("severity"))
    panel = scene(("topcoat_2k", str(facts["colour"])), facts.number("seed"), domes)
    return (Shown("bottom", panel, "raking", sought=(0,), zones=(Zone("domes", (0,), "refer", least=3, most=12),)),)
