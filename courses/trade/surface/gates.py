"""The gates: what makes a plan a harm, and what has to be done again, zone by zone, each with the step that did it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from courses.trade.constants import Constants
from courses.trade.surface.abrading import burn_chance
from courses.trade.surface.condition import Condition
from courses.trade.surface.marks import Marks
from courses.trade.surface.need import called_for_um
from courses.trade.surface.optics import Reading

__all__ = ["HARM", "PASS", "REDO", "UNCOUNTED", "VERDICTS", "Fault", "correction", "counted", "faults", "verdict_of"]

PASS: Final = "pass"  # noqa: S105  a verdict
REDO: Final = "redo"
HARM: Final = "harm"
VERDICTS: Final = (PASS, REDO, HARM)
"""From the best to the worst."""

_FIRST: Final = (
    *("burn_through", "reserve", "budget", "heat", "through", "uncured", "coat_over_water", "coat_over_residue"),
    "coat_over_uncured",
)
"""Harms that are done the moment a limit is passed: no later step takes them away."""
UNCOUNTED: Final = ("colour", "through")
"""Roles that no plan can correct: they are told, not counted."""
_SLACK_GU: Final = 0.05
"""A meter shows one decimal."""


@dataclass(frozen=True, slots=True)
class Fault:
    """One gate that a zone doesn't get through: its ``code``, verdict, the step that did it (0: none), and a figure."""

    code: str
    verdict: str
    zone: str
    step: int
    figure: float


def faults(condition: Condition, constants: Constants, reading: Reading | None) -> tuple[Fault, ...]:
    """Every gate that a zone doesn't get through, harms first. At an edge only harms count.

    ``reading``: of the zone without what may stay on it; without one nothing is said of gloss.
    """
    name = condition.zone.name
    if condition.zone.idle:
        return ()
    harms = [
        Fault(code, HARM, name, condition.firsts[code], _figure(code, condition, constants))
        for code in _FIRST
        if code in condition.firsts
    ]
    if condition.zone.edge:
        return tuple(harms)
    times = condition.removed_um / called_for_um(condition, constants)
    if times > constants.gates.over_cut:
        harms.append(Fault("over_cut", HARM, name, condition.most_by, times))
    return (*harms, *_redone(condition, constants, reading))


def _figure(code: str, condition: Condition, constants: Constants) -> float:
    if code == "burn_through":
        return burn_chance(condition, constants)
    if code == "budget":
        return condition.removed_um / condition.zone.budget_um
    return condition.film_um if code == "reserve" else condition.heat_degc if code == "heat" else condition.cure


def _redone(condition: Condition, constants: Constants, reading: Reading | None) -> tuple[Fault, ...]:
    """What has to be done again. Gloss is named only where nothing else explains it."""
    found = (*_marked(condition, constants), *_left(condition, constants))
    return found or (tuple(_dull(condition, reading)) if reading else ())


def _marked(condition: Condition, constants: Constants) -> Iterator[Fault]:
    """Marks that the plan made, or left: trails, strays, those of a cutting step."""
    gates, name = constants.gates, condition.zone.name
    if condition.trail_um > gates.visible_um:
        yield Fault("trail", REDO, name, condition.trail_by, condition.trail_um)
    if condition.tail_um > condition.own_tail_um + gates.stray_um:
        yield Fault("strays", REDO, name, condition.tail_by, condition.tail_um)
    if condition.own_tail_um > gates.cutting_um:
        yield Fault("cutting_last", REDO, name, condition.last_by, condition.own_tail_um)


def _left(condition: Condition, constants: Constants) -> Iterator[Fault]:
    """Work left undone: a veil, a sign nobody was told of, what isn't corrected beside the veil."""
    gates, zone = constants.gates, condition.zone
    veil = 0.0 if "oxidation" in zone.may_stay else condition.oxidised
    if veil > gates.oxidised:
        yield Fault("oxidised", REDO, zone.name, condition.last_by, veil)
    signs = any(one.role == "through" and one.kind not in zone.may_stay for one in condition.marks)
    if signs and not condition.referred and "through" not in condition.firsts:
        yield Fault("untold", REDO, zone.name, 0, 0.0)
    corrected = correction(condition, constants)
    beside = any(condition.open_share(one) > gates.open_share for one in counted(condition))
    if corrected < gates.corrected and (beside or veil <= gates.oxidised):
        yield Fault("uncorrected", REDO, zone.name, condition.last_by, corrected)


def _dull(condition: Condition, reading: Reading) -> Iterator[Fault]:
    """Gloss short of what was agreed: at 60° if that is short, else at 20°."""
    zone = condition.zone
    if reading.gloss60 < zone.gloss60 - _SLACK_GU:
        yield Fault("gloss60", REDO, zone.name, condition.last_by, reading.gloss60)
    elif reading.gloss20 < zone.gloss20 - _SLACK_GU:
        yield Fault("gloss20", REDO, zone.name, condition.last_by, reading.gloss20)


def counted(condition: Condition) -> list[Marks]:
    """The families of marks on a zone now that count as work: those a plan can correct, but what may stay."""
    stay = condition.zone.may_stay
    return [one for one in condition.marks if one.role not in UNCOUNTED and not (one.at_start and one.kind in stay)]


def correction(condition: Condition, constants: Constants) -> float:
    """Weighted share, 0 to 1, of what was found on a zone, or dragged over it, that is gone.

    What may stay doesn't count. What is deeper than the budget doesn't where it was referred, unless it would help.
    """
    zone = condition.zone
    terms = [(constants.score.oxidation_weight, 1 - condition.oxidised, False)] if zone.oxidation_um else []
    terms = [] if "oxidation" in zone.may_stay else terms
    for one in (*zone.marks, *(mark for mark in condition.marks if not mark.at_start)):
        if one.role in UNCOUNTED or (one.kind in zone.may_stay and one.at_start):
            continue
        gone = 1 - condition.open_share(one) if one in condition.marks else 1.0
        terms.append((one.weight, gone, one.ground and one.deepest_um > zone.budget_um))
    every = _mean(terms)
    return max(every, _mean([term for term in terms if not term[2]])) if condition.referred else every


def _mean(terms: list[tuple[float, float, bool]]) -> float:
    whole = sum(weight for weight, _, _ in terms)
    return sum(weight * gone for weight, gone, _ in terms) / whole if terms else 1.0


def verdict_of(found: tuple[Fault, ...]) -> str:
    """The worst verdict among them, pass where there are none."""
    return HARM if any(one.verdict == HARM for one in found) else REDO if found else PASS
