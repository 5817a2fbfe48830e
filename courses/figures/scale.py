"""A scale: from its foot to its top, with a tick at each round step."""

from __future__ import annotations

import math
from dataclasses import dataclass

TICKS = 4
"""About so many ticks stand on a scale."""
UNDER = 0.4
"""The foot of a scale lies so much of what varies under the lowest value."""


@dataclass(frozen=True, slots=True)
class Scale:
    """From `foot` to `top` in one unit, with ticks every `step`. A torn scale doesn't begin at nothing."""

    foot: float
    top: float
    step: float

    @property
    def torn(self) -> bool:
        """Whether something under the foot is not drawn.

        >>> Scale(220.0, 291.0, 20.0).torn
        True
        """
        return self.foot > 0

    def share(self, value: float) -> float:
        """How far up a value stands, from 0 to 1; what lies beyond the scale stands at its end.

        >>> Scale(200.0, 300.0, 20.0).share(250.0)
        0.5
        """
        return min(max((value - self.foot) / (self.top - self.foot), 0.0), 1.0)

    def ticks(self) -> tuple[float, ...]:
        """The values that get a line, from the foot up.

        >>> Scale(220.0, 291.0, 20.0).ticks()
        (220.0, 240.0, 260.0, 280.0)
        """
        count = math.floor((self.top - self.foot) / self.step + 1e-9)
        return tuple(round(self.foot + number * self.step, 6) for number in range(count + 1))


def torn_scale(low: float, high: float) -> Scale:
    """A scale on which what varies between `low` and `high` fills the upper part; the foot is a round number.

    >>> torn_scale(242.9, 291.0)
    Scale(foot=220.0, top=291.0, step=20.0)
    >>> torn_scale(8.0, 30.0)
    Scale(foot=0.0, top=30.0, step=10.0)
    """
    span = max(high - low, 0.05 * high, 1.0)
    floor = low - UNDER * span
    top = max(high, 1.0)
    if floor <= 0:
        return scale_from_nothing(top)
    step = round_step((top - floor) / TICKS)
    foot = math.floor(floor / step) * step
    return Scale(round(foot, 6), top, step) if foot > 0 else scale_from_nothing(top)


def scale_from_nothing(top: float) -> Scale:
    """A scale from nothing to `top`, or to 1 where that is less.

    >>> scale_from_nothing(9.2)
    Scale(foot=0.0, top=9.2, step=2.0)
    """
    top = max(top, 1.0)
    return Scale(0.0, top, round_step(top / TICKS))


def round_step(raw: float) -> float:
    """The nearest 1, 2 or 5 of its power of ten, not under half of it.

    >>> round_step(17.0), round_step(0.31), round_step(3.6)
    (20.0, 0.2, 5.0)
    """
    power = 10.0 ** math.floor(math.log10(raw))
    lead = raw / power
    return round(power * (1 if lead < 1.5 else 2 if lead < 3.5 else 5 if lead < 7.5 else 10), 6)
