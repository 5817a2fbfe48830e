"""The cross-section for a wide page: a column for each stage, in as many rows as they need."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from courses.figures.drawing import LINE, MINUS, Box, Drawing, Mark, Words, depth, one_decimal, shortage, wrapped
from courses.figures.film_marks import notch_depths, notches_down, tear_across, tops
from courses.figures.film_stages import Film, Stage
from courses.figures.scale import Scale

WIDTH, LEFT, RIGHT = 960.0, 52.0, 872.0
PLOT = 234.0
"""How high the tallest film stands."""
MOST = 6
"""So many columns stand in a row at most."""
PITCH = 200.0
NOTCHES = 8
INSIDE = 34.0
"""What a step took is said inside its box where that is so high."""
ROOM = 28.0
"""What is left is said on the film where that is so high, else over it."""
HEAD = 20.0
"""Room over the tallest film, for what a step took."""


@dataclass(frozen=True, slots=True)
class Row:
    """One row of columns: its place, its scale, its limit, and the lines of words under each column."""

    top: float
    scale: Scale
    limit: float
    pitch: float
    right: float
    lines: tuple[tuple[Words, ...], ...]
    height: float

    @property
    def base(self) -> float:
        """The foot of the films, in units of the drawing.

        >>> Row(30.0, Scale(200.0, 300.0, 20.0), 250.0, 140.0, 872.0, (), 300.0).base
        284.0
        """
        return self.top + HEAD + PLOT

    def y(self, value: float) -> float:
        """Where a film of `value` ends, in units of the drawing.

        >>> Row(30.0, Scale(200.0, 300.0, 20.0), 250.0, 140.0, 872.0, (), 300.0).y(250.0)
        167.0
        """
        return self.base - self.scale.share(value) * PLOT


def in_columns(film: Film, scale: Scale) -> Drawing:
    """The wide drawing of a film on its scale.

    >>> from courses.figures.film_stages import FilmStep, film_of
    >>> from courses.figures.scale import torn_scale
    >>> film = film_of(FilmStep("Start", 291.0), [FilmStep("P600", 267.9)], 250.0, 60.0)
    >>> drawn = in_columns(film, torn_scale(250.0, 291.0))
    >>> drawn.width, [mark.look for mark in drawn.marks if mark.look in ("film", "cut")]
    (960.0, ['film', 'cut', 'film'])
    """
    groups = _groups(film.stages)
    pitch = min(PITCH, (RIGHT - LEFT) / max(len(group) for group in groups))
    lines = [tuple(_lines(stage, pitch) for stage in group) for group in groups]
    heights = [HEAD + PLOT + 4.0 + LINE * max(1, *(len(some) for some in row)) for row in lines]
    starts = tops(heights, 20.0, 24.0)
    marks: list[Mark] = []
    words = [Words(f"film, model µm{_foot(scale)}", 0.0, 14.0)]
    before: Stage | None = None
    for group, top, named, height in zip(groups, starts, lines, heights, strict=True):
        row = Row(top, scale, film.limit, pitch, LEFT + pitch * len(groups[0]), named, height)
        marks += _grid(row)
        words += _ticks(row)
        for number, stage in enumerate(group):
            column = Box(LEFT + pitch * (number + 0.08), row.top, pitch * 0.84, HEAD + PLOT)
            drawn, said = _column(row, column, stage, before)
            marks += drawn
            words += [*said, *_placed(row.lines[number], column, row.base)]
            before = stage
        marks += _limit(row)
    return Drawing(WIDTH, starts[-1] + heights[-1] + 4.0, tuple(marks), tuple(words))


def _groups(stages: Sequence[Stage]) -> list[Sequence[Stage]]:
    rows = -(-len(stages) // MOST)
    each = -(-len(stages) // rows)
    return [stages[start : start + each] for start in range(0, len(stages), each)]


def _foot(scale: Scale) -> str:
    return f"; what lies under {scale.foot:g} is not drawn" if scale.torn else ""


def _lines(stage: Stage, pitch: float) -> tuple[Words, ...]:
    room = pitch - 4.0
    deep = stage.deepest[1]
    lines = [Words(line, 0.0, 0.0, "tb", "mid") for line in wrapped(stage.name.head, room - 8.0, 2)]
    lines += [Words(line, 0.0, 0.0, "t2", "mid") for line in wrapped(stage.name.detail, room, 4)]
    lines.append(Words(f"marks {depth(deep)}" if deep else "no marks", 0.0, 0.0, "t2", "mid"))
    if stage.gap < 0:
        lines.append(Words(f"{one_decimal(-stage.gap)} short", 0.0, 0.0, "tb k-miss", "mid"))
    return tuple(lines)


def _placed(lines: Sequence[Words], column: Box, base: float) -> list[Words]:
    middle = column.x + column.width / 2
    return [
        Words(line.text, middle, base + 4.0 + LINE * number, line.ink, line.anchor)
        for number, line in enumerate(lines, start=1)
    ]


def _column(row: Row, column: Box, stage: Stage, before: Stage | None) -> tuple[list[Mark], list[Words]]:
    top, limit = row.y(stage.film), row.y(row.limit)
    left = _left(row, column, stage)
    marks: list[Mark] = []
    words = [left]
    if before and stage.taken > 0:
        cut = Box(column.x, row.y(before.film), column.width, top - row.y(before.film))
        marks.append(Mark("cut", cut))
        y = _over(cut, min(top, limit), left)
        words.append(Words(f"{MINUS}{one_decimal(stage.taken)}", left.x, y, "t2", "mid"))
    if stage.gap > 0:
        marks.append(Mark("spend", Box(column.x, top, column.width, limit - top)))
    dark = max(top, limit)
    marks.append(Mark("film", Box(column.x, dark, column.width, row.base - dark)))
    if stage.gap < 0:
        marks += shortage(Box(column.x, limit, column.width, top - limit))
    film = Box(column.x, top, column.width, row.base - top)
    units = PLOT / (row.scale.top - row.scale.foot)
    depths = notch_depths([deep for _, deep in stage.marks], NOTCHES)
    marks += notches_down(film, [deep * units for deep in depths])
    if row.scale.torn:
        marks.append(tear_across(film))
    return marks, words


def _left(row: Row, column: Box, stage: Stage) -> Words:
    """What is left, said on the film that must stay, or over it where that is too low."""
    dark = max(row.y(stage.film), row.y(row.limit))
    middle = column.x + column.width / 2
    if row.base - dark > ROOM:
        return Words(one_decimal(stage.film), middle, row.base - 14.0, "tb onfilm", "mid")
    return Words(one_decimal(stage.film), middle, dark - 6.0, "tb", "mid")


def _over(cut: Box, top: float, left: Words) -> float:
    """Where it is said what a step took: in its box where that is high and free, else over all else."""
    inside = cut.y + cut.height / 2 + 4.5
    if cut.height >= INSIDE and cut.bottom <= top and inside < left.box.y - 3.0:
        return inside
    return min(cut.y - 6.0, top - 6.0, left.y - 16.0)


def _grid(row: Row) -> list[Mark]:
    lines = (row.y(tick) for tick in row.scale.ticks())
    return [Mark("grid", Box(LEFT, y, row.right - LEFT, 0.0)) for y in lines]


def _ticks(row: Row) -> list[Words]:
    ticks = [Words(f"{tick:g}", LEFT - 8.0, row.y(tick) + 4.5, "t2", "end") for tick in row.scale.ticks()]
    y = min(row.y(row.limit), row.base - 12.0)
    return [
        *ticks,
        Words(one_decimal(row.limit), row.right + 6.0, y - 2.0, "tb"),
        Words("must stay", row.right + 6.0, y + 14.0),
    ]


def _limit(row: Row) -> list[Mark]:
    width = row.right - LEFT
    return [
        Mark("axis", Box(LEFT, row.base, width, 0.0)),
        Mark("reserve", Box(LEFT, row.y(row.limit), width, 0.0)),
    ]
