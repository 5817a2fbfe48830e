"""Every engine beside the floor, in one run: in turn, in an order drawn anew, the floor right before and after."""

from __future__ import annotations

import gc
import statistics
import time
from collections.abc import Sequence
from dataclasses import dataclass, field
from random import Random
from typing import Any, Protocol

from tests.bench.rules.ours import Floor

Case = dict[str, Any]
BUDGET = 0.1
"""Seconds that one engine may take in one round; a slow one gets fewer cases, the floor the same ones."""

LEAST_CASES, FLOOR_RUNS = 2, 200


class Engine(Protocol):
    """What the bench asks of an engine."""

    name: Any
    way: str
    traces: bool
    rules: list[int]

    def read(self, case: Case) -> Any: ...
    def judge(self, case: Any) -> Any: ...
    def said(self, found: Any) -> list[Any]: ...


@dataclass
class Timed:
    """One engine with the seconds a case took, and the ratios to the floor, round by round."""

    engine: Engine
    cases: int
    seconds: list[float] = field(default_factory=list)
    ratios: list[float] = field(default_factory=list)

    @property
    def ratio(self) -> float:
        """The median of paired ratios."""
        return statistics.median(self.ratios)

    @property
    def middle(self) -> tuple[float, float]:
        """Between which two the middle half of the ratios lies."""
        low, _, high = statistics.quantiles(self.ratios, n=4)
        return low, high

    @property
    def micros(self) -> float:
        """Microseconds a case, median."""
        return statistics.median(self.seconds) * 1e6


def wrong(engine: Engine, cases: Sequence[Case]) -> list[int]:
    """Return the places of the rules on which an engine ever says anything but what the floor says."""
    judge = Floor(engine.rules)
    found: set[int] = set()
    for case in cases:
        said, wanted = engine.said(engine.judge(engine.read(case))), judge.judge(case)
        pairs = zip(engine.rules, said, wanted, strict=True)
        found |= {place for place, ours, theirs in pairs if ours is not theirs}
    return sorted(found)


def seconds(engine: Engine, cases: Sequence[Case]) -> float:
    """Return the seconds a case takes, turned into what the engine reads and judged."""
    read, judge = engine.read, engine.judge
    began = time.perf_counter()
    for case in cases:
        judge(read(case))
    return (time.perf_counter() - began) / len(cases)


def timed(engines: Sequence[Engine], cases: Sequence[Case], rounds: int) -> list[Timed]:
    """Return all engines, timed in turn so many rounds."""
    rows = [Timed(engine, _share(engine, cases)) for engine in engines]
    for number in range(rounds):
        chance = Random(number)
        for row in chance.sample(rows, len(rows)):
            _pair(row, chance.sample(cases, row.cases))
    return rows


def _share(engine: Engine, cases: Sequence[Case]) -> int:
    took = seconds(engine, cases[:LEAST_CASES])
    return max(LEAST_CASES, min(len(cases), int(BUDGET / took)))


def _pair(row: Timed, cases: Sequence[Case]) -> None:
    """Time one engine once, the floor before and after it on the same cases and the same rules."""
    floor, walked = Floor(row.engine.rules), [*cases] * max(1, FLOOR_RUNS // len(cases))
    gc.collect()
    before = seconds(floor, walked)
    took = seconds(row.engine, cases)
    after = seconds(floor, walked)
    row.seconds.append(took)
    row.ratios.append(took / ((before + after) / 2))
