"""Claims that hold of nothing, and what backs them: `every(s.wet for s in steps if s.sanding)` is met by no sanding.

A claim is backed where an `any`, a `count` or the like asks for an item of its kind. What one rule of a book asks for
backs the claims of all; what a rule only names (`not any(…) or`) settles its own claims.
"""

from __future__ import annotations

import ast
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, field
from functools import lru_cache

from assessments.rules.checking.asking import Loop, Spot, at_least_one, called, is_plain, links, loop_of

ORDERS = ("before", "starts_before")
_HOLE = "_"


@dataclass(frozen=True, slots=True)
class Ask:
    """Items of a list for which conditions hold; equal when both read the same, whatever the variable is called.

    No condition at all: any item. `act` is a step of that name, however the rule came to name it.
    """

    items: str
    conditions: frozenset[str] = frozenset()
    act: str | None = None


@dataclass(frozen=True, slots=True)
class Claim:
    """Something a rule takes for granted: what is warned of, where, and what would settle it, each alone enough."""

    wants: frozenset[Ask]
    warning: str = field(compare=False)
    start: int = field(compare=False)
    end: int = field(compare=False)

    def settled(self, asked: frozenset[Ask]) -> bool:
        """Whether something that was asked for settles it."""
        return bool(self.wants & asked)


@dataclass(frozen=True, slots=True)
class Asked:
    """What a rule asks for whatever else holds, and all it speaks of."""

    firm: frozenset[Ask]
    named: frozenset[Ask]


def asked(seen: Iterable[Spot]) -> Asked:
    """Return what a rule asks for, from its tests.

    >>> from assessments.rules.checking.asking import spots
    >>> tree = ast.parse("any(s.wet for s in a) and not any(s.wet for s in b)", mode="eval").body
    >>> sorted({ask.items for ask in asked(spots(tree)).firm})
    ['a']
    """
    firm: set[Ask] = set()
    named: set[Ask] = set()
    for spot in seen:
        for ask, is_needed in _asks(spot):
            named.add(ask)
            if is_needed and spot.firm:
                firm.add(ask)
    return Asked(frozenset(firm), frozenset(named))


def _asks(spot: Spot) -> Iterator[tuple[Ask, bool]]:
    """Return what a part speaks of, each with whether it has to be there."""
    loop = spot.loop
    if loop and loop.word in ("any", "count"):
        yield from ((ask, loop.word == "any" and spot.sign > 0) for ask in _of_loop(loop))
        yield from ((ask, False) for ask in _acts(loop))
        if loop.word == "any" and spot.sign > 0:
            yield Ask(key(loop.items)), True
    elif loop and loop.word == "every" and spot.sign < 0:
        yield from ((ask, True) for ask in (*_of_filter(loop), Ask(key(loop.items))))
    elif isinstance(spot.part, ast.Compare) and not is_plain(spot.part):
        yield from ((ask, True) for ask in _compared(spot.part, spot.sign or 1) if spot.sign)
        yield from ((ask, False) for ask in _weighed(spot.part))
    elif spot.sign > 0:
        yield from ((ask, True) for ask in _ordered(spot.part))


def _compared(part: ast.Compare, sign: int) -> Iterator[Ask]:
    for left, operator, right in links(part, sign):
        if operator is ast.In:
            yield Ask(key(right))
        if not same_list(left, right):
            for side in at_least_one(left, operator, right):
                yield from _amount(side)


def _weighed(part: ast.Compare) -> Iterator[Ask]:
    """Return the lists of which a comparison says whether they are empty, as `len(answer.steps) == 0` does."""
    sides = (part.left, *part.comparators)
    if any(isinstance(side, ast.Constant) and side.value in (0, 1) for side in sides):
        yield from (Ask(key(items)) for side in sides for items in called(side, "len"))


def _amount(side: ast.expr) -> Iterator[Ask]:
    """Return which items an amount counts; an amount above nothing needs one of them."""
    if isinstance(side, ast.BinOp):
        parts = (side.left,) if isinstance(side.op, ast.Div | ast.Sub) else (side.left, side.right)
        for each in parts:
            yield from _amount(each)
    yield from (Ask(key(items)) for items in called(side, "len", "overlap"))
    loop = loop_of(side)
    if loop:
        yield Ask(key(loop.items))
        yield from _of_loop(loop) if loop.word == "count" else _of_filter(loop)


