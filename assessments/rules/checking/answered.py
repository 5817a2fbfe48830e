"""What a test says about answers being there: after `answered(x) and`, x can be relied on."""

from __future__ import annotations

import ast

NOTHING: frozenset[str] = frozenset()


def mark(part: ast.expr) -> str:
    """Return the key under which a part is known to be answered.

    >>> mark(ast.parse("a.b", mode="eval").body) == mark(ast.parse(" a . b".strip(), mode="eval").body)
    True
    """
    if isinstance(part, ast.Attribute):
        return f"{mark(part.value)}.{part.attr}"
    return part.id if isinstance(part, ast.Name) else ast.dump(part)


def given_if(test: ast.expr, holds: bool) -> frozenset[str]:
    """Return the parts that must have been answered if the test came out so.

    >>> test = ast.parse("answered(a.b) and c", mode="eval").body
    >>> len(given_if(test, True)), len(given_if(test, False))
    (2, 0)
    """
    if isinstance(test, ast.Call) and isinstance(test.func, ast.Name) and test.func.id == "answered" and test.args:
        return _with_owners(test.args[0]) if holds else NOTHING
    if isinstance(test, ast.UnaryOp) and isinstance(test.op, ast.Not):
        return given_if(test.operand, not holds)
    if isinstance(test, ast.BoolOp) and isinstance(test.op, ast.And) is holds:
        return NOTHING.union(*(given_if(part, holds) for part in test.values))
    return NOTHING


def _with_owners(part: ast.expr) -> frozenset[str]:
    """A field that is there is in a record that is there."""
    found = {mark(part)}
    while isinstance(part, ast.Attribute):
        part = part.value
        found.add(mark(part))
    return frozenset(found)
