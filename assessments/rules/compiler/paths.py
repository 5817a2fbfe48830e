"""Paths into the case: read once where they are read often, safe where a record on the way may be missing."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable

from assessments.rules.compiler.pen import Pen, Value
from assessments.rules.nodes import Field, Item, Node, Path, Quantifier, Root

_LARGEST = {"num": 2e12, "int": 1e9}
"""What `bind` lets in; a step may round a number up."""


def rooted(node: Node) -> Path | None:
    """Return the names from the root to a field, None for what doesn't begin at a root.

    >>> from assessments.rules.nodes import Sort
    >>> rooted(Field(1, 0, 3, Sort(), Root(0, 0, 1, Sort(), "a"), "b"))
    ('a', 'b')
    """
    names: list[str] = []
    while isinstance(node, Field):
        names.append(node.name)
        node = node.of
    return (node.name, *reversed(names)) if isinstance(node, Root) else None


def below(node: Node) -> list[Node]:
    """Return the parts a node is made of."""
    found: list[Node] = []
    for name in node.__slots__:
        value = getattr(node, name)
        if isinstance(value, Node):
            found.append(value)
        elif isinstance(value, tuple):
            found += [each for each in value if isinstance(each, Node)]
    return found


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
    return dict(sorted(wanted.items(), key=lambda each: len(each[0])))


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
    """Write the reading of paths at the head of the function, shorter ones first."""
    for path, node in paths.items():
        owner = pen.recall(path[:-1])
        value = Value(f"case[{path[0]!r}]", _opt(node)) if owner is None else _subscript(pen, owner, node)
        name = pen.name("p")
        pen.line(f"{name} = {value.text}")
        pen.learn(path, Value(name, value.none, _bound(node), True))
        pen.heads |= {name}


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