def _ordered(part: ast.expr) -> Iterator[Ask]:
    steps, *acts = called(part, *ORDERS) or (part,)
    for act in acts:
        if isinstance(act, ast.Constant):
            yield Ask(key(steps))
            yield Ask(key(steps), frozenset({op_is(str(act.value))}))


@lru_cache(maxsize=256)
def op_is(act: str) -> str:
    """Return the condition that a step is this act, as a loop that asks for one says it."""
    return _blind(ast.parse(f"{_HOLE}.op == {act!r}", mode="eval").body, _HOLE)


def _of_loop(loop: Loop) -> set[Ask]:
    """Every single condition asked for, and all of them together."""
    whole = ask_of(loop, [*loop.filters, loop.test])
    return {whole, *(Ask(whole.items, frozenset({each})) for each in whole.conditions), *_of_filter(loop)}


def _of_filter(loop: Loop) -> set[Ask]:
    return {ask_of(loop, loop.filters)} if loop.filters else set()


def _acts(loop: Loop) -> Iterator[Ask]:
    """Return the steps that a loop names, as `s.op == 'sand'` or `s.op in ['sand', 'cut']`."""
    for part in (each for whole in (*loop.filters, loop.test) for each in ast.walk(whole)):
        if isinstance(part, ast.Compare) and any(
            _is_op(each, loop.variable) for each in (part.left, *part.comparators)
        ):
            words = (each.value for each in ast.walk(part) if isinstance(each, ast.Constant))
            yield from (Ask(key(loop.items), act=word) for word in words if isinstance(word, str))


def _is_op(part: ast.expr, variable: str) -> bool:
    of = part.value if isinstance(part, ast.Attribute) and part.attr == "op" else None
    return isinstance(of, ast.Name) and of.id == variable


def ask_of(loop: Loop, parts: Sequence[ast.expr]) -> Ask:
    """Return the items a loop speaks of, those for which all the parts hold."""
    found = (_blind(each, loop.variable) for part in parts for each in _joined(part))
    return Ask(key(loop.items), frozenset(found))


def key(items: ast.expr) -> str:
    """Return the text by which two readings of one list are known for the same."""
    part, names = items, []
    while isinstance(part, ast.Attribute):
        names.append(part.attr)
        part = part.value
    return ".".join([part.id, *names[::-1]]) if isinstance(part, ast.Name) else ast.unparse(items)


def spelt(part: ast.expr) -> str:
    """Return a part as Python writes it, the commonest of them without asking Python.

    >>> spelt(ast.parse("s.op=='sand'", mode="eval").body)
    "s.op == 'sand'"
    """
    if isinstance(part, ast.Compare) and isinstance(part.ops[0], ast.Eq) and isinstance(part.left, ast.Attribute):
        word = part.comparators[0]
        if len(part.ops) == 1 and isinstance(word, ast.Constant) and isinstance(word.value, str) and not word.kind:
            return f"{key(part.left)} == {word.value!r}"
    return ast.unparse(part)


def same_list(left: ast.expr, right: ast.expr) -> bool:
    """Whether both sides only count the same list, so that an empty one makes them equal.

    >>> tree = ast.parse("overlap(answer.picks, key.picks) == len(answer.picks)", mode="eval").body
    >>> same_list(tree.left, tree.comparators[0])
    True
    """
    return bool(_counted(left) & _counted(right))


def _counted(side: ast.expr) -> set[str]:
    loop = loop_of(side)
    return {key(loop.items)} if loop else {key(items) for items in called(side, "len", "overlap")}


def _joined(part: ast.expr) -> list[ast.expr]:
    if isinstance(part, ast.BoolOp) and isinstance(part.op, ast.And):
        return [each for value in part.values for each in _joined(value)]
    return [part]


def _blind(part: ast.expr, variable: str) -> str:
    """Return a condition as text in which the loop variable has no name; the commonest, `s.op == 'sand'`, quickly."""
    if isinstance(part, ast.Compare) and isinstance(part.left, ast.Attribute) and isinstance(part.ops[0], ast.Eq):
        of, word = part.left.value, part.comparators[-1]
        if isinstance(of, ast.Name) and of.id == variable and isinstance(word, ast.Constant) and len(part.ops) == 1:
            return f"{_HOLE}.{part.left.attr} == {word.value!r}"
    return ast.dump(part).replace(f"Name(id='{variable}'", f"Name(id='{_HOLE}'")
