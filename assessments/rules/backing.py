"""Filtered `every` claims that hold of nothing: `every(s.wet for s in steps if s.op == 'sand')` is met by no sanding.

A claim is backed where an `any` or `count` over the same list asks for the same filter.
"""

from __future__ import annotations

import ast
from dataclasses import dataclass, field

from assessments.rules.language import Parsed

_HOLE = "_"


@dataclass(frozen=True, slots=True)
class Claim:
    """A list walked under a condition; equal when both read the same, whatever the loop variable is called."""

    items: str
    conditions: frozenset[str]
    said: str = field(compare=False, default="")
    start: int = field(compare=False, default=0)
    end: int = field(compare=False, default=0)

    @property
    def warning(self) -> str:
        """The sentence for a claim that nothing backs."""
        return f"This is met when no item is there {self.said}; ask for one with any() or count() as well."


def claims(parsed: Parsed) -> tuple[tuple[Claim, ...], frozenset[Claim]]:
    """Return the filtered `every` of a rule and what its `any` and `count` ask for.

    >>> from assessments.rules.language import parse
    >>> made, backs = claims(parse("every(s.wet for s in a if s.sand) and any(t.sand for t in a)"))
    >>> made[0] in backs
    True
    """
    made: list[Claim] = []
    backs: set[Claim] = set()
    for node in ast.walk(parsed.tree):
        shape = _loop(node)
        if shape is None:
            continue
        word, test, loop = shape
        if word == "every" and loop.ifs:
            start, end = parsed.place(node)
            made.append(_claim(loop, loop.ifs, ast.unparse(loop.ifs[0]), start, end))
        elif word in ("any", "count"):
            backs |= _asked(loop, [*loop.ifs, test])
    return tuple(made), frozenset(backs)


def _loop(node: ast.AST) -> tuple[str, ast.expr, ast.comprehension] | None:
    """Return word, test and loop of a well-formed quantifier."""
    if isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and len(node.args) == 1:
        whole = node.args[0]
        if isinstance(whole, ast.GeneratorExp) and isinstance(whole.generators[0].target, ast.Name):
            return node.func.id, whole.elt, whole.generators[0]
    return None


def _asked(loop: ast.comprehension, parts: list[ast.expr]) -> set[Claim]:
    """Every single condition asked for, and all of them together."""
    whole = _claim(loop, parts)
    return {whole, *(Claim(whole.items, frozenset({each})) for each in whole.conditions), _claim(loop, loop.ifs)}


def _claim(loop: ast.comprehension, parts: list[ast.expr], said: str = "", start: int = 0, end: int = 0) -> Claim:
    variable = loop.target.id if isinstance(loop.target, ast.Name) else _HOLE
    found = frozenset(_blind(each, variable) for part in parts for each in _joined(part))
    return Claim(ast.dump(loop.iter), found, f"with {said}", start, end)


def _joined(part: ast.expr) -> list[ast.expr]:
    if isinstance(part, ast.BoolOp) and isinstance(part.op, ast.And):
        return [each for value in part.values for each in _joined(value)]
    return [part]


def _blind(part: ast.expr, variable: str) -> str:
    """Return a condition as text in which the loop variable has no name."""
    return ast.dump(part).replace(f"Name(id='{variable}'", f"Name(id='{_HOLE}'")
