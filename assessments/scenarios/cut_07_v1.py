"""CUT-07 *The chine*, version 1: an edge that may be thin, a film that may not be gel coat at all.

Ranges and weights stand in ``fixtures/scenarios/CUT-07-v1.toml``. By hand and block along it an edge pays what the flat
pays; a pad that rides over it costs two and a half times as much.
"""

from collections.abc import Mapping
from typing import Final

from assessments.scenarios.chance import Chance
from assessments.scenarios.fields import Record
from assessments.scenarios.spec import Kind
from courses.trade.units import rounded

EDGE_GAIN: Final = 2.5
"""How much faster an untaped edge wears under a pad: common practice, the figure of the surface model."""


def draw(chance: Chance, kind: Kind) -> Mapping[str, object]:
    """Return the facts of one try; nothing here throws one away."""
    film, edge = kind.pick(chance, "film"), kind.between(chance, "edge_film_um")
    planned, doubt, reserve = kind.between(chance, "planned_um"), kind.number("doubt_um"), kind.number("reserve_um")
    return {
        "film": film,
        "colour": kind.pick(chance, "colour"),
        "planned_um": planned,
        "edge_film_um": edge,
        "doubt_um": doubt,
        "reserve_um": reserve,
        "spare": film == "gel_coat" and edge - doubt - reserve >= planned,
    }


def key(facts: Record) -> dict[str, object]:
    """Return the tools and steps that this film and this edge can pay for."""
    gel, spare = facts["film"] == "gel_coat", bool(facts["spare"])
    by_edge = ["block", "hand_pad", "none"] if spare else ["hand_pad", "none"] if gel else ["none"]
    stays = ["nothing", "dull_edge"] if spare else ["dull_edge"] if gel else ["whole_side"]
    return {
        "asked": ["edge_look", "paper", "edge_film"],
        "edge_um": rounded(EDGE_GAIN * facts.number("planned_um"), 1),
        "tool_flat": "disc" if gel else "none",
        "tool_hollow": "soft_pad" if gel else "none",
        "tool_chine": by_edge[0],
        "stroke": "along" if gel else "none",
        "steps": _steps(gel, spare),
        "stays": stays[0],
        "sand_any": gel,
        "sand_chine": spare,
        "tools_chine": by_edge,
        "stays_ok": stays,
    }


def _steps(gel: bool, spare: bool) -> list[dict[str, str]]:
    if not gel:
        return [{"op": "record", "zone": "all"}, {"op": "tell"}]
    sanded = [("flat", "da"), ("hollow", "hand"), *([("chine", "hand")] if spare else [])]
    return [
        {"op": "wash"},
        {"op": "tape", "zone": "all"},
        *({"op": "sand", "machine": machine, "zone": zone} for zone, machine in sanded),
        {"op": "dry", "zone": "all"},
        {"op": "inspect", "zone": "all"},
        {"op": "record", "zone": "chine"},
        {"op": "tell"},
    ]
