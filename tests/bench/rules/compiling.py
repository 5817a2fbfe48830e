"""Checking and compiling the book, beside Python's own compile() of the floor module."""

from __future__ import annotations

import statistics
import time
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path
from typing import Any

from assessments.rules import RuleBook, prepare
from tests.bench.rules import floor
from tests.bench.rules.book import FUNCTIONS, SCHEMA, book
from tests.bench.rules.timing import Case

ROUNDS = 21


def sentence(case: Case, rounds: int = ROUNDS) -> str:
    """Return what checking, compiling and the first case take, to compile() of the floor."""
    file = Path(floor.__file__)
    text = file.read_text(encoding="utf-8")
    pairs = [_pair(number, text, case) for number in range(rounds)]
    bare, traced = (statistics.median(pair[kind] for pair in pairs) for kind in (0, 1))
    return (
        f"Checked and compiled, to `compile()` of the floor module: {bare:.1f} × for values alone, "
        f"{traced:.1f} × with the traced function too; medians of {rounds} pairs, no book like another."
    )


def _pair(number: int, text: str, case: Case) -> tuple[float, float]:
    """Return the two ratios of one round; the book is new each time, so that nothing comes out of a cache."""
    before = _took(lambda: compile(text, "floor.py", "exec"))
    began = time.perf_counter()
    ready = prepare(_fresh(number), SCHEMA, FUNCTIONS)
    ready.compiled.values(case)
    bare = time.perf_counter() - began
    ready.compiled.traced(case)
    whole = time.perf_counter() - began
    after = _took(lambda: compile(text, "floor.py", "exec"))
    python = (before + after) / 2
    return bare / python, whole / python


def _fresh(number: int) -> RuleBook:
    """Return the book with one limit in it that no book before had."""
    rules = [replace(rule, test=str(rule.test).replace("10.0)", f"{10 + number / 1000})")) for rule in book().rules]
    return replace(book(), rules=tuple(rules))


def _took(act: Callable[[], Any]) -> float:
    began = time.perf_counter()
    act()
    return time.perf_counter() - began
