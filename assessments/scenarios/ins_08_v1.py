"""INS-08 *The gauge says 108*, version 1: a total on metal, or a gauge that reads nothing, and a wish to spend it.

Readings are drawn as the gauge shows them, to whole micrometres, its zero among them; the key is worked from what is
shown. Ranges and what throws a draw away stand in ``fixtures/scenarios/INS-08-v1.toml``.
"""

from collections.abc import Mapping
from math import sqrt

from assessments.scenarios.chance import Chance
from assessments.scenarios.fields import Record
from assessments.scenarios.sketch import Thrown
from assessments.scenarios.spec import Kind
from courses.trade.gauging import doubt_um, mean_um, removed_um, spread_um
from courses.trade.units import rounded


def draw(chance: Chance, kind: Kind) -> Mapping[str, object] | Thrown:
    """Return the facts of one try, or the condition that threw it away."""
    zero = kind.between(chance, "high_um") if kind.pick(chance, "zero") == "high" else 0.0
    foil = kind.between(chance, "foil_um")
    facts = {
        "panel": kind.name,
        "base": "steel" if kind.has("total_um") else "laminate",
        "patch": kind.has("patch_um"),
        "zero_um": zero,
        "foil_um": foil,
        "foil_read_um": foil + zero,
    }
    if not kind.has("total_um"):
        return facts
    read = _on_steel(chance, kind, zero)
    return read if isinstance(read, Thrown) else {**facts, **read}


def key(facts: Record) -> dict[str, object]:
    """Return the answer worked from the readings, and the verdicts that are right beside the one it gives."""
    steel = facts["base"] == "steel"
    verdicts = ["wait_layer", "leave"] if steel else ["other_instrument"]
    return {
        "asked": ["zero", "foil", "here", "door_shut", "corner"],
        "holds": "stack" if steel else "nothing",
        **(_worked(facts) if steel else {"mean_um": 0.0, "gone_um": 0.0, "doubt_um": 0.0}),
        "clear": "unknown",
        "findings": _findings(facts, steel),
        "verdict": verdicts[0],
        "log": ["gauge", "zero", "place", "time"],
        "verdicts": verdicts,
    }


def _on_steel(chance: Chance, kind: Kind, zero: float) -> Mapping[str, object] | Thrown:
    """Return what the gauge shows on paint over steel: once, five times here, five in the door shut, in the corner."""
    total, spread = kind.between(chance, "total_um"), kind.between(chance, "spread_um")
    fresh = total + kind.between(chance, "thicker_um")
    here = _readings(chance, total + zero, spread, 5)
    shut = _readings(chance, fresh + zero, spread, 5)
    filled = kind.between(chance, "patch_um") if kind.has("patch_um") else None
    if any(spread_um(five) not in kind.span("spread_um") for five in (here, shut)):
        return Thrown("five readings lie closer together, or further apart, than this gauge's do")
    if mean_um(here, zero) not in kind.span("total_um"):
        return Thrown("the mean of the five leaves the range of totals")
    if removed_um(shut, here) not in kind.span("gone_um"):
        return Thrown("the two fives differ too little, or too much")
    return {
        "says_um": _readings(chance, total + zero, spread, 1)[0],
        "here_um": here,
        "shut_um": shut,
        "corner_um": _readings(chance, total + zero, spread, 1)[0] if filled is None else filled + zero,
    }


def _readings(chance: Chance, about_um: float, apart_um: float, count: int) -> list[float]:
    """Return readings about a mean, as the gauge shows them; the sum of six even chances is close to normal."""
    off = [sqrt(2) * (sum(chance.source() for _ in range(6)) - 3) for _ in range(count)]
    return [rounded(about_um + apart_um * each, 0) for each in off]


def _worked(facts: Record) -> dict[str, object]:
    here, shut = _five(facts, "here_um"), _five(facts, "shut_um")
    return {
        "mean_um": rounded(mean_um(here, facts.number("zero_um")), 1),
        "gone_um": rounded(removed_um(shut, here), 1),
        "doubt_um": rounded(doubt_um(shut, here), 1),
    }


def _five(facts: Record, name: str) -> list[float]:
    readings = facts[name]
    return [each for each in readings if isinstance(each, int | float)] if isinstance(readings, tuple) else []


def _findings(facts: Record, steel: bool) -> list[str]:
    found = ["usual"] if steel else ["wrong_instrument"]
    if facts["patch"]:
        found.append("repair")
    if facts.number("zero_um") > 0:
        found.append("zero_off")
    return found
