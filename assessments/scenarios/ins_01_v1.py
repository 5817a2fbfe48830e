"""INS-01 *Rings or rays*, version 1: fine marks on a dark panel, and a note that is right in half of all draws.

Kinds and ranges stand in ``fixtures/scenarios/INS-01-v1.toml``. The marks are named by the scene they are drawn in, not
by looking at its pixels; where they don't stand out the draw is thrown away.
"""

from collections.abc import Mapping
from typing import Final

from assessments.scenarios.chance import Chance
from assessments.scenarios.fields import Record
from assessments.scenarios.scenes import LAMP_PLACES, mark, scene
from assessments.scenarios.shown import Shown
from assessments.scenarios.spec import Kind

MOVES: Final[Mapping[str, str]] = {"swirl": "rings_travel", "hologram": "bands_flash", "da_haze": "fog_sits"}
CAUSE: Final[Mapping[str, str]] = {"swirl": "wash_grit", "hologram": "rotary_tilt", "da_haze": "harsh_pad"}
_PICKED: Final = ("substrate", "colour", "noted", "true_defect")
_SPANNED: Final = ("back_h", "minutes_left", "severity")
_WHOLE: Final = ("direction", "scene_seed")


def draw(chance: Chance, kind: Kind) -> Mapping[str, object]:
    """Return the facts of one try; nothing here throws one away."""
    return {
        **{name: kind.pick(chance, name) for name in _PICKED},
        **{name: kind.between(chance, name) for name in _SPANNED},
        **{name: round(kind.between(chance, name)) for name in _WHOLE},
        "oils": chance.happens(kind.number("oils_share")),
    }


def key(facts: Record) -> dict[str, object]:
    """Return the answer that the scene allows: wiped, the lamp at two places, the mildest pad."""
    true = str(facts["true_defect"])
    mild = ["finish_foam_da"] + (["cut_foam_da"] if true == "swirl" else [])
    return {
        "looks": [
            {"op": "diffuse"},
            {"op": "wipe"},
            {"op": "lamp", "place": "left"},
            {"op": "lamp", "place": "right"},
        ],
        "moves": MOVES[true],
        "defect": true,
        "cause": CAUSE[true],
        "first_try": mild[-1],
        "finish_after": "da",
        "evidence": ["lamp_moved", "wiped_first"],
        "mild": mild,
    }


def pictures(facts: Record) -> tuple[Shown, ...]:
    """Return the panel in even light, by lamp as it came in, and wiped by lamp at five places."""
    marks = mark(str(facts["true_defect"]), severity=facts.number("severity"), direction=facts.number("direction"))
    paint = str(facts["substrate"]), str(facts["colour"])
    wiped = scene(paint, facts.number("scene_seed"), marks)
    found = {**wiped, "oils": facts["oils"]}
    return (
        Shown("even_light", found, "diffuse"),
        Shown("as_found", found, "point", LAMP_PLACES[:1]),
        Shown("wiped", wiped, "point", LAMP_PLACES, sought=(0,)),
    )
