"""CUT-02 *The dropped disc*, version 1: strays in one part of a sanded section, and a pot of compound that waits.

Ranges stand in ``fixtures/scenarios/CUT-02-v1.toml``. The field is as P1500 leaves it; the strays go deeper than any
three pads reach, and not so deep that the grade before is called for.
"""

from collections.abc import Mapping
from math import ceil
from typing import Final

from assessments.scenarios.chance import Chance
from assessments.scenarios.fields import Record
from assessments.scenarios.plan_steps import acts, in_zone, polished, sanded
from assessments.scenarios.scenes import about, mark, scene
from assessments.scenarios.shown import Lamp, Shown, Zone
from assessments.scenarios.spec import Kind

PART: Final = "part"
"""The zone of the strays."""
REDONE: Final = (("P1500", 4), ("P2000", 3))
"""Grades and passes of the key on that zone."""
SATIN: Final[Mapping[str, float]] = {"rz_um": 1.69, "tail_um": 2.87}
"""Mean and deepest scratch that P1500 leaves, model µm."""
DEEP_M: Final = 0.8
"""How far a section reaches up the side."""
DISC_M2: Final = 0.75
"""What one disc does: common practice says half a square metre to one."""
LAMPS: Final[tuple[Lamp, ...]] = ((0.38, 0.42), (0.5, 0.42), (0.62, 0.42))
SCATTERED: Final = (0.19, 0.2)
IN_STEP: Final = (0.3, 0.08)
PATCH: Final = (0.09, 0.17)
"""How far marks reach from their middle, in fractions of the picture: curls, arcs in a row, each of two patches."""
BELOW: Final = 0.1
"""How much lower arcs lie, so that the image of the lamp doesn't stand on them."""
_SPANNED: Final = ("section_m", "stray_um", "budget", "film_um", "across", "down")
_WHOLE: Final = ("direction", "scene_seed")


def draw(chance: Chance, kind: Kind) -> Mapping[str, object]:
    """Return the facts of one try; nothing here throws one away. The kind is the cause."""
    return {
        "cause": kind.name,
        "looked": chance.happens(kind.number("looked_share")),
        "colour": kind.pick(chance, "colour"),
        **{name: kind.between(chance, name) for name in _SPANNED},
        **{name: round(kind.between(chance, name)) for name in _WHOLE},
        "reserve": kind.number("reserve"),
    }


def key(facts: Record) -> dict[str, object]:
    """Return the cause, the part done again and then the polishes, and the discs that the next section takes."""
    redone = in_zone(PART, sanded(*REDONE))
    return {
        "cause": facts["cause"],
        "steps": [*acts("rinse", "dry", "inspect"), *redone, *polished("cut", "refine", "finish")],
        "discs": ceil(round(facts.number("section_m") * DEEP_M / DISC_M2, 6)),
        "zone": [PART],
    }


def surface(facts: Record) -> dict[str, object]:
    """Return the stretch as the door ``simulate`` takes it: two sections in satin, strays in a part of the second."""
    return {
        "substrate": "gel_coat",
        "colour": facts["colour"],
        "film_um": facts["film_um"],
        "reserve_um": facts["reserve"],
        "budget_um": facts["budget"],
        "soiled": False,
        "taped": True,
        "wet": not facts["looked"],
        **SATIN,
        "rest": "side",
        "zones": [{"name": "section", "share": 0.4}, {"name": PART, "share": 0.1, "tail_um": facts["stray_um"]}],
    }


def pictures(facts: Record) -> tuple[Shown, ...]:
    """Return section two, dry, by a lamp held low: curls, arcs in a row, or patches."""
    across, down = facts.number("across"), facts.number("down")
    how = {"depth_um": facts.number("stray_um"), "direction": facts.number("direction")}
    if facts["cause"] == "dulled":
        middles = ((across - 0.12, down - 0.06), (across + 0.12, down + 0.06))
        marks = [mark("sanding_marks", about(*middle, PATCH), **how) for middle in middles]
    else:
        dropped = facts["cause"] == "dropped"
        where = about(across, down, SCATTERED) if dropped else about(across, down + BELOW, IN_STEP)
        marks = [mark("pigtail", where, **how)]
    panel = scene(("gel_coat", str(facts["colour"])), facts.number("scene_seed"), *marks)
    every = tuple(range(len(marks)))
    sought = () if facts["cause"] == "dulled" else every
    part = Zone(PART, every, least=2, most=10)
    return (Shown("section", panel, "raking", LAMPS, seen=every, sought=sought, zones=(part,)),)
