"""PLN-07 *Thin at the bow*, version 1: chalk from end to end, and a bow with hardly more film than has to stay.

Ranges stand in ``fixtures/scenarios/PLN-07-v1.toml``. The gauge is good to ten micrometres, the bow lies that far above
the reserve: so the rest is worked, the bow is left, and both are said.
"""

from collections.abc import Mapping
from statistics import fmean
from types import MappingProxyType
from typing import Final

from assessments.scenarios.chance import Chance
from assessments.scenarios.fields import Record
from assessments.scenarios.plan_steps import acts, in_zone, polished, sanded
from assessments.scenarios.scenes import WHOLE, mark, scene
from assessments.scenarios.shown import Shown
from assessments.scenarios.sketch import Thrown
from assessments.scenarios.spec import Kind

READINGS: Final = 10
DOUBT_UM: Final = 10.0
"""How far a mean by ultrasound can be off on the rough back of a gel coat: common practice, no source."""
LADDER: Final = (("P1000", 4), ("P1500", 4), ("P2000", 3))
MISSING: Final = "gauge"
DULL: Final = MappingProxyType({"gloss60": 0, "gloss20": 0, "may_stay": ("oxidation",)})
"""The finish of a bow that is left as it is."""
_SPANNED: Final = ("rest_um", "reserve", "budget", "oxidation_um", "length_m")


def draw(chance: Chance, kind: Kind) -> Mapping[str, object] | Thrown:
    """Return the facts of one try, or the condition that threw it away."""
    span = kind.span("reading_um")
    bow = [chance.between(span) for _ in range(READINGS)]
    if fmean(bow) not in kind.span("bow_mean_um"):
        return Thrown("the mean of the ten readings leaves its range")
    return {
        "substrate": "gel_coat",
        "colour": kind.pick(chance, "colour"),
        **{name: kind.between(chance, name) for name in _SPANNED},
        "bow_um": bow,
        "missing": MISSING,
        "scene_seed": round(kind.between(chance, "scene_seed")),
    }


def key(facts: Record) -> dict[str, object]:
    """Return the reading at the bow, the rest worked and the bow left, and what is said of it."""
    rest = [*acts("tape", "test_spot"), *sanded(*LADDER), *polished("cut", "refine", "finish")]
    return {
        "asked": [MISSING],
        "steps": [*acts("wash"), *in_zone("rest", rest), *in_zone("bow", acts("record")), *acts("tell")],
        "doubt_um": DOUBT_UM,
        "states_bow": "stays_dull",
        "record_zones": ["bow"],
    }


def surface(facts: Record) -> dict[str, object]:
    """Return the side as the door ``simulate`` takes it: one chalk, two films.

    What was agreed on holds for the rest; at the bow chalk may stay, so that who leaves it has left nothing undone.
    """
    budget = facts["budget"]
    bow = {"name": "bow", "film_um": round(bow_mean_um(facts), 1), "budget_um": budget, "agreed": dict(DULL)}
    rest = {"name": "rest", "film_um": facts["rest_um"], "rz_um": 1.5, "tail_um": 3.0}
    return {
        **{name: facts[name] for name in ("substrate", "colour", "oxidation_um")},
        "film_um": facts["rest_um"],
        "reserve_um": facts["reserve"],
        "budget_um": budget,
        "oxidation_cv": 0.25,
        "soiled": True,
        "zones": [bow, rest],
    }


def pictures(facts: Record) -> tuple[Shown, ...]:
    """Return the side near the bow under a grey sky."""
    chalk = mark("oxidation", WHOLE, depth_um=facts.number("oxidation_um"))
    side = scene((str(facts["substrate"]), str(facts["colour"])), facts.number("scene_seed"), chalk)
    return (Shown("side", side, "diffuse", seen=(0,)),)


def bow_mean_um(facts: Record) -> float:
    """Return the mean of the ten readings at the bow, micrometres.

    >>> bow_mean_um(Record({"bow_um": (260.0, 270.0)}))
    265.0
    """
    readings = facts["bow_um"]
    return fmean(one for one in readings if isinstance(one, int | float)) if isinstance(readings, tuple) else 0.0
