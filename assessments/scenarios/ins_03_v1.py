"""INS-03 *Ghost of the old numbers*, version 1, the seeing half: what stands proud, what stays, what is left alone.

A dry panel shows the numbers in low light whether colour was lost or not; the wetted one tells the two apart. Ranges
stand in ``fixtures/scenarios/INS-03-v1.toml``.
"""

from collections.abc import Mapping
from typing import Final

from assessments.scenarios.chance import Chance
from assessments.scenarios.fields import Record
from assessments.scenarios.scenes import about, mark, scene
from assessments.scenarios.shown import Shown, Zone
from assessments.scenarios.spec import Kind

REACH: Final = (0.44, 0.32)
"""How far the numbers reach from their middle, in fractions of the picture across and down."""
NUMBERS: Final = 1
GROUND: Final = 2
VINYL: Final = 3
"""The rows of the verdicts: the numbers, the film round them, the half of the stripe under new vinyl."""


def draw(chance: Chance, kind: Kind) -> Mapping[str, object]:
    """Return the facts of one try."""
    return {
        **{name: kind.between(chance, name) for name in ("step_um", "film_um", "severity", "across", "down")},
        "half": kind.pick(chance, "half"),
        "glue": chance.happens(kind.number("glue_share")),
        "seed": round(kind.between(chance, "seed")),
        "colour": kind.name,
    }


def key(facts: Record) -> dict[str, object]:
    """Return the answer: the numbers stand proud, one flat stroke takes both, the vinyl is left, lost colour stays."""
    verdicts = {NUMBERS: "sand", GROUND: "sand", VINYL: "leave"}
    return {
        "step_verdict": "proud",
        "colour_verdict": facts["colour"],
        "verdicts": [{"n": n, "verdict": verdict} for n, verdict in verdicts.items()],
        "band": [NUMBERS, GROUND],
    }


def pictures(facts: Record) -> tuple[Shown, ...]:
    """Return the one picture: the dry panel under a lamp held low."""
    numbers = mark(
        "decal_ghost",
        about(facts.number("across"), facts.number("down"), REACH),
        severity=facts.number("severity"),
    )
    panel = scene(("gel_coat", "cream"), facts.number("seed"), numbers)
    return (Shown("side", panel, "raking", sought=(0,), zones=(Zone("numbers", (0,), least=3, most=14),)),)
