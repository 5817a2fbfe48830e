"""A plan that was worked on the model surface, as figures: film zone by zone, the ladder of its abrasives, its work."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from courses.figures.drawing import Figure
from courses.figures.film_section import film_section
from courses.figures.film_stages import FilmStep
from courses.figures.scratch_ladder import Rung, scratch_ladder
from courses.figures.workload import Load, workload
from courses.trade.constants import Constants
from courses.trade.surface import Run, Step, step_words
from courses.trade.surface.condition import Condition
from courses.trade.surface.work import Work, work_of

__all__ = ["ladder", "load", "sections"]

OPEN = 0.05
"""Share of a family of marks beyond which it counts as still open; our own choice, as the gates have it."""
CALLED = {"main": "the rest"}


def sections(run: Run, name: str = "") -> tuple[Figure, ...]:
    """The film of each zone through a plan, the rest first; ``name`` says whose plan it is where a page shows several.

    Everything in model micrometres. Source: model.
    """
    zones = [one.zone.name for one in run.start.conditions]
    return tuple(_section(run, at, _named(name, zone, len(zones) > 1)) for at, zone in enumerate(zones))


def _named(name: str, zone: str, several: bool) -> str:
    part = CALLED.get(zone, f"the {zone.replace('_', ' ')}") if several else ""
    said = ", ".join(one for one in (name, part) if one)
    return said[:1].upper() + said[1:]


def _section(run: Run, at: int, name: str) -> Figure:
    start = run.start.conditions[at]
    steps = [_film_step(step, state.conditions[at]) for step, state in zip(run.steps, run.states, strict=True)]
    return film_section(
        start.film_um,
        start.zone.reserve_um,
        start.zone.budget_um,
        steps,
        found=_marks(start),
        stray_um=start.tail_um,
        trail_um=start.trail_um,
        name=name,
    )


def _film_step(step: Step, after: Condition) -> FilmStep:
    return FilmStep(step_words(step), after.film_um, _marks(after), after.tail_um, after.trail_um, step.n)


def _marks(one: Condition) -> list[tuple[str, float]]:
    """What is still open in a zone, and how deep; what goes through the film has no depth to draw."""
    chalk = [("chalk", one.layer_left_um)] if one.oxidised > OPEN else []
    return chalk + [
        (mark.called, one.left_um(mark)) for mark in one.marks if mark.depth_um and one.open_share(mark) > OPEN
    ]


def ladder(run: Run, constants: Constants, name: str = "") -> Figure | None:
    """What each abrasive of a plan meets, takes and leaves, in model micrometres; None where nothing is abraded.

    Source: model.
    """
    rungs = [
        _rung(step, work_of(step, run.surface.hardness, constants), sets, state.tail_um)
        for step, state, sets in zip(run.steps, run.states, _sets(run, constants), strict=True)
        if step.abrades
    ]
    return scratch_ladder(rungs, run.start.tail_um, name=name) if rungs else None


def _rung(step: Step, work: Work, sets: int, stands_um: float) -> Rung:
    each = "pass" if step.op == "sand" else "set"
    gained = work.cut_um * work.sharpness * work.eta
    clears, times = (gained / step.passes, step.passes * sets) if step.op == "sand" else (gained, sets)
    return Rung(step_words(step), work.rz_um, work.tail_um, clears, times, stands_um, each, step.n)


def load(run: Run, constants: Constants, name: str = "") -> Figure | None:
    """Minutes and materials of each step of a plan, for each square metre; None for a plan without steps.

    Source: model.
    """
    loads = list(_loads(run, constants))
    return workload(loads, name=name) if loads else None


def _loads(run: Run, constants: Constants) -> Iterator[Load]:
    before = 0.0
    for step, state, sets in zip(run.steps, run.states, _sets(run, constants), strict=True):
        minutes, before = state.minutes - before, state.minutes
        used = (0.0, 0.0, 0.0)
        if step.abrades:
            work, share = work_of(step, run.surface.hardness, constants), _share(run, step) * sets
            used = (work.discs * share, work.pads * share, work.grams * share)
        yield Load(step_words(step), max(0.0, minutes), *used, number=step.n)


def _share(run: Run, step: Step) -> float:
    """The share of the panel that a step lies on."""
    if step.zone == "all":
        return 1.0
    return sum(one.zone.share for one in run.start.conditions if one.zone.name == step.zone)


def _sets(run: Run, constants: Constants) -> Sequence[int]:
    """How many sets of each step were made; of one repeated until clear it follows from the minutes it took."""
    minutes, found, before = constants.minutes, [], 0.0
    for step, state in zip(run.steps, run.states, strict=True):
        took, before = state.minutes - before, state.minutes
        sets = step.sets
        if step.until_clear:
            work = work_of(step, run.surface.hardness, constants)
            one_set = _share(run, step) * (work.minutes + minutes["wipe"] + minutes["inspect"])
            sets = max(1, round(took / one_set)) if one_set else 1
        found.append(sets)
    return found
