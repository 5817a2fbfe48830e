"""JSON logic, of which there are three, each with gaps of its own."""

from __future__ import annotations

import json
from collections.abc import Callable, Sequence
from importlib import import_module
from typing import Any

from tests.bench.rules.peer import LENT, Case, Peer, with_worked
from tests.bench.rules.trees import BareJsonLogic, JsonLogic, ScopedJsonLogic


class PythonLogic(Peer):
    """JSON logic in Python."""

    distribution = "panzi-json-logic"
    way = "40 trees"
    language = JsonLogic

    def compile(self) -> None:
        self.run = import_module("json_logic").jsonLogic
        lent = {**LENT, "len": len}
        added = {name: self.lent(function) for name, function in lent.items()}
        self.operators = {**import_module("json_logic.builtins").BUILTINS, **added}

    @staticmethod
    def lent(function: Callable[..., Any]) -> Callable[..., Any]:
        """Return a function that leaves the case, which an operator is given first, alone."""
        return lambda _case, *values: function(*values)

    def judge(self, case: Case) -> list[Any]:
        return [self.run(tree, case, self.operators) for tree in self.texts]


class RustLogic(Peer):
    """JSON logic in Rust."""

    distribution = "jsonlogic-rs"
    way = "one list"
    language = BareJsonLogic

    def compile(self) -> None:
        self.engine = import_module("jsonlogic_rs")
        self.program = json.dumps({"merge": self.texts})

    def read(self, case: Case) -> str:
        return json.dumps(with_worked(case))

    def judge(self, case: str) -> Sequence[Any]:
        found: Sequence[Any] = self.engine.apply_serialized(self.program, case, json.loads)
        return found


class Datalogic(Peer):
    """JSON logic with scopes in Rust."""

    distribution = "datalogic-py"
    way = "one list"
    language = ScopedJsonLogic

    def compile(self) -> None:
        self.module = import_module("datalogic_py")
        self.engine = self.module.Engine()
        self.program = self.engine.compile(self.texts)

    def read(self, case: Case) -> Any:
        return self.module.DataHandle(json.dumps(with_worked(case)))

    def judge(self, case: Any) -> Sequence[Any]:
        found: Sequence[Any] = self.program.evaluate_data(case)
        return found


class DatalogicRead(Datalogic):
    """The same on cases that it has read before, as ours are bound before: the evaluation alone."""

    way = "one list, the case read before"

    def compile(self) -> None:
        super().compile()
        self.handles: dict[int, Any] = {}

    def read(self, case: Case) -> Any:
        if id(case) not in self.handles:
            self.handles[id(case)] = super().read(case)
        return self.handles[id(case)]


class DatalogicTraced(Datalogic):
    """The same with its trace of every step."""

    way = "40 trees, traced"
    traces = True

    def compile(self) -> None:
        super().compile()
        self.programs = [json.dumps(tree) for tree in self.texts]

    def read(self, case: Case) -> str:
        return json.dumps(with_worked(case))

    def judge(self, case: str) -> list[Any]:
        self.steps = [self.engine.evaluate_with_trace(program, case) for program in self.programs]
        return [json.loads(one)["result"] for one in self.steps]

    def trace_bytes(self, case: str) -> int:
        self.judge(case)
        return sum(map(len, self.steps))
