"""One adapter for each peer: a library for expressions or rules at large, none of them made for training.

A peer gets the tests it can express, turns a case into what it reads, and says yes or no to each test. What a language
can't work out (the dew point, a text in one form) is put beside the case as `worked`, and counted.
"""

from __future__ import annotations

import json
from collections.abc import Callable, Sequence
from decimal import Decimal
from importlib import import_module
from importlib.metadata import version
from typing import Any

from tests.bench.rules import dialects, floor, trees

Case = dict[str, Any]
LENT: dict[str, Callable[..., Any]] = {
    "dew_point": floor.dew_point,
    "near": floor.near,
    "overlap": floor.overlap,
    "before": floor.before,
    "starts_before": floor.starts_before,
    "norm": floor.norm,
}
BUILT_IN: dict[str, Callable[..., Any]] = {"all": all, "any": any, "sum": sum, "len": len, "abs": abs}


def with_worked(case: Case) -> Case:
    """Return the case with what a language without functions can't work out."""
    facts, answer = case["facts"], case["answer"]
    worked = {
        "dew_point": floor.dew_point(facts["air_degc"], facts["air_rh"]),
        "waste": floor.norm(answer["waste"]),
        "key_waste": floor.norm(case["key"]["waste"]),
        "note_length": len(answer["note"]),
    }
    return {**case, "worked": worked}


class Peer:
    """An engine with the tests of the book that it can express; `rules` are their places in the book."""

    distribution = ""
    way = "40 expressions"
    traces = False
    language: type[dialects.Dialect] | type[trees.JsonLogic] = dialects.Dialect

    def __init__(self, tests: Sequence[str]) -> None:
        self.rules: list[int] = []
        self.texts: list[Any] = []
        writer = self.language()
        for place, test in enumerate(tests):
            try:
                self.texts.append(writer.written(test))
            except dialects.Inexpressible:
                continue
            self.rules.append(place)
        self.compile()

    @property
    def name(self) -> str:
        """The peer with the version that is installed."""
        return f"{self.distribution} {version(self.distribution)}"

    def compile(self) -> None:
        """Make the tests ready to run."""
        raise NotImplementedError

    def read(self, case: Case) -> Any:
        """Return a case as the peer reads it."""
        return case

    def judge(self, case: Any) -> Sequence[Any]:
        """Return what the peer says to each of its tests."""
        raise NotImplementedError

    def said(self, found: Any) -> list[Any]:
        """Return what was found as yes and no, one for each test it can express."""
        return list(found)

    def trace_bytes(self, case: Any) -> int:
        """Return the bytes, as JSON, of the trace of one case."""
        raise NotImplementedError

    def in_one(self) -> str:
        """Return all tests as one list."""
        return f"[{', '.join(self.texts)}]"


class Restricted(Peer):
    """Python's own compiler behind a rewritten syntax tree."""

    distribution = "RestrictedPython"
    language = dialects.LazyPython

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
    language = dialects.LazyPython

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
    language = dialects.DottedPython

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
    language = dialects.Python

    def compile(self) -> None:
        self.engine = import_module("asteval").Interpreter(use_numpy=False, user_symbols=dict(LENT))
        self.programs = [self.engine.parse(text) for text in self.texts]

    def judge(self, case: Case) -> list[Any]:
        self.engine.symtable.update(case)
        found = [self.engine.run(program) for program in self.programs]
        assert not self.engine.error
        return found


class RustCel(Peer):
    """The Common Expression Language in Rust."""

    distribution = "common-expression-language"
    language = dialects.Cel

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
    language = dialects.Cel

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
    language = dialects.PresentCel

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


class Zen(Peer):
    """Expressions of a decision engine in Rust."""

    distribution = "zen-engine"
    way = "one list"
    language = dialects.Zen

    def compile(self) -> None:
        self.program = import_module("zen").compile_expression(self.in_one())

    def read(self, case: Case) -> Case:
        return with_worked(case)

    def judge(self, case: Case) -> Sequence[Any]:
        found: Sequence[Any] = self.program.evaluate(case)
        return found


class ZenGraph(Zen):
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


class Rules(Peer):
    """A language of rules of its own, in Python."""

    distribution = "rule-engine"
    language = dialects.RuleEngine

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


class Starlark(Peer):
    """Starlark in Rust; the words of the book are written in it, only the dew point is lent."""

    distribution = "starlark-pyo3"
    way = "one function"
    language = dialects.Python
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


class PythonLogic(Peer):
    """JSON logic in Python."""

    distribution = "panzi-json-logic"
    way = "40 trees"
    language = trees.JsonLogic

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
    language = trees.BareJsonLogic

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
    language = trees.ScopedJsonLogic

    def compile(self) -> None:
        self.module = import_module("datalogic_py")
        self.engine = self.module.Engine()
        self.program = self.engine.compile(self.texts)

    def read(self, case: Case) -> Any:
        return self.module.DataHandle(json.dumps(with_worked(case)))

    def judge(self, case: Any) -> Sequence[Any]:
        found: Sequence[Any] = self.program.evaluate_data(case)
        return found


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


class Jsonata(Peer):
    """JSONata in Python."""

    distribution = "jsonata-python"
    language = dialects.Jsonata

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


PEERS: tuple[type[Peer], ...] = (
    Restricted,
    Evalidate,
    Simple,
    Asteval,
    Starlark,
    Rules,
    RustCel,
    CppCel,
    PythonCel,
    Zen,
    ZenGraph,
    Datalogic,
    DatalogicTraced,
    RustLogic,
    PythonLogic,
    JsonataToPython,
    JsonataInRust,
    Jsonata,
    Jlens,
    JlensAudit,
)
