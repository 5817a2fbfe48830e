"""Lanes: what is named on the left, or above, and a bar beside it; for plans that run down the page."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import accumulate

from courses.figures.drawing import CHARACTER, GLUE, LINE, Box, Words, fitting, wrapped


@dataclass(frozen=True, slots=True)
class Named:
    """A step by name: its number and what it is, then how it is done. Taken from a sentence at its first comma."""

    head: str
    detail: str = ""

    @property
    def whole(self) -> str:
        """Both together, for a table.

        >>> Named("3 P600", "5 passes").whole
        '3 P600, 5 passes'
        """
        return f"{self.head}, {self.detail}" if self.detail else self.head


@dataclass(frozen=True, slots=True)
class Place:
    """How lanes stand on a page: its width, where bars begin and how long they may be, names beside or above."""

    width: float
    bar_x: float
    bar_width: float
    beside: bool


WIDE = Place(960.0, 250.0, 500.0, beside=True)
TALL = Place(328.0, 1.0, 240.0, beside=False)
BAR = 26.0
Right = tuple[int, int]
"""So many characters stand on the right of a name, above a bar: beside its head, beside its detail."""


@dataclass(frozen=True, slots=True)
class Lane:
    """One lane: its name in words, the box its bar may fill, the foot of its last line of words."""

    words: tuple[Words, ...]
    bar: Box
    line_y: float

    @property
    def foot(self) -> float:
        """Where it ends: under its bar, or under its last line where that reaches lower."""
        return max(self.bar.bottom, *(one.y for one in self.words))


def named(words: str, number: int = 0) -> Named:
    """The name of a step from the sentence that says it; the number is glued to it.

    >>> named("P600, 5 passes, wet", 3)
    Named(head='3\\xa0P600', detail='5 passes, wet')
    >>> named("Start")
    Named(head='Start', detail='')
    """
    head, _, detail = words.partition(", ")
    return Named(f"{number}{GLUE}{head}" if number else head, detail)


def lanes(names: Sequence[Named], place: Place, top: float, *, right: Right = (0, 0)) -> tuple[Lane, ...]:
    """A lane for each name, one under the other from `top`.

    Above a bar, names leave the room for `right` characters; where they stand alone, a short one takes one line.

    >>> first, second = lanes([Named("Start"), Named("3 P600", "5 passes")], TALL, 20.0, right=(11, 15))
    >>> first.bar, second.bar.y
    (Box(x=1.0, y=56.0, width=240.0, height=26.0), 128.0)
    >>> lanes([Named("Start")], TALL, 20.0)[0].bar.y
    38.0
    """
    if place.beside:
        return tuple(_beside(name, place, top + number * 54.0) for number, name in enumerate(names))
    drops = [36.0 if name.detail or any(right) else 18.0 for name in names]
    starts = accumulate((drop + BAR + 10.0 for drop in drops), initial=top)
    return tuple(
        _above(name, place, start, drop, right) for name, start, drop in zip(names, starts, drops, strict=False)
    )


def _beside(name: Named, place: Place, top: float) -> Lane:
    room = place.bar_x - 2 * CHARACTER
    head = Words(fitting(name.head, room), 0.0, top + 12.0, "tb")
    detail = [
        Words(line, 0.0, top + 12.0 + LINE * number)
        for number, line in enumerate(wrapped(name.detail, room, 2), start=1)
    ]
    return Lane((head, *detail), Box(place.bar_x, top + 2.0, place.bar_width, BAR), top + 30.0)


def _above(name: Named, place: Place, top: float, drop: float, right: Right) -> Lane:
    rooms = [place.width - (count + 1) * CHARACTER if count else place.width for count in right]
    head = Words(fitting(name.head, rooms[0]), 0.0, top + 12.0, "tb")
    detail = Words(fitting(name.detail, rooms[1]), 0.0, top + 29.0)
    bar = Box(place.bar_x, top + drop, place.bar_width, BAR)
    return Lane((head, detail) if name.detail else (head,), bar, top + 29.0)
