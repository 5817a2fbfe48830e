"""INS-06 *White rings after the wash*, version 2: rings on the film or in it, and the plan that takes them off.

Version 1 drew and showed the rings; here a hollow has its depth for the simulator too. Lime and silica are both a
deposit there, and what acid leaves of silica the rules judge. Ranges stand in ``fixtures/scenarios/INS-06-v2.toml``.
"""

from collections.abc import Mapping
from typing import Final

from assessments.scenarios import ins_06_v1
from assessments.scenarios.chance import Chance
from assessments.scenarios.fields import Record
from assessments.scenarios.ins_06_v1 import ACID_TAKES, pictures
from assessments.scenarios.plan_steps import Step, acts, in_zone, polished
from assessments.scenarios.spec import Kind

__all__ = ["draw", "key", "pictures", "surface"]

SIDE: Final = "side"
HOLLOW: Final = ("etched", "both")
"""Where something lies below the film."""
CRUST: Final = "water_spots_mineral"
CRUST_UM: Final = 2.0
"""How proud lime and silica stand: common practice says 0.1 to 5."""


def draw(chance: Chance, kind: Kind) -> Mapping[str, object]:
    """Return the facts of one try: those of version 1, the depth of a hollow, and the hottest panel of the label."""
    etch = kind.between(chance, "etch_um") if kind.has("etch_um") else None
    return {**ins_06_v1.draw(chance, kind), "etch_um": etch, "limit_degc": kind.number("limit_degc")}


def surface(facts: Record) -> Mapping[str, object]:
    """Return the side as the simulator takes it; the spot is a corner of it with nothing of its own to be done.

    Silica may stay: nothing here is asked to take it off.
    """
    crust = [{"kind": CRUST, "depth_um": CRUST_UM}] if facts["true_defect"] != "etched" else []
    hollow = [{"kind": "water_spots_etched", "depth_um": facts["etch_um"]}] if "etch_um" in facts else []
    return {
        "substrate": "gel_coat",
        "colour": facts["colour"],
        "film_um": facts.number("film_um"),
        "panel_degc": facts.number("panel_degc"),
        "soiled": False,
        "agreed": {"may_stay": [CRUST] if facts["true_defect"] == "silica" else []},
        "zones": [{"name": SIDE, "defects": [*crust, *hollow]}, {"name": "spot", "idle": True}],
    }


def key(facts: Record) -> dict[str, object]:
    """Return the key of version 1, and the plan that takes the rings off."""
    return {**ins_06_v1.key(facts), "steps": _plan(str(facts["true_defect"]))}


def _plan(true: str) -> list[Step]:
    """Return the steps: cool and acid for lime, the finest two polishes for a hollow, clay and a word for silica."""
    acid: list[Step] = [*acts("prerinse"), {"op": "acid", "zone": SIDE}, *acts("rinse", "dry", "inspect")]
    fine: Step = {"op": "refine", "machine": "da", "pad": "foam_cut", "compound": "medium", "zone": SIDE}
    polish: list[Step] = [{"op": "test_spot", "zone": "spot"}, fine, *acts("wipe"), *in_zone(SIDE, polished("finish"))]
    if true == "silica":
        return [{"op": "clay", "zone": SIDE}, *acts("inspect", "tell")]
    return [*(acid if true in ACID_TAKES else []), *(polish if true in HOLLOW else [])]
