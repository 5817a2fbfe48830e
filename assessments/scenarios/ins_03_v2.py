"""INS-03 *Ghost of the old numbers*, version 2: what is seen, and the plan that takes the step down.

What is drawn and shown is that of version 1. The step lies on the band that one flat stroke takes: numbers and ground
together. Ranges stand in ``fixtures/scenarios/INS-03-v2.toml``.
"""

from collections.abc import Mapping
from typing import Final

from assessments.scenarios.fields import Record
from assessments.scenarios.ins_03_v1 import draw, pictures
from assessments.scenarios.plan_steps import acts, in_zone, polished

__all__ = ["draw", "key", "pictures", "surface"]

BAND: Final = "band"
"""Numbers and the film round them, under one flat stroke."""
SPREAD: Final = 1.2
"""Geometric standard deviation of the step along the edges of the numbers."""
FLAT: Final[Mapping[str, object]] = {"op": "sand", "pad": "disc", "zone": BAND}
"""A hard disc that lies on high and low film at once."""


def surface(facts: Record) -> Mapping[str, object]:
    """Return the side as the simulator takes it: the step on the band; what else is named has nothing to take off."""
    step = {"kind": "decal_ghost", "depth_um": facts.number("step_um"), "spread": SPREAD}
    return {
        "substrate": "gel_coat",
        "colour": "cream",
        "film_um": facts.number("film_um"),
        "soiled": False,
        "zones": [
            {"name": BAND, "defects": [step]},
            *({"name": name, "idle": True} for name in ("numbers", "ground", "vinyl")),
        ],
    }


def key(facts: Record) -> dict[str, object]:
    """Return what stands proud, what stays, and the flat way down: paper until the edge is gone, then polish."""
    stages = ({"grade": "P1500", "passes": 4, "sets": "until_clear"}, {"grade": "P2000", "passes": 3})
    paper = [step for stage in stages for step in ({**FLAT, **stage}, *acts("dry", "inspect"))]
    return {
        "step_verdict": "proud",
        "colour_verdict": facts["colour"],
        "steps": [
            *acts("wipe", "tape"),
            {"op": "test_spot", "zone": BAND},
            *paper,
            *in_zone(BAND, polished("cut", "refine", "finish")),
        ],
    }
