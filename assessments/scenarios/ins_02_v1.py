"""INS-02 *Faded or oxidised*, version 1: a pale side, tests that tell chalk from lost colour, wax that hides both.

Weights and ranges stand in ``fixtures/scenarios/INS-02-v1.toml``. Wet, oxidation looks as if it were gone; fading
doesn't, and no polish reaches it.
"""

from collections.abc import Mapping
from typing import Final

from assessments.scenarios.chance import Chance
from assessments.scenarios.fields import Record
from assessments.scenarios.scenes import Box, mark, scene
from assessments.scenarios.shown import Shown
from assessments.scenarios.spec import Kind

PROMISE: Final[Mapping[str, str]] = {"oxidation": "colour_back", "both": "part", "fading": "gloss_only"}
PALE: Final[Box] = (0.33, 0.0, 1.0, 1.0)
"""The open side; left of it the name board hung."""
TAPE_AT: Final = 0.67
SPOT_UM: Final = 15.0
"""What the spot takes off: more than the chalk that is drawn, far less than the fading."""
_PICKED: Final = ("colour", "sunny", "true_defect")
_SPANNED: Final = ("film_um", "chalk_severity", "fade_severity")


def draw(chance: Chance, kind: Kind) -> Mapping[str, object]:
    """Return the facts of one try; nothing here throws one away."""
    told = {name: kind.pick(chance, name) for name in _PICKED}
    depths = {name: kind.between(chance, name) for name in _SPANNED}
    seed = round(kind.between(chance, "scene_seed"))
    return {
        "substrate": "gel_coat",
        **told,
        **depths,
        "wax": chance.happens(kind.number("wax_share")),
        "scene_seed": seed,
    }


def key(facts: Record) -> dict[str, object]:
    """Return the tests that tell, the promise that holds, and the mildest work that keeps it."""
    true = str(facts["true_defect"])
    polish = [] if true == "fading" else [{"op": "cut", "zone": "side"}]
    return {
        "asked": [*(["wipe"] if facts["wax"] else []), "wet", "cloth", "covered_patch", "spot"],
        "defect": true,
        "promise": PROMISE[true],
        "steps": [
            {"op": "test_spot", "zone": "spot"},
            *polish,
            {"op": "finish", "zone": "side"},
            {"op": "record", "zone": "side"},
            {"op": "tell"},
        ],
        "record_zones": ["all"],
    }


def pictures(facts: Record) -> tuple[Shown, ...]:
    """Return the side dry, the side wet, and the spot beside its tape, all under a grey sky."""
    true = str(facts["true_defect"])
    paint, seed = ("gel_coat", str(facts["colour"])), facts.number("scene_seed")
    chalk = [mark("oxidation", PALE, severity=facts.number("chalk_severity"))] if true != "fading" else []
    faded = [mark("fading", PALE, severity=facts.number("fade_severity"))] if true != "oxidation" else []
    dry = scene(paint, seed, *chalk, *faded)
    wet = scene(paint, seed, *faded)
    return (
        Shown("dry", dry, "diffuse", seen=tuple(range(len(chalk) + len(faded)))),
        Shown("wetted", wet, "diffuse", seen=tuple(range(len(faded)))),
        Shown("taped", {**dry, "removed_um": SPOT_UM, "removed_right_of": TAPE_AT}, "diffuse"),
    )
