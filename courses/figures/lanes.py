"""Lanes: what is named on the left, or above, and a bar beside it; for plans that run down the page."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import accumulate

from courses.figures.drawing import CHARACTER, GLUE, LINE, Box, Ink, Words, broken, wrapped


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
CLOSE = 17.0
"""From one line of a name above its bar to the next."""
DETAILS = 3
"""Lines that the detail of a name may take."""
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
        said = [_words_beside(name, place) for name in names]
        heights = [54.0 + LINE * max(0, len(lines) - 3) for lines in said]
        starts = accumulate(heights, initial=top)
        return tuple(_beside(lines, place, start) for lines, start in zip(said, starts, strict=False))
    said = [_words_above(name, place, right) for name in names]
    drops = [36.0 + CLOSE * max(0, len(lines) - 2) if len(lines) > 1 or any(right) else 18.0 for lines in said]
    starts = accumulate((drop + BAR + 10.0 for drop in drops), initial=top)
    return tuple(_above(lines, place, start, drop) for lines, start, drop in zip(said, starts, drops, strict=False))


def _words_beside(name: Named, place: Place) -> tuple[Words, ...]:
    """A name on the left of its bar, as lines one under the other from nothing."""
    room = place.bar_x - 2 * CHARACTER
    inked: list[tuple[str, Ink]] = [(line, "tb") for line in wrapped(name.head, room, 2)]
    inked += [(line, "t2") for line in wrapped(name.detail, room, DETAILS)]
    return tuple(Words(line, 0.0, LINE * number, ink) for number, (line, ink) in enumerate(inked))


def _words_above(name: Named, place: Place, right: Right) -> tuple[Words, ...]:
    """A name above its bar: what stands on the right narrows its first two lines, the others are as wide as the page.

    >>> [words.text for words in _words_above(Named("3 Cut with compound", "wool, rotary, 2 sets"), TALL, (17, 22))]
    ['3 Cut with compound', 'wool, rotary, 2', 'sets']
    """
    rooms = [place.width - (count + 1) * CHARACTER if count else place.width for count in right]
    rooms += [place.width] * (DETAILS + 1)
    heads = broken(name.head, rooms[:2])
    details = broken(name.detail, rooms[len(heads) : len(heads) + DETAILS])
    inked: list[tuple[str, Ink]] = [*((line, "tb") for line in heads), *((line, "t2") for line in details)]
    return tuple(Words(line, 0.0, CLOSE * number, ink) for number, (line, ink) in enumerate(inked))


def _beside(lines: Sequence[Words], place: Place, top: float) -> Lane:
    return Lane(_down(lines, top), Box(place.bar_x, top + 2.0, place.bar_width, BAR), top + 30.0)


def _above(lines: Sequence[Words], place: Place, top: float, drop: float) -> Lane:
    return Lane(_down(lines, top), Box(place.bar_x, top + drop, place.bar_width, BAR), top + 29.0)


def _down(lines: Sequence[Words], top: float) -> tuple[Words, ...]:
    return tuple(replace(one, y=top + 12.0 + one.y) for one in lines)
