"""PLN-01 *Just sand it*, version 1: a little chalk on a dark side, and an owner who wants it sanded flat.

Ranges stand in ``fixtures/scenarios/PLN-01-v1.toml``. Two medium sets and a finish are enough; a ladder of grades takes
eight times what the chalk is deep.
"""

from collections.abc import Mapping
from typing import Final

from assessments.scenarios.chance import Chance
from assessments.scenarios.fields import Record
from assessments.scenarios.plan_steps import acts, polished
from assessments.scenarios.scenes import Box, mark, scene
from assessments.scenarios.shown import Shown
from assessments.scenarios.spec import Kind

CUT_UM: Final = 6.6
"""What the plan of the key takes, model µm: two medium sets and a finishing set; the tests simulate it."""
OPEN: Final[Box] = (0.33, 0.0, 1.0, 1.0)
"""The part of the picture that lay open to the sun."""
_SPANNED: Final = ("film_um", "oxidation_um", "booked_min", "econ")


def draw(chance: Chance, kind: Kind) -> Mapping[str, object]:
    """Return the facts of one try; nothing here throws one away."""
    return {
        "substrate": "gel_coat",
        "colour": kind.pick(chance, "colour"),
        **{name: kind.between(chance, name) for name in _SPANNED},
        "scene_seed": round(kind.between(chance, "scene_seed")),
    }


def key(facts: Record) -> dict[str, object]:
    """Return two spots, the mildest plan that clears them, and the film it leaves."""
    return {
        "asked": ["gauge"],
        "trials": [{"op": "spot_refine", "sets": "1"}, {"op": "spot_refine", "sets": "2"}],
        "steps": [*acts("wash", "tape", "test_spot"), *polished("refine", "refine", "finish")],
        "film_um": round(facts.number("film_um") - CUT_UM),
    }


def surface(facts: Record) -> dict[str, object]:
    """Return the side as the door ``simulate`` takes it: chalk, the marks of a wash mitt, salt and dust."""
    return {
        "substrate": facts["substrate"],
        "colour": facts["colour"],
        "film_um": facts["film_um"],
        "oxidation_um": facts["oxidation_um"],
        "oxidation_cv": 0.25,
        "rz_um": 0.8,
        "tail_um": 1.2,
        "soiled": True,
    }


def pictures(facts: Record) -> tuple[Shown, ...]:
    """Return the side under a grey sky, with the place that a fender board covered."""
    chalk = mark("oxidation", OPEN, depth_um=facts.number("oxidation_um"))
    side = scene((str(facts["substrate"]), str(facts["colour"])), facts.number("scene_seed"), chalk)
    return (Shown("side", side, "diffuse", seen=(0,)),)
