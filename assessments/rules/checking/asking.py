"""What a rule demands of a case: which parts have to hold, which must not, and which items of which list it asks for.

`any(s.op == 'sand' for s in steps)` asks for a sanding step, `not any(…)` bans one, `every(…)` asks for none.
"""

from __future__ import annotations

import ast
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

OWN = "answer"
_PLAIN = (ast.Name, ast.Attribute, ast.Constant)
_LOOKS = (ast.In, ast.NotIn)
_MORE = (ast.Gt, ast.GtE, ast.Eq)
_LESS = (ast.Lt, ast.LtE, ast.Eq)
_TURNED: dict[type[ast.cmpop], type[ast.cmpop]] = {
    ast.Lt: ast.GtE,
    ast.GtE: ast.Lt,
    ast.Gt: ast.LtE,
    ast.LtE: ast.Gt,
    ast.Eq: ast.NotEq,
    ast.NotEq: ast.Eq,
    ast.In: ast.NotIn,
    ast.NotIn: ast.In,
}


@dataclass(frozen=True, slots=True)
class Loop:
    """A well-formed quantifier: its word, its test, the list it walks, its filter and its variable."""

    word: str
    test: ast.expr
    items: ast.expr
    filters: tuple[ast.expr, ...]
    variable: str


@dataclass(slots=True)
class Spot:
    """A part of a rule: whether it has to hold (1), must not (-1) or neither (0).

    `firm` says that nothing beside it can stand in for it: it is under no `or`, and in no `every` that may be empty.
    `loop` is the part as a quantifier, if it is one.
    """

    part: ast.expr
    sign: int = 1
    firm: bool = True
    loop: Loop | None = None


def spots(tree: ast.expr) -> list[Spot]:
    """Return the tests of a rule from the outside in, each with what is demanded of it; names and values are left out.

    >>> tree = ast.parse("a > 1 and not b > 1", mode="eval").body
    >>> [(ast.unparse(spot.part), spot.sign) for spot in spots(tree)][1:]
    [('a > 1', 1), ('not b > 1', 1), ('b > 1', -1)]
    """
    found: list[Spot] = []
    waiting = [Spot(tree)]
    while waiting:
        spot = waiting.pop()
        if isinstance(spot.part, _PLAIN):
            continue
        spot.loop = loop_of(spot.part)
        found.append(spot)
        waiting += [*_inside(spot)][::-1]
    return found


def _inside(spot: Spot) -> Iterator[Spot]:
    part, sign, firm = spot.part, spot.sign, spot.firm
    if isinstance(part, ast.BoolOp):
        all_count = sign == (1 if isinstance(part.op, ast.And) else -1)
        yield from (Spot(each, sign, firm and all_count) for each in part.values)
    elif isinstance(part, ast.UnaryOp) and isinstance(part.op, ast.Not):
        yield Spot(part.operand, -sign, firm)
    elif isinstance(part, ast.IfExp):
        yield Spot(part.test, 0, False)
        yield from (Spot(each, sign, False) for each in (part.body, part.orelse))
    elif spot.loop:
        yield from _looped(spot.loop, sign, firm)
    else:
        yield from (Spot(each, 0, False) for each in _values(part) if not isinstance(each, _PLAIN))


def _values(part: ast.expr) -> Sequence[ast.expr]:
    """Return the values a part looks at or reckons with."""
    if isinstance(part, ast.Compare):
        return [part.left, *part.comparators]
    if isinstance(part, ast.BinOp):
        return part.left, part.right
    return part.args if isinstance(part, ast.Call) else ()


def _looped(loop: Loop, sign: int, firm: bool) -> Iterator[Spot]:
    """An `any` needs an item its test holds of; an `every` only where its list can't be left empty."""
    signs = {"any": (sign, sign), "every": (sign, -sign)}
    of_test, of_filter = signs.get(loop.word, (0, 0))
    needs_one = of_test != 0 and (loop.word == "any") is (sign > 0)
    sure = firm and (needs_one or not (loop.filters or is_own(loop.items)))
    yield Spot(loop.test, of_test, sure)
    yield from (Spot(each, of_filter, sure and needs_one) for each in loop.filters)


def loop_of(part: ast.AST) -> Loop | None:
    """Return a quantifier as it has to be written, None for anything else.

    >>> loop_of(ast.parse("any(s.wet for s in steps)", mode="eval").body).variable
    's'
    """
    if isinstance(part, ast.Call) and isinstance(part.func, ast.Name) and len(part.args) == 1:
        whole = part.args[0]
        if isinstance(whole, ast.GeneratorExp) and isinstance(whole.generators[0].target, ast.Name):
            first = whole.generators[0]
            return Loop(part.func.id, whole.elt, first.iter, tuple(first.ifs), whole.generators[0].target.id)
    return None


def called(part: ast.AST, *words: str) -> tuple[ast.expr, ...]:
    """Return what one of the words is called with, nothing for anything else.

    >>> [ast.unparse(each) for each in called(ast.parse("len(a)", mode="eval").body, "len")]
    ['a']
    """
    named = isinstance(part, ast.Call) and isinstance(part.func, ast.Name) and part.func.id in words
    return tuple(part.args) if named and isinstance(part, ast.Call) else ()


def is_own(items: ast.expr) -> bool:
    """Whether a list is the trainee's own.

    >>> is_own(ast.parse("answer.steps", mode="eval").body), is_own(ast.parse("key.kit", mode="eval").body)
    (True, False)
    """
    while isinstance(items, ast.Attribute):
        items = items.value
    return isinstance(items, ast.Name) and items.id == OWN


def is_plain(part: ast.Compare) -> bool:
    """Whether a comparison only holds fields and written values against each other, and asks no list.

    >>> is_plain(ast.parse("a.b > 3", mode="eval").body), is_plain(ast.parse("3 in a.b", mode="eval").body)
    (True, False)
    """
    sides = (part.left, *part.comparators)
    return all(isinstance(each, _PLAIN) for each in sides) and not any(isinstance(each, _LOOKS) for each in part.ops)


def links(part: ast.Compare, sign: int) -> Iterator[tuple[ast.expr, type[ast.cmpop], ast.expr]]:
    """Return the links of a comparison that have to hold; one that must not is turned round."""
    left = part.left
    for operator, right in zip(part.ops, part.comparators, strict=True):
        yield left, _TURNED.get(type(operator), ast.Is) if sign < 0 else type(operator), right
        left = right


def at_least_one(left: ast.expr, operator: type[ast.cmpop], right: ast.expr) -> Iterator[ast.expr]:
    """Return the sides of a link that have to be more than nothing: `2 < n`, `n >= 1`, `n == key.n`, `n != 0`."""
    for side, other, wanted in ((left, right, _MORE), (right, left, _LESS)):
        limit = other.value if isinstance(other, ast.Constant) else None
        strict = operator in (ast.Gt, ast.Lt)
        reached = limit is None or (isinstance(limit, int | float) and (limit > 0 or (strict and limit == 0)))
        some = (operator in wanted and reached) or (operator is ast.NotEq and limit == 0)
        if some and not isinstance(side, ast.Constant):
            yield side
