"""Our own engine, and the floor under all: as the bench runs them, beside the peers."""

from __future__ import annotations

import json
from collections.abc import Sequence
from functools import cache
from typing import Any

from assessments.rules import Mark, PreparedBook, bind, judge, prepare
from tests.bench.rules import floor
from tests.bench.rules.book import FUNCTIONS, SCHEMA, book

Case = dict[str, Any]
ALL = list(range(len(floor.RULES)))


@cache
def prepared() -> PreparedBook:
    """Return the book, checked and compiled."""
    return prepare(book(), SCHEMA, FUNCTIONS)


class Floor:
    """The rules as plain functions, as many of them as the other engine of the pair can express."""

    name, way = "the floor: plain Python", "40 functions"
    traces = False

    def __init__(self, rules: Sequence[int] = ALL) -> None:
        self.rules = list(rules)
        self.functions = [floor.RULES[place] for place in rules]

    def read(self, case: Case) -> Case:
        """Return the case as it is."""
        return case

    def judge(self, case: Case) -> list[bool]:
        """Return what each function says."""
        facts, answer, model, key = case["facts"], case["answer"], case["model"], case["key"]
        return [rule(facts, answer, model, key) for rule in self.functions]

    def said(self, found: list[bool]) -> list[bool]:
        """Return what was found."""
        return found


class Untraced:
    """The generated function of the book, nothing written down, on a case that was bound before."""

    name, way = "this engine", "values alone"
    traces = False
    rules = ALL

    def __init__(self) -> None:
        self.prepared = prepared()

    def read(self, case: Case) -> Case:
        """Return the case as it is: binding adds nothing to a case that fits."""
        return case

    def judge(self, case: Case) -> Any:
        """Return the value of each test."""
        return self.prepared.compiled.values(case)

    def said(self, found: Any) -> list[Any]:
        """Return the values as they are."""
        return list(found)


class Traced(Untraced):
    """The same with the trace as it is stored."""

    way = "values and trace"
    traces = True

    def judge(self, case: Case) -> Any:
        return self.prepared.compiled.traced(case)

    def said(self, found: Any) -> list[Any]:
        return list(found[0])

    def trace_bytes(self, case: Case) -> int:
        """Return the bytes of the trace that is stored."""
        return len(json.dumps(judge(self.prepared, case).trace, separators=(",", ":"), ensure_ascii=False).encode())


class Marked(Untraced):
    """All of a mark: the case bound, silence told from error, findings with their values, the trace packed."""

    way = "a whole mark"

    def judge(self, case: Case) -> Mark:
        return judge(self.prepared, case)

    def said(self, found: Mark) -> list[Any]:
        return [finding.verdict == "met" for finding in found.findings]


class Stored(Marked):
    """The same, written as the JSON that is stored."""

    way = "a whole mark, as stored"

    def judge(self, case: Case) -> Mark:
        found = judge(self.prepared, case)
        json.dumps([finding.as_json() for finding in found.findings])
        json.dumps(found.trace)
        return found


def bound(cases: Sequence[Case]) -> list[Case]:
    """Return the cases as every engine of the bench gets them: plain values that fit the schema."""
    return [bind(SCHEMA, case) for case in cases]


OURS = (Untraced, Traced, Marked, Stored)
