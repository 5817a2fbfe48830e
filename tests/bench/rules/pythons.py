"""The peers that read Python, or what looks like it."""

from __future__ import annotations

import ast
from collections.abc import Sequence
from importlib import import_module
from typing import Any

from tests.bench.rules import floor
from tests.bench.rules.dialect import Dialect, Walk
from tests.bench.rules.peer import BUILT_IN, LENT, Case, Peer


class Python(Dialect):
    """Python in lists and subscripts, for whoever walks or rewrites its syntax tree."""

    MISSING, YES, NO = "None", "True", "False"
    OPENS, CLOSES = "[", "]"

    def visit_Attribute(self, part: ast.Attribute) -> str:
        """Write a field as an item."""
        return f"{self.visit(part.value)}[{part.attr!r}]"

    def each(self, of: str, walk: Walk, where: str | None) -> str:
        """Write a comprehension."""
        condition = f" if {where}" if where else ""
        return f"{self.OPENS}{of} for {walk.name} in {walk.items}{condition}{self.CLOSES}"

    def every(self, walk: Walk) -> str:
        """Write: all of those."""
        return f"all({self.each(walk.of, walk, walk.where)})"

    def any(self, walk: Walk) -> str:
        """Write: one of those."""
        return f"any({self.each(walk.of, walk, walk.where)})"

    def count(self, walk: Walk) -> str:
        """Write: how many."""
        return f"sum({self.each('1', walk, self.both(walk))})"

    def sum(self, walk: Walk) -> str:
        """Write: how much together."""
        return f"sum({self.each(walk.of, walk, walk.where)})"


class LazyPython(Python):
    """Python whose comprehensions stop where the answer is found."""

    OPENS, CLOSES = "(", ")"


class DottedPython(Python):
    """Python in which a field is reached by a dot, as simpleeval reads it."""

    def visit_Attribute(self, part: ast.Attribute) -> str:
        """Write a field behind a dot."""
        return Dialect.visit_Attribute(self, part)


class Restricted(Peer):
    """Python's own compiler behind a rewritten syntax tree."""

    distribution = "RestrictedPython"
    language = LazyPython

    def compile(self) -> None:
        restricted, guards = import_module("RestrictedPython"), import_module("RestrictedPython.Eval")
        self.names = {
            "__builtins__": {},
            "_getitem_": guards.default_guarded_getitem,
            "_getiter_": guards.default_guarded_getiter,
            **LENT,
            **BUILT_IN,
        }
        made = [restricted.compile_restricted_eval(text) for text in self.texts]
        assert not [one.errors for one in made if one.errors]
        self.programs = [one.code for one in made]

    def judge(self, case: Case) -> list[Any]:
        names = {**self.names, **case}
        return [eval(program, names) for program in self.programs]


class Evalidate(Peer):
    """Python's own compiler behind a list of allowed parts."""

    distribution = "evalidate"
    language = LazyPython

    def compile(self) -> None:
        evalidate = import_module("evalidate")
        model = evalidate.base_eval_model.clone()
        model.nodes += ["List", "Call", "In", "NotIn", "GeneratorExp", "comprehension", "Store", "Mult", "Div"]
        model.allowed_functions = [*LENT, *BUILT_IN]
        model.imported_functions = {**LENT, **BUILT_IN}
        self.programs = [evalidate.Expr(text, model=model) for text in self.texts]

    def judge(self, case: Case) -> list[Any]:
        return [program.eval(case) for program in self.programs]


class Simple(Peer):
    """Walks Python's syntax tree."""

    distribution = "simpleeval"
    language = DottedPython

    def compile(self) -> None:
        simpleeval = import_module("simpleeval")
        self.engine = simpleeval.EvalWithCompoundTypes(functions={**LENT, **BUILT_IN})
        self.programs = [(text, self.engine.parse(text)) for text in self.texts]

    def judge(self, case: Case) -> list[Any]:
        self.engine.names = {"None": None, "True": True, "False": False, **case}
        return [self.engine.eval(text, previously_parsed=program) for text, program in self.programs]


class Asteval(Peer):
    """Walks Python's syntax tree, statements too."""

    distribution = "asteval"
    language = Python

    def compile(self) -> None:
        self.engine = import_module("asteval").Interpreter(use_numpy=False, user_symbols=dict(LENT))
        self.programs = [self.engine.parse(text) for text in self.texts]

    def judge(self, case: Case) -> list[Any]:
        self.engine.symtable.update(case)
        found = [self.engine.run(program) for program in self.programs]
        assert not self.engine.error
        return found


class Starlark(Peer):
    """Starlark in Rust; the words of the book are written in it, only the dew point is lent."""

    distribution = "starlark-pyo3"
    way = "one function"
    language = Python
    WORDS = """
def sum(numbers):
    total = 0
    for number in numbers:
        total += number
    return total
def near(a, b, tolerance): return abs(a - b) <= tolerance
def overlap(xs, ys): return len([x for x in xs if x in ys])
def norm(text): return " ".join(text.lower().split())
def before(steps, a, b):
    last = -1
    first = -1
    for place, step in enumerate(steps):
        if step["op"] == a: last = place
        if step["op"] == b and first < 0: first = place
    return 0 <= last and last < first
def starts_before(steps, a, b):
    seen = False
    for step in steps:
        if step["op"] == b: return seen
        if step["op"] == a: seen = True
    return False
"""

    def compile(self) -> None:
        starlark = import_module("starlark")
        text = f"{self.WORDS}def judge(facts, answer, model, key): return {self.in_one()}\n"
        module = starlark.Module()
        module.add_callable("dew_point", floor.dew_point)
        starlark.eval(module, starlark.parse("book.star", text), starlark.Globals.standard())
        self.program = module.freeze()

    def judge(self, case: Case) -> Sequence[Any]:
        found: Sequence[Any] = self.program.call("judge", case["facts"], case["answer"], case["model"], case["key"])
        return found
