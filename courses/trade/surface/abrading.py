"""Abrasion: what one set of a step does to a zone, and which limits it passes there."""

from __future__ import annotations

from math import erfc, sqrt
from typing import NamedTuple

from courses.trade.constants import Constants
from courses.trade.surface.condition import Condition
from courses.trade.surface.marks import Marks
from courses.trade.surface.steps import Step
from courses.trade.surface.work import Work

__all__ = ["Warmth", "abrade", "burn_chance", "cut_here_um", "peak_degc"]

_SQRT2 = sqrt(2)


class Warmth(NamedTuple):
    """What a panel starts a step with, and where its film softens, °C."""

    panel_degc: float
    soft_degc: float


def cut_here_um(condition: Condition, step: Step, work: Work, constants: Constants) -> float:
    """What one set takes off this zone, model µm: more where a pad rides over an edge, less with a dull disc."""
    return work.cut_um * work.sharpness * _gain(condition, step, work, constants)


def _gain(condition: Condition, step: Step, work: Work, constants: Constants) -> float:
    """How much harder a pad presses here: on an edge, unless a hand works along that edge alone."""
    along = work.by_hand and step.zone == condition.zone.name
    return constants.film.edge_gain if condition.zone.edge and not along else 1.0


def peak_degc(condition: Condition, step: Step, work: Work, warmth: Warmth, constants: Constants) -> float:
    """The warmest the film gets in one set here, °C."""
    gain = _gain(condition, step, work, constants)
    return warmth.panel_degc + gain * work.local_k + work.bulk_k


def abrade(condition: Condition, step: Step, work: Work, warmth: Warmth, constants: Constants) -> None:
    """Work one set of ``step`` on a zone; what it is like afterwards stands in ``condition``."""
    cut = min(cut_here_um(condition, step, work, constants), condition.film_um)
    _note_before(condition, step, constants)
    level = work.eta * cut
    uneven = constants.disc.patchy * (1.0 - work.sharpness)
    worst = level * max(0.0, 1.0 - uneven)
    _leave_scratches(condition, step, work, level, worst)
    deposits = any(one.drags for one in condition.marks)
    if condition.soiled or deposits:
        condition.firsts.setdefault("deposits" if deposits else "soil", step.n)
        _drag_grit(condition, step, level, constants)
    _call_for(condition, work)
    if cut > condition.most_um:
        condition.most_um, condition.most_by = cut, step.n
    condition.film_um -= cut
    condition.removed_um += cut
    condition.levelled_um += level
    condition.planed_um += work.planing * cut
    if uneven > 0:
        condition.worst_um += level - worst
        condition.uneven_um += cut * min(uneven, 1.0)
    condition.last_by = step.n
    if not (condition.taped or condition.zone.edge or condition.zone.has_edge):
        condition.rim_um += constants.film.edge_gain * cut
    condition.wet = step.op == "sand"
    condition.seams_wet = condition.seams_wet or condition.wet
    condition.oils = condition.residue = not condition.wet
    _note_after(condition, step, peak_degc(condition, step, work, warmth, constants), warmth, constants)


def _leave_scratches(condition: Condition, step: Step, work: Work, level: float, worst: float) -> None:
    left = max(0.0, condition.rz_um - level)
    if work.rz_um >= left:
        condition.rz_um, condition.corr_um = work.rz_um, work.corr_um
    else:
        condition.rz_um = left
    stray = max(0.0, condition.tail_um - worst)
    if work.tail_um >= stray:
        condition.tail_by = step.n
    condition.tail_um = max(work.tail_um, stray)
    condition.own_tail_um = work.tail_um
    trail = max(0.0, condition.trail_um - level)
    if work.trail_um and work.trail_um >= trail:
        condition.trail_by = step.n
    condition.trail_um = max(work.trail_um, trail)


def _drag_grit(condition: Condition, step: Step, level: float, constants: Constants) -> None:
    """Grit under the pad cuts deeper than the step levels; what an earlier step dragged is not told apart."""
    law = constants.grit
    depth = condition.levelled_um + level + law.extra_um
    grit = Marks("scratch", "dragged grit", "scratch", depth, law.gsd, law.cover, law.weight, at_start=False)
    condition.marks = (*(one for one in condition.marks if one.at_start), grit)
    if law.extra_um >= condition.tail_um:
        condition.tail_um, condition.tail_by = law.extra_um, step.n
    condition.grit_by = step.n


def _call_for(condition: Condition, work: Work) -> None:
    """Add what this set was called for to take: from the marks it met down to those it leaves, if they are less."""
    met, leaves = max(condition.need_tail, condition.need_trail), max(work.tail_um, work.trail_um)
    if leaves < met:
        taken = max(condition.need_tail - work.tail_um, condition.need_trail - work.trail_um)
        condition.called_for_um += taken / work.eta
        condition.need_tail, condition.need_trail = work.tail_um, work.trail_um


def _note_before(condition: Condition, step: Step, constants: Constants) -> None:
    """What is a harm as soon as a pad touches the film."""
    if condition.cure < constants.gates.cured:
        condition.firsts.setdefault("uncured", step.n)
    if not condition.referred and any(one.role == "through" for one in condition.marks):
        condition.firsts.setdefault("through", step.n)


def _note_after(condition: Condition, step: Step, degc: float, warmth: Warmth, constants: Constants) -> None:
    """Which limits this set has passed."""
    zone, gates, heat = condition.zone, constants.gates, constants.heat
    firsts, n = condition.firsts, step.n
    if condition.removed_um > zone.budget_um and not zone.edge:
        firsts.setdefault("budget", n)
    if condition.film_um < zone.reserve_um and condition.removed_um > gates.refresh_um:
        firsts.setdefault("reserve", n)
    condition.heat_degc = max(condition.heat_degc, degc)
    if degc - heat.air_degc > gates.heat_index * (warmth.soft_degc - heat.air_degc):
        firsts.setdefault("heat", n)
    if "burn_through" not in firsts and burn_chance(condition, constants) > gates.burn:
        firsts["burn_through"] = n


def burn_chance(condition: Condition, constants: Constants) -> float:
    """Chance, 0 to 1, that the film is gone somewhere in this zone; the larger of field and edge. Source: model."""
    film, spread = condition.zone.film_um, condition.zone.film_spread
    edge = film * constants.film.edge_ratio
    field = (film - condition.removed_um) / (spread * film)
    return erfc(min(field, (edge - condition.rim_um) / (spread * edge)) / _SQRT2) / 2
