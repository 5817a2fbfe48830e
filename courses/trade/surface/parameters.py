"""The settings a step may carry: what each is called, which values it may have, what stands where it is left out."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Final

from courses.trade.abrasives import D50_UM
from courses.trade.errors import ImpossibleChoice, offer
from courses.trade.surface.ops import OPS, POLISHING
from courses.trade.surface.shop import COMPOUNDS, MACHINES, PADS, SPEEDS_RPM, runs_on, settings

__all__ = ["MOST_PASSES", "MOST_SETS", "UNTIL_CLEAR", "Parameter", "parameters"]

UNTIL_CLEAR: Final = "until_clear"
"""What ``sets`` says where a step is repeated until the wipe shows it clear."""
MOST_PASSES: Final = 20
MOST_SETS: Final = 8

Value = str | float | int | tuple[float, ...] | None


@dataclass(frozen=True, slots=True)
class Parameter:
    """One setting of a step.

    ``kind``: choice, number, whole, numbers (one a pass) or text. ``options``: pairs of id and words; of a number, the
    words it may be instead. ``low`` to ``high`` in ``unit``. ``default``: of the step with nothing else said; None
    where leaving it out means leaving things as they are.
    """

    name: str
    label: str
    kind: str
    options: tuple[tuple[str, str], ...]
    low: float
    high: float
    unit: str
    default: Value


_LIMITS: Final[Mapping[str, tuple[str, str, float, float, str]]] = MappingProxyType(
    {
        "speeds_rpm": ("Speed of each pass", "numbers", 1.0, 12000.0, "rpm"),
        "passes": ("Passes in a set", "whole", 1, MOST_PASSES, ""),
        "sets": ("Sets", "whole", 1, MOST_SETS, ""),
        "disc": ("Disc", "number", 0.0, 100.0, "m2"),
        "force_n": ("Force, machine included", "number", 1.0, 150.0, "n"),
        "arm_m_s": ("Arm speed", "number", 0.01, 0.6, "mps"),
        "overlap": ("Overlap of two stripes", "number", 0.0, 0.9, "ratio"),
        "section_m2": ("Section", "number", 0.05, 20.0, "m2"),
        "hours": ("Hours to wait", "number", 0.0, 2000.0, "h"),
        "warm_degc": ("Kept at", "number", -20.0, 60.0, "degc"),
        "at_h": ("Hours from the start", "number", 0.0, 2000.0, "h"),
    }
)
_LABELS: Final = {"grade": "Grade", "pad": "Pad", "compound": "Compound", "machine": "Machine", "product": "Product"}
_WORDS: Final = {
    "sets": ((UNTIL_CLEAR, "until the wipe shows it clear"),),
    "disc": (("fresh", "fresh, changed by area"), ("used", "used")),
}
_PLAIN: Final[Mapping[str, Value]] = MappingProxyType(
    {"disc": "fresh", "sets": 1, "grade": "P1500", "product": "", "hours": 12.0, "warm_degc": None, "at_h": 0.0}
)
"""Defaults that don't depend on the machine: the shop's habit, and a wait overnight."""


def parameters(op: str) -> tuple[Parameter, ...]:
    """The settings that a step of this ``op`` may carry, beside its zone, in the order of the sentence that says it.

    Speeds go from the slowest to the fastest that any of its machines can turn. `ImpossibleChoice` for an unknown op.

    >>> [one.name for one in parameters("wait")], parameters("sand")[0].default
    (['hours', 'warm_degc', 'at_h'], 'P1500')
    """
    if op not in OPS:
        raise ImpossibleChoice(f"There is no step {op[:40]!r}; {offer(op[:40], OPS)}", "op")
    return tuple(_parameter(op, name) for name in OPS[op].takes)


def choices(op: str, name: str) -> tuple[tuple[str, str], ...]:
    """The values a choice may have for this ``op``, as pairs of id and words; of a number, the words it may be.

    >>> [code for code, _ in choices("sand", "machine")]
    ['da', 'hand']
    """
    work = "polish" if op in POLISHING else "sand"
    found: Mapping[str, Mapping[str, str]] = {
        "grade": {grade: grade for grade in D50_UM},
        "pad": PADS[work],
        "machine": MACHINES[work],
        "compound": COMPOUNDS,
    }
    return tuple(found[name].items()) if name in found else _WORDS.get(name, ())


def limits(name: str) -> tuple[float, float]:
    """From what to what a number may go.

    >>> limits("passes")
    (1, 20)
    """
    return _LIMITS[name][2:4]


def _parameter(op: str, name: str) -> Parameter:
    default = _default(op, name)
    if name in _LABELS:
        kind = "text" if name == "product" else "choice"
        return Parameter(name, _LABELS[name], kind, choices(op, name), 0, 200 if kind == "text" else 0, "", default)
    label, kind, low, high, unit = _LIMITS[name]
    if name == "speeds_rpm":
        turned = [SPEEDS_RPM[runs_on(op, code)] for code, _ in choices(op, "machine") if code != "hand"]
        low, high = min(one for one, _ in turned), max(one for _, one in turned)
    return Parameter(name, label, kind, choices(op, name), low, high, unit, default)


def _default(op: str, name: str) -> Value:
    if name in _PLAIN:
        return _PLAIN[name]
    value: Value = getattr(settings(op), name)
    return value
