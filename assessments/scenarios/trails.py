"""A panel with trails of a rotary in its finish: drawn, pictured, and laid out for the simulator.

PLN-09 and CUT-04 show the same panel: trails as deep as one finishing set levels, strays that nobody sees.
"""

from collections.abc import Mapping
from typing import Final

from assessments.scenarios.chance import Chance
from assessments.scenarios.fields import Record
from assessments.scenarios.scenes import mark, scene
from assessments.scenarios.spec import Kind

SOFT: Final = "clear_soft"
"""The kind of draw whose clear coat is a soft one."""
HARDNESS: Final[Mapping[bool, float]] = {False: 1.0, True: 1.3}
"""How much faster than usual clear coat it wears, soft or not."""
_SPANNED: Final = ("film_um", "trail_um", "stray_um")
_WHOLE: Final = ("direction", "scene_seed")


def drawn_panel(chance: Chance, kind: Kind) -> dict[str, object]:
    """Return the facts of one panel; the kind's name says what it is made of."""
    return {
        "substrate": "gel_coat" if kind.name == "gel_coat" else "clear_coat",
        "soft": kind.name == SOFT,
        "colour": kind.pick(chance, "colour"),
        "true_defect": "hologram",
        **{name: kind.between(chance, name) for name in _SPANNED},
        **{name: round(kind.between(chance, name)) for name in _WHOLE},
    }


def panel_scene(facts: Record) -> dict[str, object]:
    """Return the scene of the panel as the door ``picture`` takes it, its trails the first and only mark."""
    trails = mark("hologram", depth_um=facts.number("trail_um"), direction=facts.number("direction"))
    return scene((str(facts["substrate"]), str(facts["colour"])), facts.number("scene_seed"), trails)


def panel_surface(facts: Record) -> dict[str, object]:
    """Return the panel as the door ``simulate`` takes it: washed, wiped, full of trails."""
    return {
        "substrate": facts["substrate"],
        "colour": facts["colour"],
        "hardness": HARDNESS[bool(facts["soft"])],
        "film_um": facts["film_um"],
        "trail_um": facts["trail_um"],
        "tail_um": facts["stray_um"],
        "soiled": False,
        "oils": False,
    }
