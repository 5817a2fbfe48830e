"""Reads generated code again before it is executed: nothing but what the compiler is known to write may stand there.

The audit knows nothing of rules. It would refuse a mistake of the compiler, and whatever somebody might find to
smuggle through it.
"""

from __future__ import annotations

import ast
import re
from collections.abc import Callable, Collection, Iterable
from typing import Any

_NAME = re.compile(r"[a-z]\d+")
_METHODS = ("get",)
_FIELDS: dict[type[ast.AST], tuple[str, ...]] = {
    ast.Assign: ("targets", "value"),
    ast.AugAssign: ("target", "value"),
    ast.BinOp: ("left", "right"),
    ast.BoolOp: ("values",),
    ast.Break: (),
    ast.Call: ("args",),
    ast.Compare: ("left", "comparators"),
    ast.Constant: (),
    ast.Expr: ("value",),
    ast.For: ("target", "iter", "body", "orelse"),
    ast.If: ("test", "body", "orelse"),
    ast.IfExp: ("test", "body", "orelse"),
    ast.List: ("elts",),
    ast.Name: (),
    ast.Pass: (),
    ast.Return: ("value",),
    ast.Starred: ("value",),
    ast.Subscript: ("value",),
    ast.Tuple: ("elts",),
    ast.UnaryOp: ("operand",),
}
_SIGNS = frozenset((
    ast.Add, ast.Sub, ast.Mult, ast.Div, ast.And, ast.Or, ast.Not, ast.USub,
    ast.Eq, ast.NotEq, ast.Lt, ast.LtE, ast.Gt, ast.GtE, ast.In, ast.NotIn, ast.Is, ast.IsNot,
))  # fmt: skip


class AuditFailed(Exception):
    """Generated code holds something that the compiler never writes; it is not executed."""


def audited(text: str, parameters: tuple[str, ...], callable_names: Collection[str]) -> ast.Module:
    """Return the tree of a generated function, to be compiled as it was read.

    Allowed are names of a letter and a number, the parameters, calls of the given names and of `.get`, and fields
    picked by a text; before the function, `k1 = fields('a', 'b')`. Raises AuditFailed for anything else.

    >>> audited("def book(case):\\n    return (case['a'], )\\n", ("case",), ()).body[0].name
    'book'
    """
    tree = ast.parse(text)
    *preamble, function = tree.body or [ast.Pass()]
    if not isinstance(function, ast.FunctionDef) or not _is_plain(function, parameters):
        raise AuditFailed("It is not one plain function of the parameters agreed on.")
    picks = {_field_picker(each) for each in preamble}
    _Audit(parameters, {*callable_names, *picks}).read(function.body)
    return tree


def _field_picker(statement: ast.stmt) -> str:
    """Return the name given in `k1 = fields('a', 'b', 'c')`; anything else is refused."""
    call = statement.value if isinstance(statement, ast.Assign) and len(statement.targets) == 1 else None
    target = statement.targets[0] if isinstance(statement, ast.Assign) else None
    named = isinstance(target, ast.Name) and _NAME.fullmatch(target.id)
    called = isinstance(call, ast.Call) and isinstance(call.func, ast.Name) and call.func.id == "fields"
    if not (named and called and isinstance(call, ast.Call) and isinstance(target, ast.Name)) or call.keywords:
        raise AuditFailed("Before the function stands something else than which fields are taken.")
    if not all(isinstance(each, ast.Constant) and type(each.value) is str for each in call.args):
        raise AuditFailed("A field is taken by something else than a written text.")
    return target.id


def _is_plain(function: ast.FunctionDef, parameters: tuple[str, ...]) -> bool:
    """Whether it is called `book`, takes these parameters in order and nothing else, and stands undecorated."""
    taken = function.args
    others = (taken.posonlyargs, taken.kwonlyargs, taken.kw_defaults, taken.defaults, function.decorator_list)
    return (
        function.name == "book"
        and tuple(each.arg for each in taken.args) == parameters
        and not any(each.annotation for each in taken.args)
        and not any((*others, taken.vararg, taken.kwarg, function.returns))
    )


