"""INS-04 *Cracks round the cleat*, version 1: lines that mustn't be polished in a side that may be.

The pattern is the scene's own label, not something read off a picture. Ranges stand in
``fixtures/scenarios/INS-04-v1.toml``.
"""

from collections.abc import Mapping
from typing import Final

from assessments.scenarios.chance import Chance
from assessments.scenarios.fields import Record
from assessments.scenarios.scenes import about, mark, scene
from assessments.scenarios.shown import Shown, Zone
from assessments.scenarios.spec import Kind

ORIGIN: Final[Mapping[str, str]] = {"star": "inside_blow", "ring": "outside_blow", "parallel": "flex"}
"""What the pattern of a crack speaks of; a marine surveyor's page."""

COLUMNS: Final = 6
ROWS: Final = 4
REACH: Final = (0.11, 0.16)
"""How far the lines reach from their middle, in fractions of the picture across and down."""


def draw(chance: Chance, kind: Kind) -> Mapping[str, object]:
    """Return the facts of one try."""
    across = (kind.between(chance, "column") + kind.between(chance, "off")) / COLUMNS
    down = (kind.between(chance, "row") + kind.between(chance, "off")) / ROWS
    return {
        **{name: kind.pick(chance, name) for name in ("fitting", "buyer", "pattern")},
        **{name: kind.between(chance, name) for name in ("length_m", "film_um", "oxidation_um", "severity")},
        **{name: round(kind.between(chance, name)) for name in ("direction", "seed")},
        "press": kind.name,
        "across": round(across, 4),
        "down": round(down, 4),
    }


def key(facts: Record) -> dict[str, object]:
    """Return the answer worked from pattern and press, and the zones to refer and to write down."""
    return {
        "asked": ["press"],
        "origin": ORIGIN[str(facts["pattern"])],
        "steps": [
            {"op": "inspect"},
            {"op": "record", "zone": "crack"},
            {"op": "tell"},
            {"op": "tape", "zone": "crack"},
            *({"op": op, "zone": "rest"} for op in ("test_spot", "cut", "finish", "wipe", "inspect")),
        ],
        "advice": ["surveyor", "not_treated", *(["keep_load_off"] if facts["press"] == "soft" else [])],
        "refer_zones": ["crack"],
        "record_zones": ["crack"],
    }


def pictures(facts: Record) -> tuple[Shown, ...]:
    """Return the one picture: lines in a lightly chalked panel, in soft light."""
    cracks = mark(
        f"crack_{facts['pattern']}",
        about(facts.number("across"), facts.number("down"), REACH),
        severity=facts.number("severity"),
        direction=facts.number("direction"),
    )
    chalk = mark("oxidation", depth_um=facts.number("oxidation_um"))
    panel = scene(("gel_coat", "white"), facts.number("seed"), cracks, chalk)
    return (Shown("deck", panel, "diffuse", sought=(0,), zones=(Zone("crack", (0,), "refer", least=2, most=4),)),)
