"""How long the slowest refusal of an attack takes: `python -m tests.bench.rules.attacks` prints it, and the next few.

Every text of the catalogue is checked against the schema of the tests, some rounds over, in time of this thread: what
else the machine does is left out. The worst round is printed too. 10 ms is the most a refusal may take.
"""

import gc
import statistics
import sys
import time
from collections.abc import Callable
from typing import Any

from assessments.rules import Schema, check
from tests.assessments.rules.attacks import HARMLESS, REFUSED
from tests.assessments.rules.conftest import FUNCTIONS, SHAPE

ROUNDS = 15
SHOWN = 5
MOST_MS = 10.0


def timed(refuse: Callable[[object], Any], text: object) -> float:
    """Return how many milliseconds one check of a text takes."""
    start = time.thread_time()
    refuse(text)
    return (time.thread_time() - start) * 1000


def refusals() -> dict[str, list[float]]:
    """Return the milliseconds of every round, by the name of the attack; the rounds go over the whole catalogue."""
    schema = Schema.of(SHAPE)
    found: dict[str, list[float]] = {name: [] for name in (*REFUSED, *HARMLESS)}
    gc.collect()
    for _ in range(ROUNDS):
        for name, text in (*REFUSED.items(), *HARMLESS.items()):
            found[name].append(timed(lambda rule: check(rule, schema, FUNCTIONS), text))
    return found


def report(found: dict[str, list[float]]) -> list[str]:
    """Return the lines that are printed, the slowest attacks first."""
    slowest = sorted(found, key=lambda name: statistics.median(found[name]), reverse=True)[:SHOWN]
    worst = max(found, key=lambda name: max(found[name]))
    return [
        f"{len(found)} texts, {ROUNDS} rounds each; at most {MOST_MS:.0f} ms is allowed.",
        *(f"  {statistics.median(found[name]):7.3f} ms  {name}" for name in slowest),
        f"  {max(found[worst]):7.3f} ms  {worst}, the worst of all rounds",
    ]


if __name__ == "__main__":
    sys.stdout.write("\n".join(report(refusals())) + "\n")
