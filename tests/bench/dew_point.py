"""The dew point beside a reference library: `python tests/bench/dew_point.py` prints the ratio of the two."""

import statistics
import timeit

import psychrolib

from courses.trade.air import dew_point_degc

PAIRS, CALLS = 31, 2000
GRID = [(air, humidity) for air in range(5, 41, 5) for humidity in range(30, 91, 10)]


def ours() -> None:
    """Work the grid out with the site's own form, Alduchov and Eskridge 1996."""
    for air, humidity in GRID:
        dew_point_degc(air, humidity)


def theirs() -> None:
    """Work the grid out with PsychroLib, which inverts the ASHRAE equation by iteration."""
    for air, humidity in GRID:
        psychrolib.GetTDewPointFromRelHum(air, humidity / 100)


def ratio() -> float:
    """Return the median of paired ratios, ours to theirs, run in turn."""
    psychrolib.SetUnitSystem(psychrolib.SI)
    number = CALLS // len(GRID)
    pairs = [timeit.timeit(ours, number=number) / timeit.timeit(theirs, number=number) for _ in range(PAIRS)]
    return statistics.median(pairs)


if __name__ == "__main__":
    print(f"dew point, ours to PsychroLib: {ratio():.2f}")
