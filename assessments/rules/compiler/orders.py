"""What is worked out once for many tests on one list: where each act stands, and rows by the choice a field holds."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from assessments.rules.compiler.paths import below, rooted
from assessments.rules.compiler.pen import Pen, Value
from assessments.rules.nodes import Call, Comparison, Field, Item, Literal, Logic, Node, Path, Quantifier

ORDERS = ("before", "starts_before")
_SHARED = 2
_GROUPED = 3


@dataclass(frozen=True, slots=True)
class Split:
    """A quantifier that looks only at items of which a field holds one word: which, and what else is asked."""

    items: Path
    field: str
    word: str
    keep: tuple[Node, ...]
    test: tuple[Node, ...] | None


def split(node: Quantifier) -> Split | None:
    """Return how a quantifier is narrowed to one word of a choice, None where it isn't.

    The word may stand in its filter; in its test only where nothing else is counted, as of `any` and `count`.
    """
    path, keep = rooted(node.items), _joined(node.keep)
    found = None if path is None else _in_filter(node, path, keep)
    if path and found is None and node.word in ("any", "count") and not keep:
        found = _in_test(node, path)
    return None if found is None or _calls(node) else found


def _in_filter(node: Quantifier, path: Path, keep: list[Node]) -> Split | None:
    for part in keep:
        field = _asks(part, node.variable)
        if field:
            return Split(path, *field, tuple(each for each in keep if each is not part), None)
    return None


def _in_test(node: Quantifier, path: Path) -> Split | None:
    parts = _joined(node.test)
    for part in parts:
        field = _asks(part, node.variable)
        if field:
            return Split(path, *field, (), tuple(each for each in parts if each is not part))
    return None


def _joined(node: Node | None) -> list[Node]:
    """Return the parts joined by `and`, at any depth."""
    if isinstance(node, Logic) and node.word == "and":
        return [each for part in node.parts for each in _joined(part)]
    return [] if node is None else [node]


def _asks(node: Node, variable: str) -> tuple[str, str] | None:
    """Return field and word of `item.field == 'word'` where the field is a choice that is there."""
    if not isinstance(node, Comparison) or node.signs != ("==",):
        return None
    field, word = node.parts
    if not isinstance(field, Field) or not isinstance(word, Literal):
        return None
    of, kinds = field.of, (field.of.sort.kind, field.sort.kind)
    plain = isinstance(of, Item) and of.name == variable and not any(kind is None or kind.opt for kind in kinds)
    return (field.name, word.value) if plain and field.sort.name == "enum" else None


def _calls(node: Node | None) -> bool:
    """Whether a lent function is called, which may fail on an item that a group leaves out."""
    if isinstance(node, Call) and node.function:
        return True
    return any(_calls(each) for each in below(node)) if node is not None else False


def look_ahead(pen: Pen, parts: Iterable[Sequence[Node]]) -> None:
    """Write, at the head of the function, what several tests on a list share."""
    orders: Counter[Path] = Counter()
    groups: Counter[tuple[Path, str]] = Counter()
    for nodes in parts:
        for node in nodes:
            if isinstance(node, Call) and node.name in ORDERS:
                path = rooted(node.arguments[0])
                orders.update([path] if path else [])
            elif isinstance(node, Quantifier):
                narrowed = split(node)
                groups.update([(narrowed.items, narrowed.field)] if narrowed else [])
    for path in [path for path, times in orders.items() if times >= _SHARED]:
        places(pen, pen.recall(path))
    for path, field in [key for key, times in groups.items() if times >= _GROUPED]:
        _group(pen, path, field, pen.recall(path))


def places(pen: Pen, steps: Value) -> tuple[str, str]:
    """Return the names under which the first and the last place of each act are found; None where one has no name."""
    known: tuple[str, str] | None = pen.recall(("places", steps.text))
    if known is None:
        known = pen.name("f"), pen.name("l")
        made = f"places({steps.text})"
        made = f"(None, None) if {steps.text} is None else {made}" if steps.none else made
        pen.line(f"{known[0]}, {known[1]} = {made}")
        pen.learn(("places", steps.text), known)
    return known


def _group(pen: Pen, path: Path, field: str, rows: Value) -> None:
    name = pen.name("g")
    made = f"{'placed' if pen.recording else 'grouped'}({rows.text}, {field!r})"
    pen.line(f"{name} = None if {rows.text} is None else {made}" if rows.none else f"{name} = {made}")
    pen.learn(("group", path, field), name)
