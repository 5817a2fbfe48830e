"""What every figure is made of: boxes, marks with their outline, words at a place, a table, a description."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Literal

Look = Literal["film", "spend", "cut", "short", "hatch", "reserve", "tear", "notch", "grid", "axis"]
Ink = Literal["tb", "t2", "tb k-miss", "tb onfilm"]
Anchor = Literal["start", "mid", "end"]

CHARACTER = 8.0
"""Room for one character, in units of a drawing: wide, so that words drawn larger for sunlight still fit."""
LINE = 18.0
"""From one line of words to the next."""
GAP = 10.0
"""From one line of a hatching to the next, along an edge."""
MINUS = "\N{MINUS SIGN}"
GLUE = "\N{NO-BREAK SPACE}"


class FigureError(ValueError):
    """A figure that cannot be drawn: a number is not finite, a depth is negative, or there is too much of it."""


@dataclass(frozen=True, slots=True)
class Box:
    """A rectangle, in units of the drawing, from its upper left corner."""

    x: float
    y: float
    width: float
    height: float

    @property
    def right(self) -> float:
        """Its right edge, in units of the drawing.

        >>> Box(1.0, 2.0, 30.0, 4.0).right
        31.0
        """
        return self.x + self.width

    @property
    def bottom(self) -> float:
        """Its lower edge, in units of the drawing.

        >>> Box(1.0, 2.0, 30.0, 4.0).bottom
        6.0
        """
        return self.y + self.height

    @property
    def path(self) -> str:
        """The box as a path, one decimal at most.

        >>> Box(1.0, 2.0, 30.25, 4.0).path
        'M1 2h30.2v4h-30.2z'
        """
        return f"M{plain(self.x)} {plain(self.y)}h{plain(self.width)}v{plain(self.height)}h-{plain(self.width)}z"


@dataclass(frozen=True, slots=True)
class Mark:
    """Something drawn: its look, the box that holds it, and its path where it is no plain box."""

    look: Look
    box: Box
    line: str | None = None

    @property
    def path(self) -> str:
        """What the drawing writes.

        >>> Mark("film", Box(0.0, 0.0, 4.0, 2.0)).path
        'M0 0h4v2h-4z'
        """
        return self.box.path if self.line is None else self.line


@dataclass(frozen=True, slots=True)
class Words:
    """Words at a place: the foot of their line, which end of them stands there, and their ink."""

    text: str
    x: float
    y: float
    ink: Ink = "t2"
    anchor: Anchor = "start"

    @property
    def look(self) -> str:
        """Ink and anchor together, as a drawing wears them.

        >>> Words("7.1 short", 4.0, 20.0, "tb k-miss", "mid").look
        'tb k-miss mid'
        """
        return self.ink if self.anchor == "start" else f"{self.ink} {self.anchor}"

    @property
    def box(self) -> Box:
        """The room they take, guessed wide.

        >>> Words("250", 100.0, 20.0, anchor="mid").box
        Box(x=88.0, y=8.0, width=24.0, height=15.0)
        """
        width = len(self.text) * CHARACTER
        back = {"start": 0.0, "mid": width / 2, "end": width}[self.anchor]
        return Box(self.x - back, self.y - 12.0, width, 15.0)


@dataclass(frozen=True, slots=True)
class Drawing:
    """A finished drawing: its size, what is drawn, in order, and the words over it."""

    width: float
    height: float
    marks: tuple[Mark, ...]
    words: tuple[Words, ...]


@dataclass(frozen=True, slots=True)
class Table:
    """The numbers of a figure: a head for each column, rows that begin with what they name, perhaps a sum."""

    heads: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    total: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Figure:
    """A figure in full: title, description, the drawing for a wide page and for a phone, its table.

    `shows` names what is in it, so that a caption explains nothing that isn't there; `notes` are sentences
    that stand under the table.
    """

    title: str
    description: str
    wide: Drawing
    tall: Drawing
    table: Table
    shows: frozenset[str] = frozenset()
    notes: tuple[str, ...] = ()


def plain(number: float) -> str:
    """A number of a path, one decimal at most.

    >>> plain(4.0), plain(0.25), plain(-0.01)
    ('4', '0.2', '0')
    """
    return f"{round(number, 1) + 0.0:.1f}".removesuffix(".0")


def one_decimal(number: float) -> str:
    """A number as it is shown, with a true minus.

    >>> one_decimal(7.06), one_decimal(-0.8), one_decimal(-0.01)
    ('7.1', '−0.8', '0.0')
    """
    return f"{round(number, 1) + 0.0:.1f}".replace("-", MINUS)


def depth(um: float) -> str:
    """A depth as it is shown: what rounds to nothing is said to be under a tenth.

    >>> depth(7.26), depth(0.04), depth(0.0)
    ('7.3', 'under 0.1', 'none')
    """
    if um <= 0:
        return "none"
    return one_decimal(um) if round(um, 1) >= 0.1 else "under 0.1"


def checked(number: float, what: str) -> float:
    """The number itself, where it is finite and not negative.

    Raises `FigureError` otherwise; `what` names it there.

    >>> checked(3.0, "The film left")
    3.0
    """
    if not 0 <= number < 1e9:
        raise FigureError(f"{what} is {number}; it has to be a finite number, 0 or more.")
    return number


def fitting(text: str, width: float) -> str:
    """The text, cut where it is wider than `width` units.

    >>> fitting("Cut with compound", 80.0)
    'Cut with…'
    """
    most = int(width // CHARACTER)
    return text if len(text) <= most else f"{text[: max(most - 1, 0)].rstrip(' ,')}…"


def wrapped(text: str, width: float, most: int) -> tuple[str, ...]:
    """The text in at most `most` lines of `width` units, broken between words, cut where it still doesn't fit.

    >>> wrapped("Cut with compound, wool", 80.0, 2)
    ('Cut with', 'compound…')
    """
    return broken(text, (width,) * most)


def broken(text: str, widths: Sequence[float]) -> tuple[str, ...]:
    """The text in lines, each of its own width, broken between words; cut where they don't hold it.

    >>> broken("wool, rotary at 600, 900, 1500 rpm", (60.0, 240.0))
    ('wool,', 'rotary at 600, 900, 1500 rpm')
    """
    lines: list[str] = []
    for word in text.split(" "):
        joined = f"{lines[-1]} {word}" if lines else word
        if lines and (len(lines) == len(widths) or len(joined) * CHARACTER <= widths[len(lines) - 1]):
            lines[-1] = joined
        else:
            lines.append(word)
    return tuple(fitting(line, width) for line, width in zip(lines, widths, strict=False) if line)


def hatching(box: Box) -> Mark:
    """Slanting lines that fill a box, each ending at its edges; they continue from box to box.

    >>> hatching(Box(0.0, 0.0, 12.0, 5.0)).path
    'M5 5L10 0'
    """
    first = math.floor((box.x + box.y) / GAP) + 1
    last = math.ceil((box.right + box.bottom) / GAP)
    sums = [GAP * count for count in range(first, last)]
    starts = [max(box.x, total - box.bottom) for total in sums]
    ends = [min(box.right, total - box.y) for total in sums]
    lines = (
        f"M{plain(left)} {plain(total - left)}L{plain(right)} {plain(total - right)}"
        for total, left, right in zip(sums, starts, ends, strict=True)
    )
    return Mark("hatch", box, "".join(lines))


def shortage(box: Box) -> tuple[Mark, ...]:
    """What is missing: a tint with its hatching.

    >>> [mark.look for mark in shortage(Box(0.0, 0.0, 40.0, 20.0))]
    ['short', 'hatch']
    """
    return (Mark("short", box), hatching(box))


def sentences(parts: Iterable[str]) -> str:
    """The sentences that say something, one after the other.

    >>> sentences(["One.", "", "Two."])
    'One. Two.'
    """
    return " ".join(part for part in parts if part)
