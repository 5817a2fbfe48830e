"""What a plan costs: `python tests/bench/plans.py` prints it beside writing and reading the same plan as JSON.

Twelve steps on a heavily oxidised panel. The ratio is the median of paired runs, ours to JSON's, and has to stay
within ten; the 44 variants of a verdict have to stay within 100 ms of processor time.
"""

import json
import statistics
import sys
import time
import timeit
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from courses.trade.surface import PanelSurface, read_plan, simulate, unsteady
from courses.trade.surface.optics import _shine
from courses.trade.surface.work import work_of
from tests.courses.pictures.trade import catalogue
from tests.courses.trade.model import constants
from tests.courses.trade.surface.plans import HEAVY_CHALK, LADDER

PAIRS, CALLS = 31, 40
STEPS = LADDER[:12]
SURFACE = PanelSurface.of(HEAVY_CHALK, catalogue(), constants())
PLAN = read_plan(STEPS, SURFACE)
WRITTEN = {"surface": SURFACE.as_json(), "plan": [step.as_json() for step in PLAN]}


def written() -> dict[str, object]:
    """Return plan and outcome as the door writes them."""
    return WRITTEN | simulate(SURFACE, PLAN, constants()).as_json()


def ratio(optics: str) -> float:
    """Return the median of paired ratios: the outcome of the plan to writing and reading plan and outcome as JSON."""
    document = written()

    def ours() -> None:
        simulate(SURFACE, PLAN, constants(), optics=optics)

    def theirs() -> None:
        json.loads(json.dumps(document))

    return statistics.median(
        timeit.timeit(ours, number=CALLS) / timeit.timeit(theirs, number=CALLS) for _ in range(PAIRS)
    )


def cold() -> float:
    """Return the same ratio where nothing is kept from earlier plans: one run each time, from empty caches."""
    document = written()
    pairs = []
    for _ in range(PAIRS):
        work_of.cache_clear()
        _shine.cache_clear()
        ours = timeit.timeit(lambda: simulate(SURFACE, PLAN, constants()), number=1)
        pairs.append(ours / (timeit.timeit(lambda: json.loads(json.dumps(document)), number=CALLS) / CALLS))
    return statistics.median(pairs)


def variants_ms() -> float:
    """Return the processor time of all 44 variants of the plan, from empty caches, in milliseconds."""
    work_of.cache_clear()
    began = time.process_time()
    unsteady(SURFACE, PLAN, constants())
    return (time.process_time() - began) * 1000


if __name__ == "__main__":
    warm, blind = ratio("last"), ratio("none")
    print(f"outcome of 12 steps, to JSON: {warm:.1f}, without optics {blind:.1f}, from empty caches {cold():.1f}")
    print(f"44 variants of it: {statistics.median(variants_ms() for _ in range(PAIRS)):.0f} ms of processor time")
