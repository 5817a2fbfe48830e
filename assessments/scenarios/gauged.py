"""Readings of a film gauge, drawn as it shows them: to whole micrometres, scattered about the film that is there."""

from math import sqrt

from assessments.scenarios.chance import Chance
from courses.trade.units import rounded


def readings_about(chance: Chance, about_um: float, apart_um: float, count: int = 5) -> list[float]:
    """Return ``count`` readings about a mean, with a standard deviation of ``apart_um``, none beyond 4.3 of those.

    The sum of six even chances is close to normal, so that every Python draws the same readings from a seed.

    >>> readings_about(Chance(lambda: 0.5), 47.3, 1.5)
    [47.0, 47.0, 47.0, 47.0, 47.0]
    """
    off = [sqrt(2) * (sum(chance.source() for _ in range(6)) - 3) for _ in range(count)]
    return [rounded(about_um + apart_um * each, 0) for each in off]
