"""The cross-section of film: what stands after each step, what it took, its marks, and what must stay."""

from __future__ import annotations

from collections.abc import Sequence

from courses.figures.drawing import Figure, Table, depth, one_decimal, sentences
from courses.figures.film_columns import in_columns
from courses.figures.film_rows import in_rows
from courses.figures.film_stages import START, Film, FilmStep, Stage, film_of
from courses.figures.scale import Scale, torn_scale


def film_section(
    film_um: float,
    reserve_um: float,
    budget_um: float | None,
    steps: Sequence[FilmStep],
    *,
    found: Sequence[tuple[str, float]] = (),
    stray_um: float = 0.0,
    trail_um: float = 0.0,
    name: str = "",
) -> Figure:
    """Draw one zone of film through a plan; everything in model micrometres.

    `film_um`, `found`, `stray_um` and `trail_um` say how it starts. What must stay is the reserve, or the film at
    the start without its budget, whichever is more. Steps that took nothing and changed no mark are named under
    the table, not drawn. `name` says which zone or whose plan it is, where a page shows several.

    >>> steps = [FilmStep("P600, 5 passes", 267.9, stray_um=7.3, number=3), FilmStep("P1500", 249.2, number=5)]
    >>> figure = film_section(291.0, 250.0, 60.0, steps, found=[("chalk", 12.0)])
    >>> figure.table.rows[1]
    ('3\\xa0P600, 5 passes', '23.1', '267.9', '17.9', '7.3, stray scratches')
    >>> figure.description.split(". ")[1]
    '250.0 must stay, the reserve: 0.8 short'

    Raises `FigureError` for more than 40 steps, or a number that is negative or not finite.
    """
    start = FilmStep(START, film_um, found, stray_um, trail_um)
    film = film_of(start, steps, reserve_um, budget_um)
    films = [stage.film for stage in film.stages]
    scale = torn_scale(min(*films, film.limit), max(*films, film.limit))
    return Figure(
        title=f"{name}: film left after each step" if name else "Film left after each step",
        description=_description(film),
        wide=in_columns(film, scale),
        tall=in_rows(film, scale),
        table=_table(film),
        shows=_shows(film, scale),
        notes=_notes(film),
    )


def _description(film: Film) -> str:
    first, last = film.stages[0], film.stages[-1]
    taken = round(first.film - last.film, 1)
    before, after = one_decimal(first.film), one_decimal(last.film)
    told = f"The film starts at {before} model µm and nothing is taken."
    if taken:
        told = f"From {before} the film goes to {after} model µm: {one_decimal(taken)} taken."
    return sentences((told, _against(film, last), _crossing(film), _most(film), _deepest(last)))


def _against(film: Film, last: Stage) -> str:
    why = "the reserve"
    if film.by_budget and film.budget is not None:
        budget, reserve = one_decimal(film.budget), one_decimal(film.reserve)
        why = f"or more than the budget of {budget} is spent; the reserve is {reserve}"
    return f"{one_decimal(film.limit)} must stay, {why}: {_gap(last)}."


def _gap(stage: Stage) -> str:
    return f"{one_decimal(-stage.gap)} short" if stage.gap < 0 else f"{one_decimal(stage.gap)} above it"


def _crossing(film: Film) -> str:
    short = [stage for stage in film.stages if stage.gap < 0]
    return f"The line is crossed at {short[0].name.head}." if short else ""


def _most(film: Film) -> str:
    most = max(film.stages, key=lambda stage: stage.taken)
    return f"{most.name.head} took most: {one_decimal(most.taken)}." if most.taken > 0 else ""


def _deepest(last: Stage) -> str:
    called, deep = last.deepest
    return f"The deepest mark left: {called}, {depth(deep)}." if called else "No mark is left."


def _table(film: Film) -> Table:
    return Table(("Step", "Taken", "Left", "Above what must stay", "Deepest mark"), tuple(map(_row, film.stages)))


def _row(stage: Stage) -> tuple[str, ...]:
    called, deep = stage.deepest
    gap = _gap(stage) if stage.gap < 0 else one_decimal(stage.gap)
    mark = f"{depth(deep)}, {called}" if called else "none"
    return (stage.name.whole, one_decimal(stage.taken), one_decimal(stage.film), gap, mark)


def _shows(film: Film, scale: Scale) -> frozenset[str]:
    shown = {
        "taken": any(stage.taken > 0 for stage in film.stages),
        "spend": any(stage.gap > 0 for stage in film.stages),
        "short": any(stage.gap < 0 for stage in film.stages),
        "marks": any(stage.marks for stage in film.stages),
        "budget": film.by_budget,
        "torn": scale.torn,
    }
    return frozenset(name for name, is_there in shown.items() if is_there)


def _notes(film: Film) -> tuple[str, ...]:
    if not film.quiet:
        return ()
    names = "; ".join(name.whole for name in film.quiet)
    return (f"These take nothing and change no mark here: {names}.",)
