"""PLN-06 *The number nobody gave you*, version 1: a total without an instrument, and clear coat that nobody read.

Readings are drawn as the gauge shows them; film, loss and budget are worked from what is shown. Ranges and what throws
a draw away stand in ``fixtures/scenarios/PLN-06-v1.toml``.
"""

from collections.abc import Mapping
from typing import Final

from assessments.scenarios.chance import Chance
from assessments.scenarios.fields import Record
from assessments.scenarios.gauged import readings_about
from assessments.scenarios.plan_steps import Step, acts, in_zone
from assessments.scenarios.sketch import Thrown
from assessments.scenarios.spec import Kind
from courses.trade.gauging import mean_um, removed_um, spread_um
from courses.trade.units import rounded

DECISIONS: Final[Mapping[str, list[str]]] = {
    "thin": ["leave"],
    "spare": ["correct"],
    "spent": ["leave", "finish_only"],
}
"""What is right by what the layer gauge tells, the better one first."""
CUT: Final[Step] = {"op": "cut", "pad": "foam_cut", "compound": "medium", "machine": "da"}
FINISH: Final[Step] = {"op": "finish", "pad": "foam_finish", "compound": "fine", "machine": "da"}
CLEAN_GLOSS: Final = 88.0
"""What such clear reads at 60° without a mark; what the door reads less is the share that its swirls scatter."""
SWIRL_SPREAD: Final = 1.6
FILM_SPREAD: Final = 0.08
_PICKED: Final = ("colour", "polishes")


def draw(chance: Chance, kind: Kind) -> Mapping[str, object] | Thrown:
    """Return the facts of one try, or the condition that threw it away."""
    read = _by_layer(chance, kind)
    if isinstance(read, Thrown):
        return read
    total, repair = kind.between(chance, "total_um"), chance.happens(kind.number("repair_share"))
    return {
        "truth": kind.name,
        "missing": "layer_gauge",
        **{name: kind.pick(chance, name) for name in _PICKED},
        "gloss60": round(kind.between(chance, "gloss60")),
        "swirl_um": kind.between(chance, "swirl_um"),
        "total_um": total,
        "repair": repair,
        "corner_um": kind.between(chance, "patch_um") if repair else total + kind.between(chance, "strays_um"),
        **read,
    }


def key(facts: Record) -> dict[str, object]:
    """Return the readings that a decision can stand on, the decision, and its plan."""
    truth = str(facts["truth"])
    spare = truth == "spare"
    work = [*acts("tape"), CUT, *acts("wipe"), FINISH, *acts("wipe")] if spare else []
    work = in_zone("main", work) if facts["repair"] else work
    return {
        "asked": ["layer_gauge", "layer_middle", "layer_edge", "layer_shut", "corner"],
        "stands_on": "layer_gauge",
        "decision": DECISIONS[truth][0],
        "steps": [*work, *acts("record", "tell")],
        "findings": [
            "no_instrument",
            "worn",
            *(["thin"] if truth == "thin" else []),
            *(["repair"] if facts["repair"] else []),
        ],
        "left_over": "none",
        "decisions": DECISIONS[truth],
    }


def surface(facts: Record) -> dict[str, object]:
    """Return the door as ``simulate`` takes it: what was gone is off its budget, a repair is no part of the work."""
    swirls = {
        "kind": "swirl",
        "depth_um": facts.number("swirl_um"),
        "spread": SWIRL_SPREAD,
        "cover": rounded(1 - facts.number("gloss60") / CLEAN_GLOSS, 2),
    }
    return {
        "substrate": "clear_coat",
        "colour": facts["colour"],
        "film_um": facts["film_um"],
        "film_spread": FILM_SPREAD,
        "budget_um": facts["budget"],
        "soiled": False,
        "defects": [swirls],
        "zones": [{"name": "corner", "idle": facts["repair"]}],
    }


def _by_layer(chance: Chance, kind: Kind) -> Mapping[str, object] | Thrown:
    """Return what the layer gauge shows in the middle, along the edge and in the door shut, and what follows."""
    clear, apart = kind.between(chance, "clear_um"), kind.between(chance, "spread_um")
    middle = readings_about(chance, clear, apart)
    shut = readings_about(chance, clear + kind.between(chance, "gone_um"), apart)
    film, gone = rounded(mean_um(middle), 1), rounded(removed_um(shut, middle), 1)
    if any(spread_um(five) not in kind.span("spread_um") for five in (middle, shut)):
        return Thrown("five readings lie closer together, or further apart, than this gauge's do")
    if film not in kind.span("clear_um") or gone not in kind.span("gone_um"):
        return Thrown("the readings themselves leave the range of what is there, or of what has gone")
    return {
        "once_um": readings_about(chance, clear, apart, 1)[0],
        "middle_um": middle,
        "edge_um": readings_about(chance, clear - kind.between(chance, "thinner_um"), apart),
        "shut_um": shut,
        "film_um": film,
        "gone_um": gone,
        "budget": rounded(kind.number("budget_um") - gone, 1),
    }
