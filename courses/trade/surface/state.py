"""What stands after a step: each zone, and the panel as the doors write it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property

from courses.trade.surface.condition import Condition
from courses.trade.surface.optics import Reading

__all__ = ["State", "residual_of", "worst_of"]


@dataclass(frozen=True)
class State:
    """The panel after ``step`` (0: before any): film of its thinnest zone, the most that any zone lost, µm.

    Edges count only in ``conditions``, one a zone. ``heat_degc``: the warmest of that step; ``panel_degc``: when it
    began; ``minutes``: a square metre, from the start. ``found``: what a look at the panel showed. ``reading``: gloss
    and haze, where asked for.
    """

    step: int
    conditions: tuple[Condition, ...]
    heat_degc: float
    minutes: float
    panel_degc: float = 22.0
    found: tuple[str, ...] = ()
    reading: Reading | None = None

    @cached_property
    def field(self) -> tuple[Condition, ...]:
        """The zones that count for the panel, or all where none does."""
        return tuple(one for one in self.conditions if one.zone.judged) or self.conditions

    @property
    def film_um(self) -> float:
        """Film of the thinnest zone."""
        return min(one.film_um for one in self.field)

    @property
    def removed_um(self) -> float:
        """The most that any zone lost."""
        return max(one.removed_um for one in self.field)

    @property
    def tail_um(self) -> float:
        """The deepest stray, of the zone where it stands highest over what the last abrasive leaves."""
        return worst_of(self.field).tail_um

    @property
    def own_tail_um(self) -> float:
        """What the last abrasive alone leaves there."""
        return worst_of(self.field).own_tail_um

    @property
    def trail_um(self) -> float:
        """The deepest trail."""
        return max(one.trail_um for one in self.field)

    @property
    def residual(self) -> tuple[tuple[str, float, float], ...]:
        """Kind, depth that 95 of 100 don't reach (µm), and share still open of what is left of each kind."""
        found: dict[str, tuple[float, float]] = {}
        for one in self.field:
            for kind, depth, share in residual_of(one):
                most = found.get(kind, (0.0, 0.0))
                found[kind] = max(most[0], depth), max(most[1], share)
        return tuple((kind, *most) for kind, most in found.items())

    def as_json(self) -> dict[str, object]:
        """The state as the door writes it: with what it is like, not with what was said of it."""
        written: dict[str, object] = {
            "step": self.step,
            "film_um": round(self.film_um, 1),
            "removed_um": round(self.removed_um, 1),
            "residual": [{"kind": kind, "depth_um": round(depth, 2)} for kind, depth, _ in self.residual],
            "tail_um": round(self.tail_um, 2),
            "trail_um": round(self.trail_um, 2),
            "heat_degc": round(self.heat_degc, 1),
            "minutes": round(self.minutes, 1),
        }
        return written | (self.reading.as_json() if self.reading else {})


def worst_of(conditions: tuple[Condition, ...]) -> Condition:
    """The zone whose deepest stray stands highest over what the last abrasive leaves."""
    return conditions[0] if len(conditions) == 1 else max(conditions, key=lambda one: one.tail_um - one.own_tail_um)


def residual_of(condition: Condition) -> Iterator[tuple[str, float, float]]:
    """Kind, depth (µm) and share still open of each family of marks of a zone, the oxidised layer first."""
    if condition.zone.oxidation_um:
        yield "oxidation", condition.layer_left_um, condition.oxidised
    for one in condition.marks:
        yield one.kind, condition.left_um(one), condition.open_share(one)
    if condition.zone.trail_um:
        yield "hologram", condition.trail_um, min(1.0, condition.trail_um / condition.zone.trail_um)
