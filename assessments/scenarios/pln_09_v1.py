"""PLN-09 *97 gloss and a bright sun*, version 1: trails that a meter at 60° doesn't read and the owner sees.

Ranges stand in ``fixtures/scenarios/PLN-09-v1.toml``. The trails are as deep as one finishing set levels.
"""

from collections.abc import Mapping
from typing import Final

from assessments.scenarios.chance import Chance
from assessments.scenarios.fields import Record
from assessments.scenarios.scenes import LAMP_PLACES, mark, scene
from assessments.scenarios.shown import Shown
from assessments.scenarios.spec import Kind

SOFT: Final = "clear_soft"
"""The kind of draw whose clear coat is a soft one."""
_FIXED: Final = ("gloss60", "perfect20")
_WHOLE: Final = ("g20", "direction", "scene_seed")
_SPANNED: Final = ("film_um", "trail_um", "stray_um")


def draw(chance: Chance, kind: Kind) -> Mapping[str, object]:
    """Return the facts of one try; nothing here throws one away."""
    return {
        "substrate": "gel_coat" if kind.name == "gel_coat" else "clear_coat",
        "soft": kind.name == SOFT,
        "colour": kind.pick(chance, "colour"),
        "true_defect": "hologram",
        **{name: round(kind.number(name)) for name in _FIXED},
        **{name: round(kind.between(chance, name)) for name in _WHOLE},
        **{name: kind.between(chance, name) for name in _SPANNED},
    }


def key(_facts: Record) -> dict[str, object]:
    """Return lamp and 20°, one finishing set, the wipe and two lamp places after it, and an honest word."""
    return {
        "asked": ["lamp", "g20"],
        "defect": "hologram",
        "evidence": "lamp_and_20",
        "steps": [
            {"op": "finish"},
            {"op": "wipe"},
            {"op": "lamp", "place": "left"},
            {"op": "lamp", "place": "right"},
        ],
        "remedy": "finish_da",
        "released": False,
        "reply": "shown",
    }


def pictures(facts: Record) -> tuple[Shown, ...]:
    """Return the panel under the tubes, where nothing shows, and by a lamp at five places."""
    trails = mark("hologram", depth_um=facts.number("trail_um"), direction=facts.number("direction"))
    panel = scene((str(facts["substrate"]), str(facts["colour"])), facts.number("scene_seed"), trails)
    return (
        Shown("in_the_shop", panel, "diffuse", unseen=(0,)),
        Shown("by_lamp", panel, "point", LAMP_PLACES, sought=(0,)),
    )
