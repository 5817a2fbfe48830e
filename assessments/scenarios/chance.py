"""Chance as an argument: every draw goes through one object, so that a seed always gives the same facts.

Only a stream of numbers in [0, 1) is asked of the source. Python keeps that stream of ``random.Random``
unchanged between its versions; it doesn't promise the same of ``choice``, ``shuffle`` or ``randrange``.
"""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Span:
    """An inclusive range walked in equal steps: ``low``, ``low + step`` … ``high``, all in the unit of the field."""

    low: float
    high: float
    step: float

    def __post_init__(self) -> None:
        """Refuse a range that runs backwards or doesn't end on a step."""
        if self.step <= 0 or self.high < self.low:
            raise ValueError(f"a range runs upward in steps above 0, not from {self.low} to {self.high} by {self.step}")
        steps = (self.high - self.low) / self.step
        if abs(steps - round(steps)) > 1e-6:
            raise ValueError(f"{self.high} isn't reached from {self.low} in steps of {self.step}")

    @property
    def steps(self) -> int:
        """How many steps lie between the ends: one less than the values there are."""
        return round((self.high - self.low) / self.step)

    def __contains__(self, value: object) -> bool:
        """Whether a number lies between the ends, both included."""
        return isinstance(value, int | float) and self.low - 1e-9 <= value <= self.high + 1e-9


@dataclass(frozen=True, slots=True)
class Chance:
    """The one door to randomness; ``source`` returns the next number in [0, 1)."""

    source: Callable[[], float]

    def whole(self, count: int) -> int:
        """Return a whole number from 0 to ``count`` - 1, each as likely as the next.

        >>> Chance(lambda: 0.99).whole(3)
        2
        """
        return min(int(self.source() * count), count - 1)

    def between(self, span: Span) -> float:
        """Return one step of the range, both ends as likely as the rest, without binary dust.

        >>> Chance(lambda: 0.35).between(Span(0.0, 1.0, 0.1))
        0.3
        """
        return round(span.low + self.whole(span.steps + 1) * span.step, 6)

    def happens(self, share: float) -> bool:
        """Whether something that comes in that ``share`` of all draws comes in this one.

        >>> Chance(lambda: 0.5).happens(0.6), Chance(lambda: 0.5).happens(0.5)
        (True, False)
        """
        return self.source() < share

    def pick(self, options: Sequence[str]) -> str:
        """Return one of the options, each as likely as the next.

        >>> Chance(lambda: 0.5).pick(("rising", "steady"))
        'steady'
        """
        return options[self.whole(len(options))]

    def weighted(self, weights: Mapping[str, float]) -> str:
        """Return one name, as often as its weight says; weights needn't add up to anything.

        >>> Chance(lambda: 0.5).weighted({"wait": 1, "coat_now": 3})
        'coat_now'
        """
        left = self.source() * sum(weights.values())
        *others, last = weights
        for name in others:
            if left < weights[name]:
                return name
            left -= weights[name]
        return last
