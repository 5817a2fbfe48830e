"""CUT-04 *Last wipe, sun out*, version 1: trails of a slow rotary, an hour left, and one set that takes them out.

Ranges stand in ``fixtures/scenarios/CUT-04-v1.toml``. The trails are as deep as a finishing set levels.
"""

from collections.abc import Mapping

from assessments.scenarios.chance import Chance
from assessments.scenarios.fields import Record
from assessments.scenarios.plan_steps import acts
from assessments.scenarios.scenes import LAMP_PLACES
from assessments.scenarios.shown import Shown
from assessments.scenarios.spec import Kind
from assessments.scenarios.trails import drawn_panel, panel_scene, panel_surface


def draw(chance: Chance, kind: Kind) -> Mapping[str, object]:
    """Return the facts of one try; nothing here throws one away."""
    return {
        **drawn_panel(chance, kind),
        "reserve": kind.number("reserve"),
        "left_min": round(kind.number("left_min")),
    }


def key(_facts: Record) -> dict[str, object]:
    """Return one finishing set on the dual action, wiped, and the lamp from two places."""
    return {
        "defect": "hologram",
        "cause": "rotary_wool",
        "steps": [
            *acts("tape"),
            {"op": "finish", "pad": "foam_finish", "compound": "fine", "machine": "da"},
            *acts("wipe", "inspect"),
        ],
        "proof": ["right", "left"],
    }


def surface(facts: Record) -> dict[str, object]:
    """Return the panel as the door ``simulate`` takes it, with the reserve that is printed."""
    return {**panel_surface(facts), "reserve_um": facts["reserve"]}


def pictures(facts: Record) -> tuple[Shown, ...]:
    """Return the panel by a lamp at five places."""
    return (Shown("by_lamp", panel_scene(facts), "point", LAMP_PLACES, sought=(0,)),)
