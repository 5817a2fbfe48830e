"""PLN-02 *White dust on the sleeve*, version 1: heavy chalk, a whole side, two days.

Ranges stand in ``fixtures/scenarios/PLN-02-v1.toml``. No polish reaches the bottom of such chalk; a ladder of grades
does, dried and looked at after each.
"""

from collections.abc import Mapping
from typing import Final

from assessments.scenarios.chance import Chance
from assessments.scenarios.fields import Record
from assessments.scenarios.plan_steps import acts, polished, sanded
from assessments.scenarios.scenes import WHOLE, mark, scene
from assessments.scenarios.shown import Shown
from assessments.scenarios.spec import Kind

LADDER: Final = (("P1000", 4), ("P1500", 4), ("P2000", 3))
"""Grades and passes of the key."""
MINUTES_M2: Final = 101.0
"""What the plan of the key takes on a square metre; the tests simulate it."""
_PICKED: Final = ("colour", "history")
_SPANNED: Final = ("film_um", "oxidation_um", "area_m2")


def draw(chance: Chance, kind: Kind) -> Mapping[str, object]:
    """Return the facts of one try; nothing here throws one away."""
    return {
        "substrate": "gel_coat",
        **{name: kind.pick(chance, name) for name in _PICKED},
        **{name: kind.between(chance, name) for name in _SPANNED},
        "scene_seed": round(kind.between(chance, "scene_seed")),
    }


def key(facts: Record) -> dict[str, object]:
    """Return the ladder, each grade dried and inspected, the three polishes, and their minutes."""
    return {
        "steps": [
            *acts("wash", "tape", "test_spot"),
            *sanded(*LADDER),
            *polished("cut", "refine", "finish"),
        ],
        "min_m2": MINUTES_M2,
    }


def surface(facts: Record) -> dict[str, object]:
    """Return the side as the door ``simulate`` takes it: deep chalk, and what scrubbing left on it."""
    return {
        **{name: facts[name] for name in ("substrate", "colour", "film_um", "oxidation_um")},
        "oxidation_cv": 0.25,
        "rz_um": 1.5,
        "tail_um": 3.0,
        "soiled": True,
    }


def pictures(facts: Record) -> tuple[Shown, ...]:
    """Return the side by a low lamp."""
    chalk = mark("oxidation", WHOLE, depth_um=facts.number("oxidation_um"))
    side = scene((str(facts["substrate"]), str(facts["colour"])), facts.number("scene_seed"), chalk)
    return (Shown("side", side, "raking", seen=(0,)),)
