"""The book rewritten as JSON logic: every test a tree of operators, three implementations with three sets of gaps."""

from __future__ import annotations

import ast
from collections.abc import Callable
from typing import Any

from tests.bench.rules.dialect import SIGNS, Inexpressible

Tree = Any


class JsonLogic(ast.NodeVisitor):
    """JSON logic as first published: inside a loop only the item at hand can be named; functions are lent to it."""

    def written(self, test: str) -> Tree:
        """Return one test of the book as a tree."""
        self.scope: list[str] = []
        return self.visit(ast.parse(test, mode="eval").body)

    def visit_Constant(self, part: ast.Constant) -> Tree:
        """Return a value."""
        return part.value

    def visit_List(self, part: ast.List) -> Tree:
        """Return a list of values."""
        return [self.visit(one) for one in part.elts]

    def visit_Name(self, part: ast.Name) -> Tree:
        """Return where a loop variable is found."""
        return self.found(part.id, [])

    def visit_Attribute(self, part: ast.Attribute) -> Tree:
        """Return where a field is found."""
        fields, owner = [part.attr], part.value
        while isinstance(owner, ast.Attribute):
            fields, owner = [owner.attr, *fields], owner.value
        assert isinstance(owner, ast.Name)
        return self.found(owner.id, fields)

    def found(self, root: str, fields: list[str]) -> Tree:
        """Return the tree that reads a path."""
        if not self.scope:
            return {"var": ".".join([root, *fields])}
        if root == self.scope[-1]:
            return {"var": ".".join(fields)}
        return self.outside(root, fields)

    def outside(self, root: str, fields: list[str]) -> Tree:
        """Return the tree that reads a path from inside a loop, where there is one."""
        raise Inexpressible(root)

    def visit_BoolOp(self, part: ast.BoolOp) -> Tree:
        """Return tests joined."""
        return {"and" if isinstance(part.op, ast.And) else "or": [self.visit(one) for one in part.values]}

    def visit_UnaryOp(self, part: ast.UnaryOp) -> Tree:
        """Return a test turned round."""
        return {"!": [self.visit(part.operand)]}

    def visit_BinOp(self, part: ast.BinOp) -> Tree:
        """Return two numbers joined."""
        return {SIGNS[type(part.op)]: [self.visit(part.left), self.visit(part.right)]}

    def visit_Compare(self, part: ast.Compare) -> Tree:
        """Return a comparison; a chain as its links."""
        values = [self.visit(one) for one in (part.left, *part.comparators)]
        links = [self.compared(op, values[at : at + 2]) for at, op in enumerate(part.ops)]
        return links[0] if len(links) == 1 else {"and": links}

    def compared(self, op: ast.cmpop, values: list[Tree]) -> Tree:
        """Return one link of a comparison."""
        return {"!": [{"in": values}]} if isinstance(op, ast.NotIn) else {SIGNS[type(op)]: values}

    def visit_Call(self, part: ast.Call) -> Tree:
        """Return a quantifier or a call."""
        assert isinstance(part.func, ast.Name)
        word = part.func.id
        if isinstance(part.args[0], ast.GeneratorExp):
            return self.quantified(word, part.args[0])
        values = [self.visit(one) for one in part.args]
        return {"!=": [values[0], None]} if word == "answered" else self.call(word, values)

    def quantified(self, word: str, part: ast.GeneratorExp) -> Tree:
        """Return a quantifier; `all` of JSON logic is false on an empty list, so `every` is: none that fails."""
        loop = part.generators[0]
        assert isinstance(loop.target, ast.Name)
        items = self.visit(loop.iter)
        self.scope.append(loop.target.id)
        of, where = self.visit(part.elt), [self.visit(one) for one in loop.ifs]
        self.scope.pop()
        shapes: dict[str, Callable[[], Tree]] = {
            "every": lambda: {"!": [{"some": [items, {"and": [*where, {"!": [of]}]}]}]},
            "any": lambda: {"some": [items, {"and": [*where, of]}]},
            "count": lambda: folded({"filter": [items, {"and": [*where, of]}]}, "+", 1, 0),
            "sum": lambda: folded({"map": [items, of]}, "+", {"var": "current"}, 0),
        }
        return shapes[word]()

    def call(self, word: str, values: list[Tree]) -> Tree:
        """Return a call of what is lent, near and abs written out."""
        if word == "near":
            return {"<=": [size({"-": values[:2]}), values[2]]}
        return size(values[0]) if word == "abs" else {word: values}


class BareJsonLogic(JsonLogic):
    """JSON logic to which nothing can be lent: `worked` holds what it can't work out."""

    def call(self, word: str, values: list[Tree]) -> Tree:
        """Return a function written out, or where its value was put beforehand."""
        if word == "dew_point":
            return {"var": "worked.dew_point"}
        if word == "norm":
            return {"var": "worked.waste" if values[0]["var"].startswith("answer") else "worked.key_waste"}
        if word in ("before", "starts_before"):
            return ordered(*values, "max" if word == "before" else "min")
        special = {"len": self.length, "overlap": self.overlap}.get(word)
        return special(*values) if special else super().call(word, values)

    def length(self, _value: Tree) -> Tree:
        """Return where the length of the note was put."""
        return {"var": "worked.note_length"}

    def overlap(self, xs: Tree, ys: Tree) -> Tree:
        """Return how many of xs are in ys, where ys can be reached."""
        raise Inexpressible("overlap")


class ScopedJsonLogic(BareJsonLogic):
    """The dialect of datalogic: a loop takes two levels, and `val` climbs out of them."""

    def outside(self, root: str, fields: list[str]) -> Tree:
        """Return the tree that climbs as far as the path asks."""
        if root in self.scope:
            return {"val": [[2 * (len(self.scope) - 1 - self.scope.index(root))], *fields]}
        return {"val": [[2 * len(self.scope)], root, *fields]}

    def length(self, value: Tree) -> Tree:
        """Return the length of a text."""
        return {"length": [value]}

    def overlap(self, xs: Tree, ys: Tree) -> Tree:
        """Return how many of xs are in ys."""
        held = {"in": [{"var": ""}, {"val": [[2], *ys["var"].split(".")]}]}
        return folded({"filter": [xs, held]}, "+", 1, 0)


def folded(items: Tree, sign: str, of: Tree, start: float) -> Tree:
    """Return a list put together by a sign."""
    return {"reduce": [items, {sign: [{"var": "accumulator"}, of]}, start]}


def size(number: Tree) -> Tree:
    """Return a number without its sign."""
    return {"max": [number, {"-": [0, number]}]}


def ordered(steps: Tree, a: str, b: str, which: str) -> Tree:
    """Return an order written out, by the numbers of the steps."""

    def those(op: str) -> Tree:
        return {"map": [{"filter": [steps, {"==": [{"var": "op"}, op]}]}, {"var": "n"}]}

    there = [{"some": [steps, {"==": [{"var": "op"}, op]}]} for op in (a, b)]
    first = folded(those(a), which, {"var": "current"}, -1 if which == "max" else 9999)
    return {"and": [*there, {"<": [first, folded(those(b), "min", {"var": "current"}, 9999)]}]}
