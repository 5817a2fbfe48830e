"""PLN-03 *Where does it start?*, version 1: a side on which two spots failed, and a film nobody has read.

Ranges stand in ``fixtures/scenarios/PLN-03-v1.toml``. Polish alone leaves most of this chalk; one grade under it is
enough, a whole ladder takes twice as much.
"""

from collections.abc import Mapping
from typing import Final

from assessments.scenarios.chance import Chance
from assessments.scenarios.fields import Record
from assessments.scenarios.plan_steps import acts, polished, sanded
from assessments.scenarios.scenes import WHOLE, mark, scene
from assessments.scenarios.shown import Shown
from assessments.scenarios.spec import Kind

START: Final = ("P1500", 4)
"""Grade and passes that the key starts with."""
MISSING: Final = "gauge"
"""The reading without which nobody may sand."""
_SPANNED: Final = ("film_um", "oxidation_um", "econ")


def draw(chance: Chance, kind: Kind) -> Mapping[str, object]:
    """Return the facts of one try; nothing here throws one away."""
    return {
        "substrate": "gel_coat",
        "colour": kind.pick(chance, "colour"),
        "sunny": kind.pick(chance, "sunny"),
        **{name: kind.between(chance, name) for name in _SPANNED},
        "missing": MISSING,
        "scene_seed": round(kind.between(chance, "scene_seed")),
    }


def key(facts: Record) -> dict[str, object]:
    """Return the film read, one spot a step milder than a ladder, and the plan that starts with it."""
    grade, _ = START
    return {
        "trials": [{"op": "spot_sand", "grade": grade, "sets": "1"}],
        "asked": [MISSING],
        "steps": [*acts("wash", "tape", "test_spot"), *sanded(START), *polished("cut", "refine", "finish")],
    }


def surface(facts: Record) -> dict[str, object]:
    """Return the side as the door ``simulate`` takes it: chalk of a middling depth, salt and dust on it."""
    told = {name: facts[name] for name in ("substrate", "colour", "film_um", "oxidation_um")}
    return {**told, "oxidation_cv": 0.25, "rz_um": 1.0, "tail_um": 2.0, "soiled": True}


def pictures(facts: Record) -> tuple[Shown, ...]:
    """Return the side under a grey sky."""
    chalk = mark("oxidation", WHOLE, depth_um=facts.number("oxidation_um"))
    side = scene((str(facts["substrate"]), str(facts["colour"])), facts.number("scene_seed"), chalk)
    return (Shown("side", side, "diffuse", seen=(0,)),)
