"""The habits of a rule that can be told at save time: what would meet it, or fail it, though nobody meant that.

Each broken one is a claim (`backing`); whatever settles it in the rule, or in another of its book, takes the warning
away. `docs/rulebook.md` names the four habits.
"""

from __future__ import annotations

import ast
from collections.abc import Callable, Iterable, Iterator

from assessments.rules.checking.asking import Spot, at_least_one, called, is_own, is_plain, links, loop_of
from assessments.rules.checking.backing import ORDERS, Ask, Claim, ask_of, key, op_is, same_list, spelt
from assessments.rules.checking.language import Parsed

_FILTERED = "This is met when no item is there with {said}; ask for one with any() or count() as well."
_OWN = (
    "This list is the trainee's own, and an empty one meets the rule; "
    "walk the key's list, or ask for an item with any() or len() as well."
)
_ORDER = (
    "This is not met when '{first}' or '{then}' was left out; where one may be, "
    "write not any(s.op == '{then}' for s in {steps}) or before it."
)
_NO_ORDER = (
    "This is met when nothing was done; ask for the act as well: any(s.op == '{then}' for s in {steps}) and before it."
)
_EACH = "This is met when there is no '{first}'; ask for one with any() or count() as well."


def claims(parsed: Parsed, seen: Iterable[Spot]) -> tuple[Claim, ...]:
    """Return everything a rule takes for granted, from its tests, whether or not it asks for it elsewhere.

    >>> from assessments.rules.checking.asking import spots
    >>> from assessments.rules.checking.language import parse
    >>> parsed = parse("every(d in key.a for d in answer.a)")
    >>> [claim.start for claim in claims(parsed, spots(parsed.tree))]
    [26]
    """
    found: list[Claim] = []
    for spot in seen:
        habits = _OF_LOOPS if spot.loop else _OF_SHAPES.get(type(spot.part), ())
        for habit in habits:
            found += habit(parsed, spot)
    return tuple(found)


def _filtered(parsed: Parsed, spot: Spot) -> Iterator[Claim]:
    """A filtered `every` is met where nothing passes the filter."""
    loop = spot.loop
    if loop and loop.word == "every" and loop.filters and spot.sign >= 0:
        said = _FILTERED.format(said=spelt(loop.filters[0]))
        yield Claim(frozenset({ask_of(loop, loop.filters)}), said, *parsed.place(spot.part))


def _own_list(parsed: Parsed, spot: Spot) -> Iterator[Claim]:
    """An `every` over the trainee's own list is met by an empty one; a ban may walk it."""
    loop = spot.loop
    plain = loop if loop and loop.word == "every" and not loop.filters and spot.sign >= 0 else None
    if plain and is_own(plain.items) and not _bans(plain.test):
        yield Claim(frozenset({Ask(key(plain.items))}), _OWN, *parsed.place(plain.items))


def _own_share(parsed: Parsed, spot: Spot) -> Iterator[Claim]:
    """`overlap(answer.picks, key.picks) == len(answer.picks)` is met by picking nothing."""
    part = spot.part if isinstance(spot.part, ast.Compare) and not is_plain(spot.part) else None
    for left, operator, right in links(part, spot.sign or 1) if part else ():
        walked = loop_of(right)
        items = walked.items if walked else next(iter(called(right, "len", "overlap")), None)
        if items is not None and is_own(items) and same_list(left, right) and operator in _NO_LESS:
            yield Claim(frozenset({Ask(key(items))}), _OWN, *parsed.place(items))


def _order(parsed: Parsed, spot: Spot) -> Iterator[Claim]:
    """An order over steps that may be absent: not met, or turned round met, where nothing was done."""
    steps, *acts = called(spot.part, *ORDERS) or (spot.part,)
    words = [str(act.value) for act in acts if isinstance(act, ast.Constant)]
    if len(words) == 2 and is_own(steps):
        first, then = words
        wants = frozenset(Ask(key(steps), act=act) for act in words)
        said = _NO_ORDER if spot.sign < 0 else _ORDER
        yield Claim(wants, said.format(first=first, then=then, steps=key(steps)), *parsed.place(spot.part))


def _after_each(parsed: Parsed, spot: Spot) -> Iterator[Claim]:
    """What has to follow each `a` is met where there is no `a`."""
    steps, *acts = called(spot.part, "after_each") or (spot.part,)
    if acts and isinstance(acts[0], ast.Constant) and spot.sign >= 0 and is_own(steps):
        first = acts[0].value
        wants = {Ask(key(steps), act=str(first)), Ask(key(steps), frozenset({op_is(str(first))}))}
        yield Claim(frozenset(wants), _EACH.format(first=first), *parsed.place(spot.part))


_NO_LESS = (ast.Eq, ast.GtE, ast.LtE)


def _bans(test: ast.expr) -> bool:
    """Whether a test only says what an item must not be."""
    if isinstance(test, ast.BoolOp):
        return all(_bans(each) for each in test.values)
    if isinstance(test, ast.UnaryOp):
        return isinstance(test.op, ast.Not)
    if not isinstance(test, ast.Compare):
        return False
    return all(
        operator in (ast.NotIn, ast.NotEq) or (_amounts(left) and not [*at_least_one(left, operator, right)])
        for left, operator, right in links(test, 1)
    )


def _amounts(part: ast.expr) -> bool:
    return bool(called(part, "overlap") or loop_of(part))


Habit = Callable[[Parsed, Spot], Iterator[Claim]]
_OF_LOOPS: tuple[Habit, ...] = (_filtered, _own_list)
_OF_SHAPES: dict[type[ast.expr], tuple[Habit, ...]] = {ast.Compare: (_own_share,), ast.Call: (_order, _after_each)}
