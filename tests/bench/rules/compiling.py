"""Checking and compiling the book, beside Python's own compile() of the floor module."""

from __future__ import annotations

import statistics
import time
from collections.abc import Callable, Iterator
from dataclasses import replace
from itertools import count
from pathlib import Path
from typing import Any

from assessments.rules import PreparedBook, RuleBook, prepare
from tests.bench.rules import floor
from tests.bench.rules.book import FUNCTIONS, SCHEMA, book
from tests.bench.rules.timing import Case

ROUNDS = 41


def sentence(case: Case, rounds: int = ROUNDS) -> str:
    """Return what checking, compiling and the first case take, to compile() of the floor."""
    books, text = _books(), Path(floor.__file__).read_text(encoding="utf-8")
    bare = [_ratio(text, next(books), lambda ready: ready.compiled.values(case)) for _ in range(rounds)]
    traced = [_ratio(text, next(books), lambda ready: ready.compiled.traced(case)) for _ in range(rounds)]
    return (
        "Checked and compiled, to `compile()` of the floor module: "
        f"{statistics.median(bare):.1f} × for values alone, {statistics.median(traced):.1f} × for values and trace; "
        f"medians of {rounds} pairs, no book the same as one before."
    )


def _books() -> Iterator[RuleBook]:
    """Yield the book again and again, each time with a limit in it that no book before had: nothing is in a cache."""
    for number in count(1):
        limit = f"{10 + number / 1000})"
        rules = [replace(rule, test=str(rule.test).replace("10.0)", limit)) for rule in book().rules]
        yield replace(book(), rules=tuple(rules))


def _ratio(text: str, written: RuleBook, first: Callable[[PreparedBook], Any]) -> float:
    """Return the ratio of one round, Python's own compile() before and after."""
    before = _took(lambda: compile(text, "floor.py", "exec"))
    took = _took(lambda: first(prepare(written, SCHEMA, FUNCTIONS)))
    after = _took(lambda: compile(text, "floor.py", "exec"))
    return took / ((before + after) / 2)


def _took(act: Callable[[], Any]) -> float:
    began = time.perf_counter()
    act()
    return time.perf_counter() - began
