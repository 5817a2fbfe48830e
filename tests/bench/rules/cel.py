"""The Common Expression Language, of which there are three."""

from __future__ import annotations

import ast
from collections.abc import Sequence
from importlib import import_module
from typing import Any

from tests.bench.rules import floor
from tests.bench.rules.dialect import Dialect, Walk
from tests.bench.rules.peer import LENT, Case, Peer


class Cel(Dialect):
    """The Common Expression Language; near, overlap, order and sums are lent to it."""

    AND, OR, NOT = "&&", "||", "!"

    def every(self, walk: Walk) -> str:
        """Write: all of those."""
        return f"{walk.items}.all({walk.name}, {walk.of if walk.where is None else f'!{walk.where} || {walk.of}'})"

    def any(self, walk: Walk) -> str:
        """Write: one of those."""
        return f"{walk.items}.exists({walk.name}, {self.both(walk)})"

    def count(self, walk: Walk) -> str:
        """Write: how many."""
        return f"{walk.items}.filter({walk.name}, {self.both(walk)}).size()"

    def sum(self, walk: Walk) -> str:
        """Write: how much together; the book sums without a condition."""
        return f"sum_of({walk.items}.map({walk.name}, {walk.of}))"

    def call(self, word: str, values: Sequence[str]) -> str:
        """Write a function."""
        return f"size({values[0]})" if word == "len" else super().call(word, values)


class PresentCel(Cel):
    """The same for an implementation in which a number can't be compared with null: what is missing is left out."""

    def visit_Call(self, part: ast.Call) -> str:
        """Write `answered` as `has`."""
        written = super().visit_Call(part)
        return f"has({written[1:].removesuffix(' != null)')})" if written.endswith(" != null)") else written


class RustCel(Peer):
    """The Common Expression Language in Rust."""

    distribution = "common-expression-language"
    language = Cel

    def compile(self) -> None:
        self.engine = import_module("cel")
        self.programs = [self.engine.compile(text) for text in self.texts]

    def read(self, case: Case) -> Any:
        return self.engine.Context(variables=case, functions={**LENT, "sum_of": sum, "abs": abs})

    def judge(self, case: Any) -> list[Any]:
        return [program.execute(case) for program in self.programs]


class CppCel(Peer):
    """The Common Expression Language in C++."""

    distribution = "cel-expr-python"
    way = "one list"
    language = Cel

    def compile(self) -> None:
        cel = import_module("cel_expr_python.cel")
        kind = cel.Type
        anything, real, items = kind.DYN, kind.DOUBLE, kind.List(kind.DYN)
        shapes = {
            "dew_point": (real, [real, real]),
            "near": (kind.BOOL, [real, real, real]),
            "overlap": (kind.INT, [items, items]),
            "before": (kind.BOOL, [items, kind.STRING, kind.STRING]),
            "starts_before": (kind.BOOL, [items, kind.STRING, kind.STRING]),
            "norm": (kind.STRING, [kind.STRING]),
            "sum_of": (real, [items]),
            "abs": (real, [real]),
        }
        lent = {**LENT, "sum_of": lambda numbers: float(sum(numbers)), "abs": abs}
        functions = [
            cel.FunctionDecl(
                name, [cel.Overload(id=f"{name}_of", return_type=gives, parameters=takes, impl=lent[name])]
            )
            for name, (gives, takes) in shapes.items()
        ]
        roots = dict.fromkeys(("facts", "answer", "model", "key"), kind.Map(kind.STRING, anything))
        self.engine = cel.NewEnv(variables=roots, functions=functions)
        self.program = self.engine.compile(self.in_one())

    def read(self, case: Case) -> Any:
        return self.engine.Activation(case)

    def judge(self, case: Any) -> Sequence[Any]:
        found: Sequence[Any] = self.program.eval(case).plain_value()
        return found


class PythonCel(Peer):
    """The Common Expression Language in Python."""

    distribution = "cel-python"
    language = PresentCel

    def compile(self) -> None:
        self.engine = import_module("celpy")
        kinds = import_module("celpy.celtypes")
        truth, real = kinds.BoolType, kinds.DoubleType
        lent = {
            "dew_point": lambda *values: real(floor.dew_point(*values)),
            "near": lambda *values: truth(floor.near(*values)),
            "overlap": lambda *values: kinds.IntType(floor.overlap(*values)),
            "before": lambda *values: truth(floor.before(*values)),
            "starts_before": lambda *values: truth(floor.starts_before(*values)),
            "norm": lambda text: kinds.StringType(floor.norm(text)),
            "sum_of": lambda numbers: real(sum(numbers)),
            "abs": lambda number: real(abs(number)),
        }
        made = self.engine.Environment()
        self.programs = [made.program(made.compile(text), functions=lent) for text in self.texts]

    def read(self, case: Case) -> Any:
        return {name: self.engine.json_to_cel(present(part)) for name, part in case.items()}

    def judge(self, case: Any) -> list[Any]:
        return [bool(program.evaluate(case)) for program in self.programs]


def present(part: Case) -> Case:
    """Return what is there, what is missing left out."""
    return {name: value for name, value in part.items() if value is not None}
