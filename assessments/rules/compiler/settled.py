"""What is recorded of a test whose outcome is known already: of the item that decided a quantifier."""

from __future__ import annotations

from collections.abc import Sequence

from assessments.rules.compiler.events import note, tested
from assessments.rules.compiler.pen import Pen
from assessments.rules.nodes import Call, Comparison, Field, Item, Logic, Node, Not, Root


def settled(pen: Pen, node: Node, holds: bool) -> None:
    """Write the events of a test that is known to hold, or not to; what doesn't follow from that is worked out again.

    A conjunction that holds holds in all its parts, a disjunction that doesn't in none.
    """
    if isinstance(node, Not):
        settled(pen, node.of, not holds)
    elif isinstance(node, Logic) and (node.word == "and") is holds:
        for part in node.parts:
            settled(pen, part, holds)
    elif isinstance(node, Field | Item | Root):
        pen.record(f"({pen.first + node.number}, {holds})", None)
    elif isinstance(node, Comparison) and (holds or len(node.signs) == 1):
        _note(pen, node, node.parts, holds)
    elif isinstance(node, Call) and node.function is None and node.name != "answered":
        _note(pen, node, node.arguments, holds)
    else:
        tested(pen, node)


def _note(pen: Pen, node: Node, parts: Sequence[Node], holds: bool) -> None:
    values = [pen.named(pen.value(part)) for part in parts]
    note(pen, node, str(holds), list(zip(parts, values, strict=True)))
