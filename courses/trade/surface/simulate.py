"""A plan worked on a panel from its first step to its last: what stands after each, and how it came out."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Final

from courses.trade.constants import Constants
from courses.trade.errors import ImpossibleChoice, offer
from courses.trade.surface.condition import Condition
from courses.trade.surface.gates import Fault, faults, verdict_of
from courses.trade.surface.job import Job
from courses.trade.surface.need import needed_cut
from courses.trade.surface.optics import Reading, dullest, reading_of
from courses.trade.surface.panel import PanelSurface
from courses.trade.surface.reasons import Reason, reasons_for
from courses.trade.surface.score import score
from courses.trade.surface.state import State, residual_of
from courses.trade.surface.steps import Step

__all__ = ["OPTICS", "Outcome", "Residual", "Run", "ZoneOutcome", "judged", "simulate"]

OPTICS: Final = ("last", "every", "none")
"""On which states gloss and haze are worked out."""


@dataclass(frozen=True, slots=True)
class Residual:
    """What is left of a kind of defect: depth that 95 of 100 don't reach, model µm, and share still open, 0 to 1."""

    kind: str
    depth_um: float
    left: float


@dataclass(frozen=True, slots=True)
class ZoneOutcome:
    """How one zone came out; lengths in model micrometres, ``oxidised`` a share of its area, gloss where worked out."""

    name: str
    film_um: float
    removed_um: float
    residual: tuple[Residual, ...]
    tail_um: float
    own_tail_um: float
    trail_um: float
    oxidised: float
    verdict: str
    reading: Reading | None

    def as_json(self) -> dict[str, object]:
        """The zone as the door writes it."""
        return {
            "name": self.name,
            "film_um": round(self.film_um, 1),
            "removed_um": round(self.removed_um, 1),
            "residual": [_residual(one) for one in self.residual],
            "tail_um": round(self.tail_um, 2),
            "trail_um": round(self.trail_um, 2),
            "verdict": self.verdict,
        }


@dataclass(frozen=True, slots=True)
class Outcome:
    """How a plan came out, under the names of the door ``simulate``; lengths in model micrometres, time and material a
    square metre. Film is that of the thinnest zone, removal the most of any, strays and trails the worst; edges stand
    in ``zones`` alone. Gloss is None where it wasn't worked out.
    """

    verdict: str
    reasons: tuple[Reason, ...]
    film_um: float
    removed_um: float
    needed_cut_um: float
    residual: tuple[Residual, ...]
    tail_um: float
    own_tail_um: float
    trail_um: float
    oxidised: float
    swirl_left: float
    zones: tuple[ZoneOutcome, ...]
    score: float
    gloss60: float | None
    gloss20: float | None
    haze: float | None
    heat_degc: float
    minutes: float
    discs: float
    pads: float
    grams: float

    def as_json(self) -> dict[str, object]:
        """The outcome as the door writes it."""
        found: dict[str, object] = {
            "verdict": self.verdict,
            "reasons": [one.as_json() for one in self.reasons],
            "film_um": round(self.film_um, 1),
            "removed_um": round(self.removed_um, 1),
            "needed_cut_um": round(self.needed_cut_um, 1),
            "residual": [_residual(one) for one in self.residual],
            "tail_um": round(self.tail_um, 2),
            "own_tail_um": round(self.own_tail_um, 2),
            "trail_um": round(self.trail_um, 2),
            "zones": [one.as_json() for one in self.zones],
            "score": self.score,
        }
        for name in ("gloss60", "gloss20", "haze", "heat_degc", "minutes", "discs", "pads", "grams"):
            value = getattr(self, name)
            if value is not None:
                found[name] = round(value, 2 if name in ("discs", "pads") else 1)
        return found


def _residual(one: Residual) -> dict[str, object]:
    return {"kind": one.kind, "depth_um": round(one.depth_um, 2), "left": round(one.left, 3)}


@dataclass(frozen=True, slots=True)
class Run:
    """A plan that was worked: the ``surface`` and its ``start``, the ``states`` after each step, the ``outcome``."""

    surface: PanelSurface
    steps: tuple[Step, ...]
    start: State
    states: tuple[State, ...]
    outcome: Outcome

    def as_json(self) -> dict[str, object]:
        """States and outcome as the door writes them."""
        return {"states": [one.as_json() for one in self.states], "outcome": self.outcome.as_json()}


