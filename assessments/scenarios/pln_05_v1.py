"""PLN-05 *Black car, grey sun*, version 1: swirls that no grey sky shows, on a clear coat that has eight to spend.

Ranges stand in ``fixtures/scenarios/PLN-05-v1.toml``. Cutting foam on a dual action and a finish clear them; sanding
spends more than the budget on marks under two micrometres deep.
"""

from collections.abc import Mapping
from typing import Final

from assessments.scenarios.chance import Chance
from assessments.scenarios.fields import Record
from assessments.scenarios.plan_steps import acts, polished
from assessments.scenarios.scenes import LAMP_PLACES, WHOLE, mark, scene
from assessments.scenarios.shown import Shown
from assessments.scenarios.spec import Kind

CUTTING_FOAM: Final[Mapping[str, object]] = {"op": "cut", "pad": "foam_cut", "compound": "medium", "machine": "da"}
HARDNESS: Final[Mapping[bool, float]] = {False: 1.0, True: 1.3}
"""Of a normal clear coat, and of a soft one."""
_SPANNED: Final = ("film_um", "swirl_um", "reserve", "budget")


def draw(chance: Chance, kind: Kind) -> Mapping[str, object]:
    """Return the facts of one try; nothing here throws one away."""
    return {
        "substrate": "clear_coat",
        "colour": "black",
        "panel": kind.pick(chance, "panel"),
        "soft": kind.name == "soft",
        **{name: kind.between(chance, name) for name in _SPANNED},
        "scene_seed": round(kind.between(chance, "scene_seed")),
    }


def key(facts: Record) -> dict[str, object]:
    """Return the plan that clears the swirls for about half of the budget, and the proof by lamp."""
    cut = [{**CUTTING_FOAM, "passes": 6}, *acts("wipe")]
    return {
        "steps": [*acts("wash", "tape", "test_spot"), *cut, *polished("finish"), *acts("inspect")],
        "proof": "lamp_wiped",
    }


def surface(facts: Record) -> dict[str, object]:
    """Return the panel as the door ``simulate`` takes it: swirls everywhere, road dust on them."""
    swirls = {"kind": "swirl", "depth_um": facts["swirl_um"], "spread": 1.6, "cover": 0.06}
    return {
        "substrate": facts["substrate"],
        "colour": facts["colour"],
        "film_um": facts["film_um"],
        "hardness": HARDNESS[bool(facts["soft"])],
        "reserve_um": facts["reserve"],
        "budget_um": facts["budget"],
        "soiled": True,
        "defects": [swirls],
    }


def pictures(facts: Record) -> tuple[Shown, ...]:
    """Return the panel under a grey sky, where nothing shows, and by one lamp."""
    swirls = mark("swirl", WHOLE, depth_um=facts.number("swirl_um"))
    panel = scene((str(facts["substrate"]), str(facts["colour"])), facts.number("scene_seed"), swirls)
    return (
        Shown("yard", panel, "diffuse", unseen=(0,)),
        Shown("lamp", panel, "point", LAMP_PLACES, seen=(0,)),
    )
