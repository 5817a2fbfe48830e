"""INS-07 *Shiny before lunch*, version 1: a panel full of oils that looks perfect, with or without trails under them.

Weights and ranges stand in ``fixtures/scenarios/INS-07-v1.toml``. Before the wipe both kinds look alike.
"""

from collections.abc import Mapping
from typing import Final

from assessments.scenarios.chance import Chance
from assessments.scenarios.fields import Record
from assessments.scenarios.scenes import LAMP_PLACES, mark, scene
from assessments.scenarios.shown import Shown
from assessments.scenarios.spec import Kind

GIVEN: Final = ("gloss", "film", "log")
"""What lies on the bench already, so that nobody needs it read again."""
_PICKED: Final = ("colour", "sheet")
_WHOLE: Final = ("gloss60", "direction", "scene_seed")


def draw(chance: Chance, kind: Kind) -> Mapping[str, object]:
    """Return the facts of one try; nothing here throws one away."""
    film, trails = kind.pick(chance, "film"), kind.has("trail_um")
    gel = film == "gel_coat"
    return {
        "substrate": "gel_coat" if gel else "clear_coat",
        "soft": film == "clear_soft",
        **{name: kind.pick(chance, name) for name in _PICKED},
        **{name: round(kind.between(chance, name)) for name in _WHOLE},
        "paid_h": kind.between(chance, "paid_h"),
        "film_um": kind.between(chance, "gel_film_um" if gel else "clear_film_um"),
        "stray_um": kind.between(chance, "stray_um"),
        "given": list(GIVEN),
        "trails": trails,
        "true_defect": "hologram" if trails else "none",
        "trail_um": kind.between(chance, "trail_um") if trails else None,
    }


def key(facts: Record) -> dict[str, object]:
    """Return wipe, lamp at two places, and what the panel then turns out to need."""
    return {
        "steps": [{"op": "wipe"}, {"op": "lamp", "place": "left"}, {"op": "lamp", "place": "right"}],
        "asked": ["wipe"],
        "defect": facts["true_defect"],
        "remedy": "finish_da" if facts["trails"] else "none",
        "released": not facts["trails"],
    }


def pictures(facts: Record) -> tuple[Shown, ...]:
    """Return the panel with its oils from one side and from the other, and wiped by lamp at five places."""
    marks = []
    if facts["trails"]:
        marks.append(mark("hologram", depth_um=facts.number("trail_um"), direction=facts.number("direction")))
    wiped = scene((str(facts["substrate"]), str(facts["colour"])), facts.number("scene_seed"), *marks)
    oily = {**wiped, "oils": True}
    return (
        Shown("as_it_stands", oily, "point", LAMP_PLACES[:1]),
        Shown("other_side", oily, "point", LAMP_PLACES[-1:]),
        Shown("wiped", wiped, "point", LAMP_PLACES, sought=tuple(range(len(marks)))),
    )
