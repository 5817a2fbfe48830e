"""How a test of the book is rewritten for a language that is a line of text: what such languages share."""

from __future__ import annotations

import ast
import json
from collections.abc import Sequence
from dataclasses import dataclass

SIGNS: dict[type[ast.AST], str] = {
    ast.Add: "+",
    ast.Sub: "-",
    ast.Mult: "*",
    ast.Div: "/",
    ast.Lt: "<",
    ast.LtE: "<=",
    ast.Gt: ">",
    ast.GtE: ">=",
    ast.Eq: "==",
    ast.NotEq: "!=",
    ast.In: "in",
}
QUANTIFIERS = ("every", "any", "count", "sum")


class Inexpressible(Exception):
    """The language of a peer has no way to say this rule."""


@dataclass(frozen=True)
class Walk:
    """A quantifier in the words of the peer: over which items, under which name, what of each, and which of them."""

    items: str
    name: str
    of: str
    where: str | None


class Dialect(ast.NodeVisitor):
    """What the languages share: signs between values, dotted fields, functions called by name."""

    AND, OR, NOT, MISSING, SAME = "and", "or", "not", "null", "=="
    YES, NO = "true", "false"

    def written(self, test: str) -> str:
        """Return one test of the book in the language of the peer."""
        self.scope: list[str] = []
        return str(self.visit(ast.parse(test, mode="eval").body))

    def visit_Constant(self, part: ast.Constant) -> str:
        """Write a value."""
        if isinstance(part.value, bool):
            return self.YES if part.value else self.NO
        return json.dumps(part.value)

    def visit_List(self, part: ast.List) -> str:
        """Write a list of values."""
        return f"[{', '.join(map(self.visit, part.elts))}]"

    def visit_Name(self, part: ast.Name) -> str:
        """Write a root or a loop variable."""
        return part.id

    def visit_Attribute(self, part: ast.Attribute) -> str:
        """Write a field."""
        return f"{self.visit(part.value)}.{part.attr}"

    def visit_BoolOp(self, part: ast.BoolOp) -> str:
        """Write tests joined."""
        word = self.AND if isinstance(part.op, ast.And) else self.OR
        return f"({f' {word} '.join(map(self.visit, part.values))})"

    def visit_UnaryOp(self, part: ast.UnaryOp) -> str:
        """Write a test turned round; the book has no other sign before a value."""
        return self.turned(self.visit(part.operand))

    def visit_BinOp(self, part: ast.BinOp) -> str:
        """Write two numbers joined."""
        return f"({self.visit(part.left)} {SIGNS[type(part.op)]} {self.visit(part.right)})"

    def visit_Compare(self, part: ast.Compare) -> str:
        """Write a comparison; a chain as its links."""
        values = [self.visit(one) for one in (part.left, *part.comparators)]
        links = [self.compared(op, *values[at : at + 2]) for at, op in enumerate(part.ops)]
        return links[0] if len(links) == 1 else f"({f' {self.AND} '.join(links)})"

    def visit_Call(self, part: ast.Call) -> str:
        """Write a quantifier or a call."""
        assert isinstance(part.func, ast.Name)
        word = part.func.id
        if word in QUANTIFIERS and isinstance(part.args[0], ast.GeneratorExp):
            return str(getattr(self, word)(self.walk(part.args[0])))
        values = [self.visit(one) for one in part.args]
        return f"({values[0]} != {self.MISSING})" if word == "answered" else self.call(word, values)

    def walk(self, part: ast.GeneratorExp) -> Walk:
        """Return the parts of a quantifier, written."""
        loop = part.generators[0]
        assert isinstance(loop.target, ast.Name)
        items = self.visit(loop.iter)
        self.scope.append(loop.target.id)
        of, where = self.visit(part.elt), self.visit(loop.ifs[0]) if loop.ifs else None
        self.scope.pop()
        return Walk(items, loop.target.id, of, where)

    def compared(self, op: ast.cmpop, left: str, right: str) -> str:
        """Write one link of a comparison."""
        if isinstance(op, ast.NotIn):
            return self.turned(self.compared(ast.In(), left, right))
        return f"({left} {self.SAME if isinstance(op, ast.Eq) else SIGNS[type(op)]} {right})"

    def turned(self, test: str) -> str:
        """Write `not` of a test."""
        return f"({self.NOT} ({test}))"

    def both(self, walk: Walk) -> str:
        """Write the test of a quantifier with its condition."""
        return walk.of if walk.where is None else f"({walk.where} {self.AND} {walk.of})"

    def call(self, word: str, values: Sequence[str]) -> str:
        """Write a function."""
        return f"{word}({', '.join(values)})"


class Worked(Dialect):
    """What languages to which no function can be lent have in common: `worked` holds what they can't work out."""

    def call(self, word: str, values: Sequence[str]) -> str:
        """Write a function out, or name what was worked out beforehand."""
        if word == "dew_point":
            return self.root("dew_point")
        if word == "norm":
            return self.root("waste" if "answer" in values[0] else "key_waste")
        if word == "near":
            return f"({self.size(f'{values[0]} - {values[1]}')} <= {values[2]})"
        if word == "abs":
            return self.size(values[0])
        return str(getattr(self, word)(*values))

    def root(self, name: str) -> str:
        """Write the name of a value worked out beforehand."""
        return f"worked.{name}"

    def size(self, number: str) -> str:
        """Write a number without its sign."""
        return f"abs({number})"

    def before(self, steps: str, a: str, b: str) -> str:
        """Write: the last a stands before the first b."""
        return self.ordered(steps, a, b, "max")

    def starts_before(self, steps: str, a: str, b: str) -> str:
        """Write: the first a stands before the first b."""
        return self.ordered(steps, a, b, "min")

    def ordered(self, steps: str, a: str, b: str, which: str) -> str:
        """Write an order out, by the numbers of the steps; a language that has no way to is given none."""
        raise Inexpressible(f"the {which} of {a} against {b} in {steps}")
