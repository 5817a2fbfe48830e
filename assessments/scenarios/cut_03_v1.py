"""CUT-03 *Yesterday's repair*, version 1: a fill that sticks to the thumb, and a launch that was promised.

Ranges stand in ``fixtures/scenarios/CUT-03-v1.toml``. What a nail says after a time at a warmth follows the law of
cure of the surface model, so that the tests of a plan and the panel it is worked on never disagree.
"""

from collections.abc import Iterator, Mapping, Sequence
from math import ceil, exp
from typing import Any, Final

from assessments.scenarios.chance import Chance
from assessments.scenarios.fields import Record
from assessments.scenarios.plan_steps import Step, acts, in_zone, polished, sanded
from assessments.scenarios.spec import Kind
from courses.trade.surface import read_plan

REPAIR: Final = "repair"
LADDER: Final = (("P1000", 3), ("P1500", 4), ("P2000", 3))
"""Grades and passes that clear the marks of P800."""
LEFT_UM: Final[Mapping[str, float]] = {"rz_um": 3.45, "tail_um": 5.9}
"""Mean and deepest scratch that P800 leaves, model µm."""
WAIT_H: Final = 20.0
KEPT_DEGC: Final = 24.0
ROOM_DEGC: Final = 20.0
"""Hours and warmth of the key for a soft fill, and the warmth of a shop for a hard one."""
SLOWEST_DEGC: Final = 18.0
"""The coolest that is still warm enough: the hours that a fill needs are counted there."""
LEAST_DEGC: Final = 10.0
MOST_DEGC: Final = 35.0
DOUBLING_K: Final = 10.0
RATE_H: Final = 0.106
"""The law of cure of the surface model: nothing goes on below, nothing faster above, twice as fast for each step, and
what is left falls by this share an hour at the coolest that is warm enough."""
HARD: Final = 0.9
"""The cure from which a nail leaves no mark."""
SKIN_CURE: Final = 0.95
UNDERDOSED: Final[Mapping[str, float]] = {"cure": 0.3, "cure_most": 0.8}
"""A hard core; a fill with too little catalyst, and how far it ever comes."""
_SPANNED: Final = ("laid_h", "now_h", "shop_degc", "catalyst_pct", "film_um")
_TOLERANCE_H: Final = 1e-9


def draw(chance: Chance, kind: Kind) -> Mapping[str, object]:
    """Return the facts of one try; nothing here throws one away. Hours that a fill needs are absent where it stays soft
    for ever."""
    drawn: dict[str, object] = {
        **{name: kind.pick(chance, name) for name in ("colour", "thumb")},
        **{name: kind.between(chance, name) for name in _SPANNED},
        "core": "hard" if kind.name == "skin" else "soft",
        "stray_um": kind.number("stray_um"),
    }
    drawn["age_h"] = 24.0 - float(str(drawn["laid_h"])) + float(str(drawn["now_h"]))
    return {**drawn, "need_h": kind.between(chance, "need_h")} if kind.has("need_h") else drawn


def key(facts: Record) -> dict[str, object]:
    """Return the answer: a hard fill is flattened today; a soft one is warmed, and tested before anything else."""
    hard = facts["core"] == "hard"
    tested: Step = {"op": "cure_test", "zone": REPAIR}
    warmed: list[Step] = [{"op": "wait", "hours": WAIT_H, "warm_degc": KEPT_DEGC}, {**tested, "at_h": WAIT_H}]
    flattened = in_zone(REPAIR, [*acts("tape"), *sanded(*LADDER), *polished("cut", "refine", "finish")])
    first = [*in_zone(REPAIR, acts("wipe")), tested] if hard else [*acts("tell"), *warmed]
    return {
        "asked": ["wipe_nail", "catalyst", "temp_log"],
        "decision": "now" if hard else "wait",
        "actions": ["tell_owner"] if hard else ["tell_owner", "tag"],
        "steps": [*first, *(flattened if hard or "need_h" in facts else [])],
        "warm_c": ROOM_DEGC if hard else KEPT_DEGC,
        "remedies": [] if hard else ["electric_heat"],
        "if_soft": "cut_out_redo",
        "launch": "kept" if hard else "moved",
    }


def surface(facts: Record) -> dict[str, object]:
    """Return the side and the repair in it as the door ``simulate`` takes them."""
    cure: Mapping[str, float] = {"cure": SKIN_CURE} if facts["core"] == "hard" else UNDERDOSED
    if "need_h" in facts:
        cure = {"cure": cure_before(facts.number("need_h"))}
    return {
        "substrate": "gel_coat",
        "colour": facts["colour"],
        "film_um": facts["film_um"],
        "soiled": False,
        "rest": "side",
        "zones": [{"name": REPAIR, "share": 0.05, **LEFT_UM, **cure}],
    }


def model(facts: Record, _key: Mapping[str, object], answer: Mapping[str, object]) -> dict[str, object]:
    """Return what the nail says at each test of the plan that lies on the repair."""
    steps, warm = answer["steps"], answer["warm_c"]
    assert isinstance(steps, Sequence)
    return {"tests": list(tests(facts, steps, float(str(warm))))}


def tests(facts: Record, steps: Sequence[Any], warm_degc: float) -> Iterator[dict[str, object]]:
    """Walk the tests of a plan: number of the step, hours from now, soft or hard.

    A wait counts at its own warmth where it says one; all other time at that of the answer, ``warm_degc``.
    """
    clock = ripe = 0.0
    for step in read_plan(steps):
        gap = max(0.0, step.at_h - clock)
        hours = step.hours if step.op == "wait" else 0.0
        kept = warm_degc if step.warm_degc is None else step.warm_degc
        clock, ripe = clock + gap + hours, ripe + ripened_h(gap, warm_degc) + ripened_h(hours, kept)
        if step.op == "cure_test" and step.zone in (REPAIR, "all"):
            yield {"n": step.n, "at_h": round(clock, 1), "result": "hard" if _is_hard(facts, ripe) else "soft"}


def ripened_h(hours: float, degc: float) -> float:
    """Return so many hours at so many °C as hours at the coolest that is warm enough; none below 10 °C.

    >>> ripened_h(6.0, 18.0), ripened_h(6.0, 28.0), ripened_h(6.0, 9.0)
    (6.0, 12.0, 0.0)
    """
    if degc < LEAST_DEGC:
        return 0.0
    return float(hours * 2.0 ** ((min(degc, MOST_DEGC) - SLOWEST_DEGC) / DOUBLING_K))


def cure_before(need_h: float) -> float:
    """Return the cure, 0 to 1, of a fill that is hard after so many hours at the coolest that is warm enough.

    >>> cure_before(12.0)
    0.6433
    """
    return ceil((1 - (1 - HARD) * exp(RATE_H * need_h)) * 1e4) / 1e4


def _is_hard(facts: Record, ripe_h: float) -> bool:
    if facts["core"] == "hard":
        return True
    return "need_h" in facts and ripe_h >= facts.number("need_h") - _TOLERANCE_H