def simulate(surface: PanelSurface, steps: Sequence[Step], constants: Constants, *, optics: str = "last") -> Run:
    """Work ``steps`` on ``surface`` with these ``constants``; gloss and haze on the last state, on every one or none.

    Without them nothing is said against an agreed gloss. Nothing is left to chance: the same plan gives the same run.
    `ImpossibleChoice` for another word than last, every, none. Source: model.
    """
    if optics not in OPTICS:
        raise ImpossibleChoice(f"Optics {optics[:40]!r} is none; {offer(optics[:40], OPTICS)}", "optics")
    job = Job.on(surface, constants)
    start = _state(
        State(0, job.conditions, surface.panel_degc, 0.0, surface.panel_degc), surface, constants, optics == "every"
    )
    states = tuple(_state(job.do(step), surface, constants, optics == "every") for step in steps)
    readings = tuple(_read(one, surface, constants) for one in job.conditions) if optics != "none" else ()
    last = states[-1] if states else start
    if readings and last.reading is None and states:
        last = replace(last, reading=_panel(job, readings))
        states = (*states[:-1], last)
    return Run(surface, tuple(steps), start, states, _outcome(job, last, states, tuple(steps), readings))


def judged(surface: PanelSurface, steps: Sequence[Step], constants: Constants) -> str:
    """The verdict alone, without optics: what a plan comes to where only that is asked."""
    job = Job.on(surface, constants)
    for step in steps:
        job.do(step)
    return verdict_of(tuple(fault for one in job.conditions for fault in faults(one, constants, None)))


def _read(one: Condition, surface: PanelSurface, constants: Constants) -> Reading:
    return reading_of(one, surface.index, constants)


def _panel(job: Job, readings: Sequence[Reading]) -> Reading:
    """The reading of a panel: that of its dullest zone, edges left out."""
    field = [reading for one, reading in zip(job.conditions, readings, strict=True) if one.zone.judged]
    return dullest(field or readings)


def _state(state: State, surface: PanelSurface, constants: Constants, read: bool) -> State:
    if not read:
        return state
    reading = dullest(_read(one, surface, constants) for one in state.field)
    return replace(state, reading=reading)


def _outcome(
    job: Job, last: State, states: tuple[State, ...], steps: tuple[Step, ...], readings: tuple[Reading, ...]
) -> Outcome:
    shine = readings or (None,) * len(job.conditions)
    of_zones = [
        (one, faults(one, job.constants, _allowed(job, one, at)), at)
        for one, at in zip(job.conditions, shine, strict=True)
    ]
    found = [fault for _, ours, _ in of_zones for fault in ours]
    reading = _panel(job, readings) if readings else None
    residual = tuple(Residual(*one) for one in last.residual)
    return Outcome(
        verdict=verdict_of(tuple(found)),
        reasons=reasons_for(job, steps, found),
        film_um=last.film_um,
        removed_um=last.removed_um,
        needed_cut_um=needed_cut(job.surface, job.constants),
        residual=residual,
        tail_um=last.tail_um,
        own_tail_um=last.own_tail_um,
        trail_um=last.trail_um,
        oxidised=max(one.oxidised for one in last.field),
        swirl_left=max((one.left for one in residual if one.kind == "swirl"), default=0.0),
        zones=tuple(_zone(one, ours, shine) for one, ours, shine in of_zones),
        score=score(job, found, readings),
        gloss60=reading.gloss60 if reading else None,
        gloss20=reading.gloss20 if reading else None,
        haze=reading.haze if reading else None,
        heat_degc=max((one.heat_degc for one in states), default=job.surface.panel_degc),
        minutes=job.minutes,
        discs=job.discs,
        pads=job.pads,
        grams=job.grams,
    )


def _allowed(job: Job, one: Condition, reading: Reading | None) -> Reading | None:
    """The reading without what may stay."""
    stay = one.zone.may_stay
    return reading_of(one, job.surface.index, job.constants, stay) if reading and stay else reading


def _zone(one: Condition, found: tuple[Fault, ...], reading: Reading | None) -> ZoneOutcome:
    return ZoneOutcome(
        name=one.zone.name,
        film_um=one.film_um,
        removed_um=one.removed_um,
        residual=tuple(Residual(*left) for left in residual_of(one)),
        tail_um=one.tail_um,
        own_tail_um=one.own_tail_um,
        trail_um=one.trail_um,
        oxidised=one.oxidised,
        verdict=verdict_of(found),
        reading=reading,
    )
