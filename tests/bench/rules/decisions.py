"""The peers that have a language for rules of their own."""

from __future__ import annotations

import ast
import json
from collections.abc import Sequence
from decimal import Decimal
from importlib import import_module
from typing import Any

from tests.bench.rules import floor
from tests.bench.rules.dialect import Dialect, Inexpressible, Walk, Worked
from tests.bench.rules.peer import LENT, Case, Peer, with_worked


class RuleEngine(Dialect):
    """The language of rule-engine: comprehensions, functions behind a dollar sign."""

    def each(self, of: str, walk: Walk, where: str | None) -> str:
        """Write a comprehension."""
        return f"[{of} for {walk.name} in {walk.items}{f' if {where}' if where else ''}]"

    def every(self, walk: Walk) -> str:
        """Write: all of those."""
        return f"$all({self.each(walk.of, walk, walk.where)})"

    def any(self, walk: Walk) -> str:
        """Write: one of those."""
        return f"$any({self.each(walk.of, walk, walk.where)})"

    def count(self, walk: Walk) -> str:
        """Write: how many."""
        return f"({self.each(walk.name, walk, self.both(walk))}.length)"

    def sum(self, walk: Walk) -> str:
        """Write: how much together."""
        return f"$sum({self.each(walk.of, walk, walk.where)})"

    def call(self, word: str, values: Sequence[str]) -> str:
        """Write a function."""
        return f"({values[0]}.length)" if word == "len" else f"${super().call(word, values)}"


class Rules(Peer):
    """A language of rules of its own, in Python."""

    distribution = "rule-engine"
    language = RuleEngine

    def compile(self) -> None:
        engine, builtins = import_module("rule_engine"), import_module("rule_engine.builtins")
        context = engine.Context(resolver=engine.resolve_item)
        lent = {**LENT, "dew_point": self.dew_point}
        context.builtins = builtins.Builtins.from_defaults(values=lent, timezone=context.default_timezone)
        self.programs = [engine.Rule(text, context=context) for text in self.texts]

    @staticmethod
    def dew_point(air_degc: Decimal, air_rh: Decimal) -> Decimal:
        """Return the dew point in the only kind of number this engine knows."""
        return Decimal(floor.dew_point(float(air_degc), float(air_rh)))

    def judge(self, case: Case) -> list[Any]:
        return [program.matches(case) for program in self.programs]


class Zen(Worked):
    """The expressions of zen-engine: the item of the innermost loop is `#`, and no other can be named."""

    def visit_Name(self, part: ast.Name) -> str:
        """Write a root or the item at hand."""
        if part.id not in self.scope:
            return part.id
        if part.id != self.scope[-1]:
            raise Inexpressible(part.id)
        return "#"

    def every(self, walk: Walk) -> str:
        """Write: all of those."""
        return f"all({self.filtered(walk)}, {walk.of})"

    def any(self, walk: Walk) -> str:
        """Write: one of those."""
        return f"some({walk.items}, {self.both(walk)})"

    def count(self, walk: Walk) -> str:
        """Write: how many."""
        return f"count({walk.items}, {self.both(walk)})"

    def sum(self, walk: Walk) -> str:
        """Write: how much together."""
        return f"sum(map({self.filtered(walk)}, {walk.of}))"

    def filtered(self, walk: Walk) -> str:
        """Write the items that meet the condition."""
        return walk.items if walk.where is None else f"filter({walk.items}, {walk.where})"

    def overlap(self, xs: str, ys: str) -> str:
        """Write: how many of xs are in ys."""
        return f"count({xs}, # in {ys})"

    def len(self, value: str) -> str:
        """Write the length of a text."""
        return f"len({value})"

    def ordered(self, steps: str, a: str, b: str, which: str) -> str:
        """Write an order out."""
        there = f"some({steps}, #.op == {a}) and some({steps}, #.op == {b})"
        places = [f"map(filter({steps}, #.op == {op}), #.n)" for op in (a, b)]
        return f"({there} and {which}({places[0]}) < min({places[1]}))"


class ZenList(Peer):
    """Expressions of a decision engine in Rust."""

    distribution = "zen-engine"
    way = "one list"
    language = Zen

    def compile(self) -> None:
        self.program = import_module("zen").compile_expression(self.in_one())

    def read(self, case: Case) -> Case:
        return with_worked(case)

    def judge(self, case: Case) -> Sequence[Any]:
        found: Sequence[Any] = self.program.evaluate(case)
        return found


class ZenGraph(ZenList):
    """The same as a decision graph that keeps its trace: what each rule gave, not what it compared."""

    way = "a graph, traced"
    traces = True

    def compile(self) -> None:
        rows = [{"id": f"e{at}", "key": f"r{at}", "value": text} for at, text in enumerate(self.texts)]
        here = {"position": {"x": 0, "y": 0}}
        nodes = [
            {"id": "in", "type": "inputNode", "name": "in", **here},
            {"id": "book", "type": "expressionNode", "name": "book", "content": {"expressions": rows}, **here},
            {"id": "out", "type": "outputNode", "name": "out", **here},
        ]
        edges = [
            {"id": "1", "type": "edge", "sourceId": "in", "targetId": "book"},
            {"id": "2", "type": "edge", "sourceId": "book", "targetId": "out"},
        ]
        graph = {"contentType": "application/vnd.gorules.decision", "nodes": nodes, "edges": edges}
        self.program = import_module("zen").ZenEngine().create_decision(json.dumps(graph))

    def judge(self, case: Case) -> list[Any]:
        self.found = self.program.evaluate(case, {"trace": True})
        return [self.found["result"][f"r{at}"] for at in range(len(self.texts))]

    def trace_bytes(self, case: Case) -> int:
        self.judge(case)
        return len(json.dumps(self.found["trace"], separators=(",", ":")))
