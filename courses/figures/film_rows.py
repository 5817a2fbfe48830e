"""The cross-section for a phone: the film lies down, a lane for each stage."""

from __future__ import annotations

from dataclasses import replace

from courses.figures.drawing import Box, Drawing, Mark, Words, depth, one_decimal, shortage
from courses.figures.film_marks import notch_depths, notches_left, tear_down
from courses.figures.film_stages import Film, Stage
from courses.figures.lanes import TALL, Lane, lanes
from courses.figures.scale import Scale

NOTCHES = 4
TOP = 28.0
"""The scale stands over the first lane."""
RIGHT = (11, 15)
SIDE = 5.0
"""The line of what must stay reaches so far over the film and under it."""


def in_rows(film: Film, scale: Scale) -> Drawing:
    """The tall drawing of a film on its scale.

    >>> from courses.figures.film_stages import FilmStep, film_of
    >>> from courses.figures.scale import torn_scale
    >>> film = film_of(FilmStep("Start", 291.0), [FilmStep("P600", 267.9)], 250.0, 60.0)
    >>> drawn = in_rows(film, torn_scale(250.0, 291.0))
    >>> drawn.width, [mark.look for mark in drawn.marks]
    (328.0, ['spend', 'film', 'tear', 'reserve', 'cut', 'spend', 'film', 'tear', 'reserve'])
    """
    marks: list[Mark] = []
    words = _scale(scale, film.limit)
    rows = lanes([stage.name for stage in film.stages], TALL, TOP, right=RIGHT)
    before = film.stages[0].film
    for stage, lane in zip(film.stages, rows, strict=True):
        marks += _film(stage, before, lane.bar, scale, film.limit)
        words += [*lane.words, *_beside(stage, lane)]
        before = stage.film
    return Drawing(TALL.width, rows[-1].bar.bottom + SIDE + 1.0, tuple(marks), tuple(words))


def _x(bar: Box, scale: Scale, value: float) -> float:
    return bar.x + scale.share(value) * bar.width


def _film(stage: Stage, before: float, bar: Box, scale: Scale, limit: float) -> list[Mark]:
    end, stay, was = _x(bar, scale, stage.film), _x(bar, scale, limit), _x(bar, scale, before)
    marks: list[Mark] = []
    if was > end:
        marks.append(Mark("cut", Box(end, bar.y, was - end, bar.height)))
    if stage.gap > 0:
        marks.append(Mark("spend", Box(stay, bar.y, end - stay, bar.height)))
    marks.append(Mark("film", Box(bar.x, bar.y, min(end, stay) - bar.x, bar.height)))
    if stage.gap < 0:
        marks += shortage(Box(end, bar.y, stay - end, bar.height))
    units = bar.width / (scale.top - scale.foot)
    depths = notch_depths([deep for _, deep in stage.marks], NOTCHES)
    marks += notches_left(Box(bar.x, bar.y, end - bar.x, bar.height), [deep * units for deep in depths])
    if scale.torn:
        marks.append(tear_down(bar))
    marks.append(Mark("reserve", Box(stay, bar.y - SIDE, 0.0, bar.height + 2 * SIDE)))
    return marks


def _beside(stage: Stage, lane: Lane) -> list[Words]:
    short = stage.gap < 0
    deep = stage.deepest[1]
    right = TALL.width
    said = [Words(one_decimal(stage.film), right, lane.bar.y + 18.0, "tb k-miss" if short else "tb", "end")]
    if short:
        said.append(Words(f"{one_decimal(-stage.gap)} short", right, lane.words[0].y, "tb k-miss", "end"))
    said.append(Words(f"marks {depth(deep)}" if deep else "no marks", right, lane.line_y, "t2", "end"))
    return said


def _scale(scale: Scale, limit: float) -> list[Words]:
    bar = Box(TALL.bar_x, 0.0, TALL.bar_width, 0.0)
    stay = Words(f"{one_decimal(limit)} must stay", _x(bar, scale, limit), 14.0, "tb", "mid")
    half = stay.box.width / 2
    stay = replace(stay, x=min(max(stay.x, half), TALL.width - half))
    foot = Words(f"from {scale.foot:g}", 0.0, 14.0)
    if stay.box.x < foot.box.right + 8.0:
        foot = replace(foot, x=TALL.width, anchor="end")
    return [foot, stay]
