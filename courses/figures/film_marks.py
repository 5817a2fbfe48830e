"""The film of one stage as it is cut through: what must stay, what may be spent, its marks, what is missing."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import accumulate, cycle, islice

from courses.figures.drawing import Box, Mark, plain

SLIM = 2.6
"""Half the mouth of a notch, in units of the drawing."""
FACTORS = (1.0, 0.6, 0.85, 0.7, 0.9, 0.65, 0.95, 0.75)
"""Not every mark of a kind is as deep as its deepest; the first one is."""
OVER = 0.7
"""A notch begins so far outside the film, so that it opens its edge."""
SEEN = 0.8
"""A notch shallower than this, in units of the drawing, can't be seen."""
TOOTH = 5.0


def notch_depths(marks: Sequence[float], count: int) -> tuple[float, ...]:
    """How deep each of `count` notches is: every mark in turn, the deepest first, at its full depth once.

    >>> notch_depths([2.0, 10.0], 3)
    (10.0, 2.0, 8.5)
    >>> notch_depths([], 3)
    ()
    """
    deepest = sorted((mark for mark in marks if mark > 0), reverse=True)[:count]
    turns = islice(cycle(deepest), count) if deepest else iter(())
    return tuple(
        mark if turn < len(deepest) else mark * FACTORS[turn % len(FACTORS)] for turn, mark in enumerate(turns)
    )


def notches_down(film: Box, depths: Sequence[float]) -> tuple[Mark, ...]:
    """Notches in the upper edge of a standing film, `depths` in units of the drawing; none leaves the film.

    >>> notches_down(Box(0.0, 10.0, 80.0, 90.0), [20.0])[0].path
    'M37.4 9.3l2.6 20.7 2.6-20.7'
    """
    pitch = film.width / max(len(depths), 1)
    return tuple(
        _notch_down(film.x + pitch * (number + 0.5), film.y, min(deep, film.height))
        for number, deep in enumerate(depths)
        if deep >= SEEN
    )


def _notch_down(x: float, y: float, deep: float) -> Mark:
    drop = plain(deep + OVER)
    line = f"M{plain(x - SLIM)} {plain(y - OVER)}l{SLIM} {drop} {SLIM}-{drop}"
    return Mark("notch", Box(x - SLIM, y - OVER, 2 * SLIM, deep + OVER), line)


def notches_left(film: Box, depths: Sequence[float]) -> tuple[Mark, ...]:
    """Notches in the right edge of a lying film, `depths` in units of the drawing; none leaves the film.

    >>> notches_left(Box(0.0, 10.0, 80.0, 26.0), [20.0])[0].path
    'M80.7 20.4l-20.7 2.6 20.7 2.6'
    """
    pitch = film.height / max(len(depths), 1)
    return tuple(
        _notch_left(film.right, film.y + pitch * (number + 0.5), min(deep, film.width))
        for number, deep in enumerate(depths)
        if deep >= SEEN
    )


def _notch_left(x: float, y: float, deep: float) -> Mark:
    drop = plain(deep + OVER)
    line = f"M{plain(x + OVER)} {plain(y - SLIM)}l-{drop} {SLIM} {drop} {SLIM}"
    return Mark("notch", Box(x - deep, y - SLIM, deep + OVER, 2 * SLIM), line)


def tear_across(film: Box) -> Mark:
    """A torn foot of a standing film: the scale doesn't begin at nothing.

    >>> tear_across(Box(0.0, 10.0, 24.0, 90.0)).path
    'M0 101l6-5 6 5 6-5 6 5z'
    """
    step, count = _teeth(film.width)
    teeth = f"{plain(step)}-{plain(TOOTH)} {plain(step)} {plain(TOOTH)}"
    line = f"M{plain(film.x)} {plain(film.bottom + 1)}l{' '.join([teeth] * count)}z"
    return Mark("tear", Box(film.x, film.bottom + 1 - TOOTH, film.width, TOOTH), line)


def tear_down(film: Box) -> Mark:
    """A torn left edge of a lying film.

    >>> tear_down(Box(1.0, 10.0, 90.0, 24.0)).path
    'M0 10l5 6-5 6 5 6-5 6z'
    """
    step, count = _teeth(film.height)
    teeth = f"{plain(TOOTH)} {plain(step)}-{plain(TOOTH)} {plain(step)}"
    line = f"M{plain(film.x - 1)} {plain(film.y)}l{' '.join([teeth] * count)}z"
    return Mark("tear", Box(film.x - 1, film.y, TOOTH, film.height), line)


def _teeth(length: float) -> tuple[float, int]:
    """Half the width of a tooth, and how many of them fill an edge."""
    count = max(round(length / 12.0), 1)
    return length / (2 * count), count


def tops(heights: Sequence[float], start: float, gap: float) -> tuple[float, ...]:
    """Where each of some parts begins that stand one under the other, `gap` apart.

    >>> tops([10.0, 20.0], 5.0, 2.0)
    (5.0, 17.0)
    """
    return tuple(accumulate((height + gap for height in heights[:-1]), initial=start))
