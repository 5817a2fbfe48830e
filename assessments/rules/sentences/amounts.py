"""Values as words: written ones with the unit they take, fields by name, sums as sums, lists as what they hold."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from assessments.rules.nodes import (
    Arithmetic,
    Call,
    Choose,
    Field,
    Item,
    Literal,
    LiteralList,
    Minus,
    Node,
    Path,
    Root,
)
from assessments.rules.sentences.joining import INSIDE, spoken
from assessments.rules.sentences.naming import alternatives, choice_label
from assessments.rules.sentences.spoken import SIGNS, is_written, unit_of
from assessments.rules.sentences.telling import Teller, called, items_noun
from assessments.rules.units import difference


def amount(teller: Teller, node: Node, beside: Node | None = None) -> str:
    """Return a value as words; a yes/no that is worked out is told as the question it answers."""
    make = _AMOUNTS.get(type(node))
    if make is not None:
        return make(teller, node, beside)
    return f"(whether {spoken(teller.clause(node), INSIDE)})"


def written(teller: Teller, value: Any, unit: str | None = None, beside: Node | None = None) -> str:
    """Return a value written in the rule: a number in its unit, a choice as words, beside free text one in quotes."""
    if not isinstance(value, str):
        return teller.show(value, unit)
    return f"“{value}”" if is_free(beside) else choice_label(_choice_path(beside), value, teller.name)


def _choice_path(node: Node | None) -> Path | None:
    """Return where a choice stands, or the choices of a list."""
    path = node.sort.path if node else None
    return (*path, "[]") if path and node and node.sort.name == "list" else path


def is_free(node: Node | None) -> bool:
    """Whether a value is free text, in which written words are shown as they stand."""
    return node is not None and node.sort.name == "str" and not is_written(node)


def unit_beside(node: Node, beside: Node | None) -> str | None:
    """Return the unit of a value; one that is written takes the other side's."""
    return unit_of(node) or (unit_of(beside) if beside and is_written(node) else None)


def _literal(teller: Teller, node: Literal, beside: Node | None) -> str:
    return written(teller, node.value, unit_beside(node, beside), beside)


def _literals(teller: Teller, node: LiteralList, beside: Node | None) -> str:
    unit = unit_beside(node, beside)
    return alternatives([written(teller, value, unit, beside) for value in node.values])


def _named(teller: Teller, node: Root | Field | Item, beside: Node | None) -> str:
    return called(teller, node)


def _minus(teller: Teller, node: Minus, beside: Node | None) -> str:
    if isinstance(node.of, Literal):
        return teller.show(-node.of.value, unit_beside(node.of, beside))
    words = teller.amount(node.of)
    return f"minus ({words})" if isinstance(node.of, Arithmetic) else f"minus {words}"


def _arithmetic(teller: Teller, node: Arithmetic, beside: Node | None) -> str:
    left, right = (_operand(teller, node, part, other) for part, other in _sides(node))
    return f"{left} {SIGNS[node.sign]} {right}"


def _sides(node: Arithmetic) -> tuple[tuple[Node, Node], tuple[Node, Node]]:
    return (node.left, node.right), (node.right, node.left)


def _operand(teller: Teller, node: Arithmetic, part: Node, other: Node) -> str:
    """Return one side of a sum; brackets where the inner sign binds less than the outer."""
    if isinstance(part, Literal) and node.sign in "+-":
        return teller.show(part.value, _moved_by(node, part, other))
    words = teller.amount(part)
    grouped = isinstance(part, Arithmetic) and not (node.sign == "+" and part.sign in "+-")
    return f"({words})" if grouped else words


def _moved_by(node: Arithmetic, part: Node, other: Node) -> str | None:
    """Return the unit of a written number in a sum: a temperature is moved by a difference."""
    apart = difference(other.sort.unit)
    return apart.text if apart and apart.powers and node.sort.unit == other.sort.unit else unit_of(other)


def _choose(teller: Teller, node: Choose, beside: Node | None) -> str:
    yes, no = (teller.amount(part, other) for part, other in ((node.yes, node.no), (node.no, node.yes)))
    return f"({yes} if {spoken(teller.clause(node.test), INSIDE)}, otherwise {no})"


def _call(teller: Teller, node: Call, beside: Node | None) -> str:
    if node.function:
        words = [
            written(teller, part.value, kind.unit) if isinstance(part, Literal) else teller.amount(part)
            for part, kind in zip(node.arguments, node.function.params, strict=True)
        ]
        return f"the {node.name.replace('_', ' ')} of {alternatives(words, 'and')}" if words else _bare(node)
    make = _WORDS.get(node.name)
    return make(teller, node) if make else f"(whether {spoken(teller.clause(node), INSIDE)})"


def _bare(node: Call) -> str:
    return f"the {node.name.replace('_', ' ')}"


def _abs(teller: Teller, node: Call) -> str:
    part = node.arguments[0]
    if isinstance(part, Arithmetic) and part.sign == "-":
        left, right = (teller.amount(side, other) for side, other in _sides(part))
        return f"the difference between {left} and {right}"
    return f"the size of {teller.amount(part)}"


def _len(teller: Teller, node: Call) -> str:
    part = node.arguments[0]
    if part.sort.name == "str":
        return f"the length of {teller.amount(part)}"
    held = items_noun(teller, part)
    return f"the number of {held.many}{held.of}"


def _overlap(teller: Teller, node: Call) -> str:
    mine, others = node.arguments
    held = items_noun(teller, mine)
    return f"the number of {held.many}{held.of} that are {among(teller, others, mine)}"


def among(teller: Teller, items: Node, beside: Node) -> str:
    """Return a list as what something may be: among the key's kit, one of wait or refer."""
    words = teller.amount(items, beside)
    if not isinstance(items, LiteralList):
        return f"among {words}"
    return words if len(items.values) == 1 else f"one of {words}"


_WORDS: dict[str, Callable[[Teller, Call], str]] = {
    "abs": _abs,
    "len": _len,
    "overlap": _overlap,
    "norm": lambda teller, node: teller.amount(node.arguments[0]),
}
_AMOUNTS: dict[type[Node], Callable[[Teller, Any, Node | None], str]] = {
    Literal: _literal,
    LiteralList: _literals,
    Root: _named,
    Field: _named,
    Item: _named,
    Minus: _minus,
    Arithmetic: _arithmetic,
    Choose: _choose,
    Call: _call,
}
