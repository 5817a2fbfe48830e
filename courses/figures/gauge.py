"""A gauge: one value against one limit, on a bar.

Numbers in; boxes, labels with their places and what the drawing says out. Nothing here knows a page:
a template tag writes the drawing, and the words come from whoever speaks to the reader.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from courses.figures.drawing import Anchor, Box

Sense = Literal["at_least", "at_most"]
Says = Literal["kept", "short", "over"]

WIDTH = 288.0
HEIGHT = 64.0
LABEL_WIDTH = 7.2
"""Room for one character of a label, in units of the drawing: a wide guess, so that no label leaves it."""


class GaugeError(ValueError):
    """A gauge that cannot be drawn: its scale is empty, or a number is not finite."""


@dataclass(frozen=True, slots=True)
class Label:
    """Words at a place: what they name, and which end of them stands there (`anchor`)."""

    role: Literal["limit", "value"]
    x: float
    y: float
    anchor: Anchor
    words: str


@dataclass(frozen=True, slots=True)
class Gauge:
    """The finished drawing.

    `says` is `kept` when the value keeps to the limit, `short` when it stays under a lower limit and `over`
    when it passes an upper one; `gap` is the part between value and limit, present only when it is not kept.
    """

    width: float
    height: float
    track: Box
    bar: Box
    gap: Box | None
    limit_x: float
    labels: tuple[Label, ...]
    says: Says


def gauge(
    value: float,
    limit: float,
    *,
    high: float,
    low: float = 0.0,
    sense: Sense = "at_least",
    value_words: str = "",
    limit_words: str = "",
) -> Gauge:
    """Draw `value` against `limit` on a scale from `low` to `high`, all in one unit.

    Values beyond the scale are drawn at its end; what the gauge says still rests on the numbers themselves.
    A value equal to the limit keeps it. Round before you draw: picture and words must rest on the same numbers.

    >>> drawn = gauge(1.5, 3.0, high=6.0, value_words="1.5 K", limit_words="3.0 K")
    >>> drawn.says, drawn.limit_x, drawn.bar.width, drawn.gap
    ('short', 144.0, 71.5, Box(x=72.5, y=27.0, width=71.5, height=10.0))
    >>> gauge(3.0, 3.0, high=6.0).says
    'kept'

    Raises `GaugeError` when `high` is not above `low` or a number is not finite.
    """
    _check(value, limit, low, high)
    value_x, limit_x = _place(value, low, high), _place(limit, low, high)
    says = _says(value, limit, sense)
    left, right = sorted((value_x, limit_x))
    labels = (_label("limit", limit_x, 14.0, limit_words), _label("value", value_x, 60.0, value_words))
    return Gauge(
        width=WIDTH,
        height=HEIGHT,
        track=Box(0.5, 23.5, WIDTH - 1.0, 17.0),
        bar=Box(1.0, 27.0, max(value_x - 1.0, 0.0), 10.0),
        gap=None if says == "kept" else Box(left, 27.0, right - left, 10.0),
        limit_x=limit_x,
        labels=tuple(label for label in labels if label.words),
        says=says,
    )


def _check(value: float, limit: float, low: float, high: float) -> None:
    for name, number in (("value", value), ("limit", limit), ("low", low), ("high", high)):
        if not -1e12 < number < 1e12:
            raise GaugeError(f"The {name} of a gauge is {number}; it has to be a finite number.")
    if high <= low:
        raise GaugeError(f"The scale of a gauge runs from {low} to {high}; its end has to lie above its start.")


def _place(number: float, low: float, high: float) -> float:
    share = (number - low) / (high - low)
    return round(1.0 + min(max(share, 0.0), 1.0) * (WIDTH - 2.0), 1)


def _says(value: float, limit: float, sense: Sense) -> Says:
    if sense == "at_least":
        return "kept" if value >= limit else "short"
    return "kept" if value <= limit else "over"


def _label(role: Literal["limit", "value"], x: float, y: float, words: str) -> Label:
    half = len(words) * LABEL_WIDTH / 2
    if x - half < 0:
        return Label(role, 0.0, y, "start", words)
    if x + half > WIDTH:
        return Label(role, WIDTH, y, "end", words)
    return Label(role, x, y, "mid", words)
