"""PLN-09 *97 gloss and a bright sun*, version 1: trails that a meter at 60° doesn't read and the owner sees.

Ranges stand in ``fixtures/scenarios/PLN-09-v1.toml``. The trails are as deep as one finishing set levels.
"""

from collections.abc import Mapping
from typing import Final

from assessments.scenarios.chance import Chance
from assessments.scenarios.fields import Record
from assessments.scenarios.scenes import LAMP_PLACES
from assessments.scenarios.shown import Shown
from assessments.scenarios.spec import Kind
from assessments.scenarios.trails import drawn_panel, panel_scene

_FIXED: Final = ("gloss60", "perfect20")


def draw(chance: Chance, kind: Kind) -> Mapping[str, object]:
    """Return the facts of one try; nothing here throws one away."""
    return {
        **drawn_panel(chance, kind),
        **{name: round(kind.number(name)) for name in _FIXED},
        "g20": round(kind.between(chance, "g20")),
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
    panel = panel_scene(facts)
    return (
        Shown("in_the_shop", panel, "diffuse", unseen=(0,)),
        Shown("by_lamp", panel, "point", LAMP_PLACES, sought=(0,)),
    )
