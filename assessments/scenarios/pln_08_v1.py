"""PLN-08 *I skip 1500, works fine*, version 1: strays of P1000 under a finish, and a budget that is half spent.

Ranges stand in ``fixtures/scenarios/PLN-08-v1.toml``. A P1000 stray of 4.7 model µm less one medium set leaves what is
drawn.
"""

from collections.abc import Mapping
from typing import Final

from assessments.scenarios.chance import Chance
from assessments.scenarios.fields import Record
from assessments.scenarios.plan_steps import acts, polished, sanded
from assessments.scenarios.scenes import LAMP_PLACES, mark, scene
from assessments.scenarios.shown import Shown
from assessments.scenarios.spec import Kind

FINISHED_UM: Final = 0.4
"""Mean scratch of the side as it stands: what the medium set left."""
_SPANNED: Final = ("launch_h", "film_um", "budget", "tail_um")


def draw(chance: Chance, kind: Kind) -> Mapping[str, object]:
    """Return the facts of one try; nothing here throws one away."""
    return {
        "true_defect": "sanding_marks",
        "colour": kind.pick(chance, "colour"),
        "reserve": kind.number("reserve"),
        **{name: kind.between(chance, name) for name in _SPANNED},
        **{name: round(kind.between(chance, name)) for name in ("direction", "scene_seed")},
    }


def key(_facts: Record) -> dict[str, object]:
    """Return the stage that was skipped, begun again with two passes, and the polish after it."""
    return {
        "defect": "sanding_marks",
        "stage": "P1000_to_medium",
        "explain": "medium_2_1",
        "would_see": "lines",
        "restart": "P1500",
        "steps": [
            *acts("tape"),
            *sanded(("P1500", 2)),
            *polished("cut", "refine", "finish"),
            *acts("inspect"),
        ],
    }


def surface(facts: Record) -> dict[str, object]:
    """Return the side as the door ``simulate`` takes it: finished but for the strays."""
    return {
        "substrate": "gel_coat",
        "colour": facts["colour"],
        "soiled": False,
        "film_um": facts["film_um"],
        "reserve_um": facts["reserve"],
        "budget_um": facts["budget"],
        "rz_um": FINISHED_UM,
        "tail_um": facts["tail_um"],
    }


def pictures(facts: Record) -> tuple[Shown, ...]:
    """Return part of the side by a lamp at five places."""
    lines = mark("sanding_marks", depth_um=facts.number("tail_um"), direction=facts.number("direction"))
    panel = scene(("gel_coat", str(facts["colour"])), facts.number("scene_seed"), lines)
    return (Shown("in_the_sun", panel, "point", LAMP_PLACES, seen=(0,)),)
