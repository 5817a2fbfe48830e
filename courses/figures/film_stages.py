"""Film, step by step: what each left, what it took, the marks that are still open, how far from what must stay."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from courses.figures.drawing import FigureError, checked, depth
from courses.figures.lanes import Named, named

MOST = 40
"""So many steps a plan may have."""
START = "Start"


@dataclass(frozen=True, slots=True)
class FilmStep:
    """One step of a plan: its sentence, and the film and the marks it leaves, in model micrometres.

    `marks` are (what it is called, how deep); the deepest stray scratch and the machine's trails stand apart.
    What a step took is not said: it is the difference of the two films that are shown.
    """

    words: str
    film_um: float
    marks: Sequence[tuple[str, float]] = ()
    stray_um: float = 0.0
    trail_um: float = 0.0
    number: int = 0


@dataclass(frozen=True, slots=True)
class Stage:
    """A step as it is drawn, rounded to what is shown. `gap` is what stands over what must stay, or lacks."""

    name: Named
    film: float
    taken: float
    gap: float
    marks: tuple[tuple[str, float], ...]

    @property
    def deepest(self) -> tuple[str, float]:
        """The deepest open mark, and how deep it is.

        >>> Stage(Named("Start"), 45.0, 0.0, 8.0, (("swirls", 0.8), ("stray scratches", 2.9))).deepest
        ('stray scratches', 2.9)
        """
        return max(self.marks, key=lambda mark: mark[1], default=("", 0.0))


@dataclass(frozen=True, slots=True)
class Film:
    """The whole of it: what must stay and why, every stage worth drawing, the steps that changed nothing."""

    limit: float
    reserve: float
    budget: float | None
    stages: tuple[Stage, ...]
    quiet: tuple[Named, ...]

    @property
    def by_budget(self) -> bool:
        """Whether the budget, not the reserve, says what must stay.

        >>> Film(440.0, 250.0, 60.0, (), ()).by_budget
        True
        """
        return self.limit > self.reserve


def film_of(start: FilmStep, steps: Sequence[FilmStep], reserve_um: float, budget_um: float | None) -> Film:
    """The film from `start` through `steps`, each number rounded to one decimal before any is compared.

    What must stay is the reserve, or the film at the start without its budget, whichever is more.

    >>> film = film_of(FilmStep("Start", 291.0), [FilmStep("P600", 267.92), FilmStep("Wipe", 267.92)], 250.0, 60.0)
    >>> film.limit, film.stages[1].taken, film.stages[1].gap, film.quiet[0].head
    (250.0, 23.1, 17.9, 'Wipe')

    Raises `FigureError` for more than 40 steps, or a number that is negative or not finite.
    """
    if len(steps) > MOST:
        raise FigureError(f"A section shows at most {MOST} steps; these are {len(steps)}.")
    reserve = round(checked(reserve_um, "The reserve"), 1)
    before = round(checked(start.film_um, "The film at the start"), 1)
    budget = None if budget_um is None else round(checked(budget_um, "The budget"), 1)
    limit = reserve if budget is None else max(reserve, round(before - budget, 1))
    stages, quiet = [_stage(start, before, limit)], []
    for step in steps:
        stage = _stage(step, stages[-1].film, limit)
        if _same(stage, stages[-1]):
            quiet.append(stage.name)
        else:
            stages.append(stage)
    return Film(limit, reserve, budget, tuple(stages), tuple(quiet))


def _stage(step: FilmStep, before: float, limit: float) -> Stage:
    film = round(checked(step.film_um, f"The film after “{step.words}”"), 1)
    every = (*step.marks, ("stray scratches", step.stray_um), ("machine trails", step.trail_um))
    marks = tuple((called, um) for called, um in every if checked(um, f"The depth of {called}") > 0)
    return Stage(named(step.words, step.number), film, round(before - film, 1), round(film - limit, 1), marks)


def _same(stage: Stage, before: Stage) -> bool:
    return stage.taken == 0 and _shown(stage) == _shown(before)


def _shown(stage: Stage) -> list[tuple[str, str]]:
    return sorted((called, depth(um)) for called, um in stage.marks)
