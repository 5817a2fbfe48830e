"""The scratch ladder: the marks each abrasive meets, what it takes off them, what it leaves of its own."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from courses.figures.drawing import (
    GLUE,
    Box,
    Drawing,
    Figure,
    FigureError,
    Ink,
    Mark,
    Table,
    Words,
    checked,
    depth,
    one_decimal,
    sentences,
    shortage,
)
from courses.figures.lanes import TALL, WIDE, Lane, Named, Place, lanes, named
from courses.figures.scale import Scale, scale_from_nothing

MOST = 40
STANDS = 0.2
"""A stray that stands more than this over what the abrasive leaves was not cleared, in model micrometres:
the gate of the model (plan 02 of fourteen turns on it)."""
EACH = {"pass": "passes", "set": "sets"}
RIGHT = (17, 22)
BOXES = 20
"""So many passes are drawn one by one at most."""


@dataclass(frozen=True, slots=True)
class Rung:
    """One abrasive step, in model micrometres.

    `leaves_um` and `stray_um` are its own marks, the mean and the deepest; `clears_um` is the depth that one pass,
    or one set (`each`), takes off what it meets, `times` how many were made; `stands_um` is the deepest mark after it.
    """

    words: str
    leaves_um: float
    stray_um: float
    clears_um: float
    times: int
    stands_um: float
    each: str = "pass"
    number: int = 0


@dataclass(frozen=True, slots=True)
class Climb:
    """A rung with the deepest mark that it meets."""

    rung: Rung
    name: Named
    meets: float

    @property
    def uncleared(self) -> bool:
        """Whether a mark of an earlier step still stands.

        >>> Climb(Rung("P2000", 1.3, 2.2, 1.4, 2, 4.5), Named("P2000"), 7.3).uncleared
        True
        """
        return round(self.rung.stands_um - self.rung.stray_um, 2) > STANDS


def scratch_ladder(rungs: Sequence[Rung], start_um: float, *, name: str = "") -> Figure:
    """Draw the abrasive steps of a plan in their order; `start_um` is the deepest mark that the first one meets.

    >>> rungs = [Rung("P600, 5 passes", 4.3, 7.3, 4.4, 5, 7.3), Rung("P2000, 2 passes", 1.3, 2.2, 1.4, 2, 4.5)]
    >>> figure = scratch_ladder(rungs, 15.0)
    >>> figure.table.rows[1]
    ('P2000, 2 passes', '7.3', '2\\xa0passes of\\xa01.4', '1.3', '2.2', '4.5')
    >>> figure.description
    'P2000 leaves marks of an earlier step: they stand 4.5 model µm deep, its own strays 2.2.'

    Raises `FigureError` for no step or more than 40, or a number that is negative or not finite.
    """
    if not 0 < len(rungs) <= MOST:
        raise FigureError(f"A ladder has 1 to {MOST} abrasive steps; these are {len(rungs)}.")
    climbs = _climbs(rungs, start_um)
    scale = scale_from_nothing(max(max(climb.meets, climb.rung.stray_um, climb.rung.stands_um) for climb in climbs))
    return Figure(
        title=f"{name}: marks met and marks left" if name else "Marks met and marks left",
        description=_description(climbs),
        wide=_drawn(climbs, scale, WIDE),
        tall=_drawn(climbs, scale, TALL),
        table=_table(climbs),
        shows=frozenset({"short"} if any(climb.uncleared for climb in climbs) else ()),
    )


def _climbs(rungs: Sequence[Rung], start_um: float) -> tuple[Climb, ...]:
    climbs = []
    meets = checked(start_um, "The deepest mark at the start")
    for rung in rungs:
        for um in (rung.leaves_um, rung.stray_um, rung.clears_um, rung.stands_um):
            checked(um, f"A depth of “{rung.words}”")
        climbs.append(Climb(rung, named(rung.words, rung.number), meets))
        meets = rung.stands_um
    return tuple(climbs)


def _description(climbs: Sequence[Climb]) -> str:
    left = [climb for climb in climbs if climb.uncleared]
    if not left:
        deepest = depth(climbs[-1].rung.stands_um)
        return f"Each step clears what it meets. At the end the deepest mark is {deepest} model µm."
    return sentences(
        f"{climb.name.head} leaves marks of an earlier step: they stand {one_decimal(climb.rung.stands_um)} model µm "
        f"deep, its own strays {depth(climb.rung.stray_um)}."
        for climb in left
    )


def _drawn(climbs: Sequence[Climb], scale: Scale, place: Place) -> Drawing:
    rows = lanes([climb.name for climb in climbs], place, 28.0, right=RIGHT)
    marks: list[Mark] = []
    words = [Words("depth of marks, model µm", 0.0, 14.0)]
    for climb, lane in zip(climbs, rows, strict=True):
        marks += _bar(climb, lane.bar, scale)
        words += [*lane.words, *_said(climb, lane, place)]
    return Drawing(place.width, rows[-1].foot + 12.0, tuple(marks), tuple(words))


def _bar(climb: Climb, bar: Box, scale: Scale) -> list[Mark]:
    own, stands, meets = (
        bar.x + scale.share(um) * bar.width for um in (climb.rung.stray_um, climb.rung.stands_um, climb.meets)
    )
    mean = bar.x + scale.share(climb.rung.leaves_um) * bar.width
    marks = [Mark("cut", box) for box in _passes(climb, bar, scale, max(own, stands), meets)]
    if climb.uncleared:
        marks += shortage(Box(own, bar.y, stands - own, bar.height))
    marks.append(Mark("spend", Box(bar.x, bar.y, own - bar.x, bar.height)))
    marks.append(Mark("film", Box(bar.x, bar.y, min(mean, own) - bar.x, bar.height)))
    return marks


def _passes(climb: Climb, bar: Box, scale: Scale, floor: float, meets: float) -> list[Box]:
    """One box for each pass that still took something off the marks; the last one ends where they stand now."""
    step = scale.share(climb.rung.clears_um) * bar.width
    count = min(climb.rung.times, BOXES)
    if step < 1 or climb.rung.times > BOXES:
        return [Box(floor, bar.y, meets - floor, bar.height)] if meets > floor else []
    ends = [meets - step * number for number in range(count) if meets - step * number > floor]
    return [Box(max(end - step, floor), bar.y, end - max(end - step, floor), bar.height) for end in ends]


def _said(climb: Climb, lane: Lane, place: Place) -> list[Words]:
    ink: Ink = "tb k-miss" if climb.uncleared else "tb"
    over = (
        f"{one_decimal(climb.rung.stands_um)} still stands"
        if climb.uncleared
        else f"leaves{GLUE}{depth(climb.rung.stray_um)}"
    )
    if place.beside:
        x = lane.bar.right + 12.0
        return [Words(over, x, lane.bar.y + 10.0, ink), Words(_takes(climb), x, lane.bar.y + 27.0)]
    return [
        Words(over, place.width, lane.words[0].y, ink, "end"),
        Words(_takes(climb), place.width, lane.line_y, "t2", "end"),
    ]


def _takes(climb: Climb) -> str:
    rung = climb.rung
    each = rung.each if rung.times == 1 else EACH.get(rung.each, rung.each)
    return f"{rung.times}{GLUE}{each} of{GLUE}{depth(climb.rung.clears_um)}"


def _table(climbs: Sequence[Climb]) -> Table:
    heads = ("Step", "Meets", "Takes off", "Leaves, mean", "Leaves, deepest", "Stands after")
    return Table(heads, tuple(_row(climb) for climb in climbs))


def _row(climb: Climb) -> tuple[str, ...]:
    return (
        climb.name.whole,
        depth(climb.meets),
        _takes(climb),
        depth(climb.rung.leaves_um),
        depth(climb.rung.stray_um),
        depth(climb.rung.stands_um),
    )
