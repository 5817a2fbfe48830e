"""Paths into the case: read once where they are read often, safe where a record on the way may be missing."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable, Sequence
from itertools import groupby
from typing import Any

from assessments.rules.compiler.pen import Pen, Value
from assessments.rules.nodes import (
    Arithmetic,
    Call,
    Choose,
    Comparison,
    Field,
    Item,
    Literal,
    LiteralList,
    Logic,
    Minus,
    Node,
    Not,
    Path,
    Quantifier,
    Root,
)

_MANY = 3
_LARGEST = {"num": 2e12, "int": 1e9}
"""What `bind` lets in; a step may round a number up."""


def rooted(node: Node) -> Path | None:
    """Return the names from the root to a field, None for what doesn't begin at a root.

    >>> from assessments.rules.nodes import Sort
    >>> rooted(Field(1, 0, 3, Sort(), Root(0, 0, 1, Sort(), "a"), "b"))
    ('a', 'b')
    """
    if not isinstance(node, Field):
        return (node.name,) if isinstance(node, Root) else None
    owner = rooted(node.of)
    return (*owner, node.name) if owner else None


def below(node: Node) -> Sequence[Node]:
    """Return the parts a node is made of."""
    return _PARTS[type(node)](node)


def _of_quantifier(node: Quantifier) -> Sequence[Node]:
    return (node.items, node.test) if node.keep is None else (node.items, node.keep, node.test)


_PARTS: dict[type[Node], Callable[[Any], Sequence[Node]]] = {
    Literal: lambda node: (),
    LiteralList: lambda node: (),
    Root: lambda node: (),
    Item: lambda node: (),
    Field: lambda node: (node.of,),
    Not: lambda node: (node.of,),
    Minus: lambda node: (node.of,),
    Logic: lambda node: node.parts,
    Arithmetic: lambda node: (node.left, node.right),
    Choose: lambda node: (node.test, node.yes, node.no),
    Comparison: lambda node: node.parts,
    Call: lambda node: node.arguments,
    Quantifier: _of_quantifier,
}


def often(parts: Iterable[Node], least: int) -> dict[Path, Node]:
    """Return the paths that are read at least so often, in a loop or where one may be missing, shorter ones first.

    The records on the way to them are among them.
    """
    times: Counter[Path] = Counter()
    found: dict[Path, Node] = {}
    for part in parts:
        _count(part, 1, least, times, found)
    wanted = {path: node for path, node in found.items() if times[path] >= least}
    for node in [*wanted.values()]:
        while isinstance(node, Field):
            node = node.of
            wanted[rooted(node) or ()] = node
    return dict(sorted(wanted.items(), key=lambda each: (len(each[0]), each[0][:-1])))


def _count(node: Node, weight: int, least: int, times: Counter[Path], found: dict[Path, Node]) -> None:
    path = rooted(node)
    if path is None:
        looped = (node.keep, node.test) if isinstance(node, Quantifier) else ()
        for part in below(node):
            _count(part, least if part in looped else weight, least, times, found)
        return
    times[path] += least if _opt(node) else weight
    found[path] = node
    if isinstance(node, Field) and _opt(node.of):
        _count(node.of, least, least, times, found)


def read_ahead(pen: Pen, paths: dict[Path, Node]) -> None:
    """Write the reading of paths at the head of the function, shorter ones first, many fields of a record at once."""
    for owner, found in groupby(paths.items(), lambda each: each[0][:-1]):
        record: Value | None = pen.recall(owner)
        fields = list(found)
        names = [pen.name("p") for _ in fields]
        values = [_read(pen, record, node) for _, node in fields]
        if record is not None and not record.none and len(fields) >= _MANY:
            picks = pen.name("k")
            pen.preamble.append(f"{picks} = fields({', '.join(repr(path[-1]) for path, _ in fields)})")
            pen.line(f"{', '.join(names)} = {picks}({record.text})")
        else:
            for name, value in zip(names, values, strict=True):
                pen.line(f"{name} = {value.text}")
        for name, value, (path, node) in zip(names, values, fields, strict=True):
            pen.heads[name] = Value(name, value.none, _bound(node), True)
            pen.learn(path, pen.heads[name])


def _read(pen: Pen, record: Value | None, node: Node) -> Value:
    if record is not None:
        return _subscript(pen, record, node)
    return Value(f"case[{getattr(node, 'name', '')!r}]", _opt(node))


def path(pen: Pen, node: Root | Field) -> Value:
    """Return the value of a root or a field."""
    whole = rooted(node)
    known: Value | None = pen.recall(whole) if whole else None
    if known is None and isinstance(node, Field):
        known = _subscript(pen, pen.value(node.of), node)
    if known is None:
        known = Value(f"case[{node.name!r}]", _opt(node))
    return Value(known.text, known.none and _doubted(pen, node), _bound(node), known.atom)


def item(pen: Pen, node: Item) -> Value:
    """Return the loop variable of the moment."""
    return Value(pen.variables[node.name], _opt(node) and _doubted(pen, node), _bound(node), True)


def _subscript(pen: Pen, owner: Value, node: Root | Field | Node) -> Value:
    field = repr(getattr(node, "name", ""))
    if not owner.none:
        return Value(f"{owner.text}[{field}]", _opt(node))
    owner = pen.named(owner)
    return Value(f"(None if {owner.text} is None else {owner.text}[{field}])", True)


def _opt(node: Node) -> bool:
    return node.sort.kind is not None and node.sort.kind.opt


def _doubted(pen: Pen, node: Node) -> bool:
    """Whether it may be missing here, as far as the tests before it settle that."""
    return pen.silent is not None or bool(node.sort.missing)


def _bound(node: Node) -> float:
    return _LARGEST.get(node.sort.name, 0)