class _Audit:
    def __init__(self, parameters: tuple[str, ...], callable_names: Collection[str]) -> None:
        self.parameters, self.callable_names = parameters, callable_names
        self.made: set[str] = set()
        self.readers: dict[type[ast.AST], Callable[[Any], None]] = {
            ast.Call: self.call,
            ast.Constant: self.constant,
            ast.Subscript: self.subscript,
            ast.AugAssign: self.sign,
            ast.BinOp: self.sign,
            ast.BoolOp: self.sign,
            ast.UnaryOp: self.sign,
            ast.Compare: self.signs,
        }

    def read(self, nodes: Iterable[ast.AST]) -> None:
        """Read every part of every statement."""
        waiting, made, readers = list(nodes), self.made, self.readers
        while waiting:
            node = waiting.pop()
            kind = type(node)
            if kind is ast.Name:
                if node.id not in made:  # type: ignore[attr-defined]
                    self.name(node)  # type: ignore[arg-type]
                continue
            if kind in readers:
                readers[kind](node)
            waiting += self.parts(node)

    def parts(self, node: ast.AST) -> list[ast.AST]:
        """Return what a part is made of; refuse a kind that is not known."""
        fields = _FIELDS.get(type(node))
        if fields is None:
            raise AuditFailed(f"{type(node).__name__} is nothing the compiler writes.")
        found: list[ast.AST] = []
        for field in fields:
            child = getattr(node, field)
            if type(child) is list:
                found += child
            elif child is not None:
                found.append(child)
        return found

    def sign(self, node: ast.AugAssign | ast.BinOp | ast.BoolOp | ast.UnaryOp) -> None:
        """Refuse a sign that is not known."""
        self._known(node.op)

    def signs(self, node: ast.Compare) -> None:
        """Refuse a comparison that is not known."""
        for sign in node.ops:
            self._known(sign)

    def _known(self, sign: ast.AST) -> None:
        if type(sign) not in _SIGNS:
            raise AuditFailed(f"{type(sign).__name__} is no sign the compiler writes.")

    def name(self, node: ast.Name) -> None:
        """Refuse a name the compiler can't have made; parameters and what is called are never assigned."""
        if _NAME.fullmatch(node.id) and node.id not in self.callable_names:
            self.made.add(node.id)
        elif node.id not in self.parameters or not isinstance(node.ctx, ast.Load):
            raise AuditFailed(f"The name {node.id!r:.60} is none of the compiler's.")

    def call(self, node: ast.Call) -> None:
        """Refuse a call of anything but a known name or `.get` of a made one."""
        called = node.func
        named = isinstance(called, ast.Name) and (called.id in self.callable_names or called.id in self.parameters[1:])
        got = isinstance(called, ast.Attribute) and called.attr in _METHODS and isinstance(called.value, ast.Name)
        if node.keywords or not (named or got):
            raise AuditFailed(f"A call of {ast.unparse(called)!r:.60} is nothing the compiler writes.")
        if isinstance(called, ast.Attribute) and isinstance(called.value, ast.Name):
            self.name(called.value)

    def constant(self, node: ast.Constant) -> None:
        """Refuse a constant that is no number, text, yes/no or None."""
        if type(node.value) not in (int, float, bool, str, type(None)) or node.kind:
            raise AuditFailed(f"The constant {node.value!r:.60} is nothing the compiler writes.")

    def subscript(self, node: ast.Subscript) -> None:
        """Refuse a pick by anything but a text, and any change of a record."""
        by_text = isinstance(node.slice, ast.Constant) and type(node.slice.value) is str
        if not (by_text and isinstance(node.ctx, ast.Load)):
            raise AuditFailed("A pick by anything but a written text is nothing the compiler writes.")
