"""What was measured, as Markdown."""

from __future__ import annotations

import datetime
import os
import platform
import statistics
from collections.abc import Sequence

from tests.bench.rules.timing import Case, Timed

HEAD = (
    "| engine | how it ran | rules | × floor | middle half | µs a case | bytes of trace a mark |",
    "|---|---|--:|--:|--:|--:|--:|",
)


def heading(cases: int, rounds: int) -> str:
    """Return when and on what it was measured; no place, no name of a machine."""
    python, cores = platform.python_version(), os.cpu_count()
    system = f"{platform.system()} on {platform.machine()} with {cores} cores"
    return f"{datetime.date.today().isoformat()}, Python {python}, {system}; {cases} cases, {rounds} rounds."


def table(rows: Sequence[Timed], cases: Sequence[Case]) -> str:
    """Return one line for each engine, the fastest first."""
    ordered = sorted(rows, key=lambda row: row.ratio)
    return "\n".join([*HEAD, *(line(row, cases) for row in ordered)])


def line(row: Timed, cases: Sequence[Case]) -> str:
    """Return the line of one engine."""
    engine = row.engine
    low, high = row.middle
    cells = [
        engine.name,
        engine.way,
        len(engine.rules),
        figure(row.ratio),
        f"{figure(low)}–{figure(high)}",
        figure(row.micros),
        traced(row, cases) if engine.traces else "",
    ]
    return f"| {' | '.join(str(cell) for cell in cells)} |".replace("|  |", "| |")


def traced(row: Timed, cases: Sequence[Case]) -> str:
    """Return the least, median and largest trace of as many cases as the engine judged in a round."""
    sizes = [row.engine.trace_bytes(row.engine.read(case)) for case in cases[: row.cases]]
    return f"{min(sizes):,} / {statistics.median(sizes):,.0f} / {max(sizes):,}"


def figure(value: float) -> str:
    """Return a number with three figures, none after the point from a hundred.

    >>> figure(0.547), figure(2.94), figure(46.52), figure(5123.4)
    ('0.55', '2.9', '47', '5,123')
    """
    decimals = 2 if value < 2 else 1 if value < 20 else 0
    return f"{value:,.{decimals}f}"
