"""INS-06 *White rings after the wash*, version 1: rings on the film or in it, and an acid that may be spent.

Weights and ranges stand in ``fixtures/scenarios/INS-06-v1.toml``. Lime and silica are pictured as mineral rings, which
acid takes or leaves.
"""

from collections.abc import Mapping
from typing import Final

from assessments.scenarios.chance import Chance
from assessments.scenarios.fields import Record
from assessments.scenarios.scenes import mark, scene
from assessments.scenarios.shown import Shown, Zone
from assessments.scenarios.spec import Kind

WIDTH: Final = 0.48
HEIGHT: Final = 0.52
LAMP_PARTS: Final = (0.1, 0.5, 0.9)
"""Where the lamp stands along the rings."""
RELIEF: Final[Mapping[str, str]] = {"mineral": "proud", "silica": "proud", "etched": "below", "both": "both"}
NEXT: Final[Mapping[str, tuple[str, ...]]] = {
    "mineral": ("chemistry",),
    "both": ("chemistry",),
    "etched": ("polish",),
    "silica": ("polish", "refer"),
}
"""What may come next on the rings; the first of them is the key."""
ACID_TAKES: Final = ("mineral", "both")
_PICKED: Final = ("colour", "acid", "true_defect")
_SPANNED: Final = ("film_um", "crust_severity", "rings_left", "rings_top")


def draw(chance: Chance, kind: Kind) -> Mapping[str, object]:
    """Return the facts of one try; nothing here throws one away."""
    hot = chance.happens(kind.number("hot_share"))
    return {
        "substrate": "gel_coat",
        "panel_degc": kind.between(chance, "hot_degc" if hot else "cool_degc"),
        **{name: kind.pick(chance, name) for name in _PICKED},
        **{name: kind.between(chance, name) for name in _SPANNED},
        "etch_severity": kind.between(chance, "etch_severity") if kind.has("etch_severity") else None,
        "scene_seed": round(kind.between(chance, "scene_seed")),
    }


def key(facts: Record) -> dict[str, object]:
    """Return low lamp first, acid on a spot while a try is left, and what the rings are."""
    true, acid_left = str(facts["true_defect"]), int(facts["acid"] != "three_times")
    return {
        "asked": ["raking", "acid_spot"] if acid_left else ["raking"],
        "relief": RELIEF[true],
        "defect": true,
        "ring_zones": ["side"],
        "right_next": list(NEXT[true]),
        "acid_left": acid_left,
    }


def pictures(facts: Record) -> tuple[Shown, ...]:
    """Return the rings by lamp, by a low lamp, and after acid; the lamp stands over the rings and at their ends."""
    true, box = str(facts["true_defect"]), _box(facts)
    crust = [mark("water_spots_mineral", box, severity=facts.number("crust_severity"))] if true != "etched" else []
    etch = [mark("water_spots_etched", box, severity=facts.number("etch_severity"))] if "etch_severity" in facts else []
    paint, seed = ("gel_coat", str(facts["colour"])), facts.number("scene_seed")
    left = etch if true in ACID_TAKES else [*crust, *etch]
    rings = scene(paint, seed, *crust, *etch)
    everything = tuple(range(len(crust) + len(etch)))
    lamps = tuple((round(box[0] + WIDTH * part, 2), round(box[1] + HEIGHT / 2, 2)) for part in LAMP_PARTS)
    side = Zone("side", everything, NEXT[true][0], least=4, most=15)
    return (
        Shown("rings", rings, "point", lamps),
        Shown("low_lamp", rings, "raking", lamps, sought=everything, zones=(side,)),
        Shown("after_acid", scene(paint, seed, *left), "point", lamps),
    )


def _box(facts: Record) -> tuple[float, float, float, float]:
    """Return the part of the picture that the rings lie in."""
    left, top = facts.number("rings_left"), facts.number("rings_top")
    return left, top, round(left + WIDTH, 2), round(top + HEIGHT, 2)
