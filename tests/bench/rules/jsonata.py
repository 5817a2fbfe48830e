"""JSONata, of which there are four."""

from __future__ import annotations

import ast
import json
from collections.abc import Sequence
from importlib import import_module
from typing import Any

from tests.bench.rules.dialect import Walk, Worked
from tests.bench.rules.peer import Case, Peer, with_worked


class Query(Worked):
    """JSONata: loop variables behind one dollar sign, the case behind two."""

    SAME = "="

    def visit_Name(self, part: ast.Name) -> str:
        """Write a loop variable or a root."""
        return f"${part.id}" if part.id in self.scope else f"$$.{part.id}"

    def turned(self, test: str) -> str:
        """Write `not` of a test."""
        return f"$not({test})"

    def root(self, name: str) -> str:
        """Write the name of a value worked out beforehand."""
        return f"$$.worked.{name}"

    def size(self, number: str) -> str:
        """Write a number without its sign."""
        return f"$abs({number})"

    def filtered(self, walk: Walk, where: str | None) -> str:
        """Write the items that meet a condition."""
        return walk.items if where is None else f"$filter({walk.items}, function(${walk.name}){{{where}}})"

    def every(self, walk: Walk) -> str:
        """Write: none that fails."""
        failing = Walk(walk.items, walk.name, self.turned(walk.of), walk.where)
        return f"($count({self.filtered(walk, self.both(failing))}) = 0)"

    def any(self, walk: Walk) -> str:
        """Write: one of those."""
        return f"($count({self.filtered(walk, self.both(walk))}) > 0)"

    def count(self, walk: Walk) -> str:
        """Write: how many."""
        return f"$count({self.filtered(walk, self.both(walk))})"

    def sum(self, walk: Walk) -> str:
        """Write: how much together."""
        return f"$sum($map({self.filtered(walk, walk.where)}, function(${walk.name}){{{walk.of}}}))"

    def overlap(self, xs: str, ys: str) -> str:
        """Write: how many of xs are in ys."""
        return f"$count($filter({xs}, function($x){{$x in {ys}}}))"

    def len(self, value: str) -> str:
        """Write the length of a text."""
        return f"$length({value})"

    def ordered(self, steps: str, a: str, b: str, which: str) -> str:
        """Write an order out."""
        there = f"$count({steps}[op={a}]) > 0 and $count({steps}[op={b}]) > 0"
        return f"({there} and ${which}({steps}[op={a}].n) < $min({steps}[op={b}].n))"


class Jsonata(Peer):
    """JSONata in Python."""

    distribution = "jsonata-python"
    language = Query

    def compile(self) -> None:
        self.programs = [import_module("jsonata.jsonata").Jsonata(text) for text in self.texts]

    def read(self, case: Case) -> Case:
        return with_worked(case)

    def judge(self, case: Case) -> Sequence[Any]:
        return [program.evaluate(case) for program in self.programs]


class JsonataToPython(Jsonata):
    """JSONata made into Python."""

    distribution = "jsonata2py"
    way = "one list"

    def compile(self) -> None:
        self.program = import_module("jsonata2py").compile(self.in_one())

    def judge(self, case: Case) -> Sequence[Any]:
        found: Sequence[Any] = self.program.evaluate(case)
        return found


class JsonataInRust(JsonataToPython):
    """JSONata in Rust."""

    distribution = "jsonatapy"

    def compile(self) -> None:
        self.program = import_module("jsonatapy").compile(self.in_one())


class Jlens(JsonataToPython):
    """JSONata in Rust, the one of them that can audit."""

    distribution = "jlens"

    def compile(self) -> None:
        self.program = import_module("jlens").Expression(self.in_one())


class JlensAudit(Jsonata):
    """The same with its audit: what was compared with what."""

    distribution = "jlens"
    way = "40 expressions, traced"
    traces = True

    def compile(self) -> None:
        self.programs = [import_module("jlens").Expression(text) for text in self.texts]

    def judge(self, case: Case) -> list[Any]:
        self.audits = [program.evaluate_with_audit(case) for program in self.programs]
        return [audit["result"] for audit in self.audits]

    def trace_bytes(self, case: Case) -> int:
        self.judge(case)
        return sum(len(json.dumps(audit, separators=(",", ":"), default=str)) for audit in self.audits)
