"""What generated code records: results and operands as a mark keeps them, at no cost where they are small anyway."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence

from assessments.rules.compiler.paths import rooted
from assessments.rules.compiler.pen import Pen, Value
from assessments.rules.kinds import Kind
from assessments.rules.nodes import Call, Field, Item, Node, Quantifier, Root
from assessments.rules.trace import DIGITS, MAX_TEXT, small

Plan = tuple[tuple[str, object], ...]
AS_IS, GIVEN, READ, KEPT = "as it is", "given", "read", "kept"
"""Where an operand is found whole: in the event, in the rule, in the case, among what the run kept."""
_WRITE = {
    "number": "six({0})",
    "long": "round({0}, 6)",
    "text": f"({{0}} if len({{0}}) <= {MAX_TEXT} else cut({{0}}))",
    "list": "[len({0})]",
}


def tested(pen: Pen, node: Node) -> Value:
    """Return a yes/no in the place of a test; a bare field is recorded: nothing else shows it."""
    value = pen.value(node)
    if not pen.recording or not isinstance(node, Field | Item | Root):
        return value
    value = pen.named(value)
    pen.record(f"({pen.first + node.number}, {value.text})", None)
    return value


def note(pen: Pen, node: Node, result: str, parts: Sequence[tuple[Node, Value]] = ()) -> None:
    """Record an event with its operands; those that are not whole in it are kept beside it."""
    plan = keep_plan(pen, node, parts)
    whole = [f"{value.text}, " for (_, value), (how, _what) in zip(parts, plan, strict=True) if how == KEPT]
    event = f"({pen.first + node.number}, {result}{operands(pen, parts)})"
    pen.record(event, f"({''.join(whole)})" if whole else None)


def note_held(pen: Pen, node: Node, result: str, parts: Sequence[tuple[Node, Value]], held: str, whole: str) -> None:
    """Record an event of which the operands looked at stand in two names."""
    keep_plan(pen, node, parts)
    pen.record(f"({pen.first + node.number}, {result}, *{held})", whole if kept(parts) else None)


def note_walk(pen: Pen, node: Node, result: Value | None = None, rest: str = "") -> None:
    """Record a quantifier: its result, how many items were tested, and the place of the one that decided."""
    said = "None" if result is None else stored(pen, node, result)
    pen.record(f"({pen.first + node.number}, {said}{rest})", None)


def keep_plan(pen: Pen, node: Node, parts: Iterable[tuple[Node, Value]]) -> Plan:
    """Note and return where each operand of an event is found whole; nothing is noted where all are as they are."""
    plan = tuple([_whole(part, value) for part, value in parts])
    if any(how != AS_IS for how, _ in plan):
        pen.wholes[pen.first + node.number] = plan
    return plan


def operands(pen: Pen, parts: Iterable[tuple[Node, Value]]) -> str:
    """Return operands as they are stored, each after a comma."""
    return "".join(f", {stored(pen, part, value)}" for part, value in parts)


def kept(parts: Iterable[tuple[Node, Value]]) -> str | None:
    """Return the tuple of operands to be kept whole, None where there are none."""
    whole = [f"{value.text}, " for part, value in parts if _whole(part, value)[0] == KEPT]
    return f"({''.join(whole)})" if whole else None


def stored(pen: Pen, node: Node, value: Value) -> str:
    """Return a named value as it is stored: numbers to six decimals, long texts cut, lists by their length."""
    if value.known:
        return repr(small(value.known[0]))
    form = _form(node)
    if form is None:
        return value.text
    known: str | None = pen.recall((form, value.text))
    if known is None and form == "number" and rooted(node):
        known = pen.round_ahead(value)
    if known is None:
        text = _WRITE[form].format(value.text)
        known = pen.name("r")
        pen.line(f"{known} = None if {value.text} is None else {text}" if value.none else f"{known} = {text}")
        pen.learn((form, value.text), known)
    return known


def _whole(node: Node, value: Value) -> tuple[str, object]:
    """Return where an operand is found whole."""
    if value.known:
        return GIVEN, value.known[0]
    if _form(node) is None:
        return AS_IS, None
    path = rooted(node)
    return (READ, path) if path else (KEPT, None)


def _form(node: Node) -> str | None:
    """Return what has to be done with a value before it is stored; None where every value of it is small."""
    kind, read = node.sort.kind, isinstance(node, Field | Item | Root)
    if kind is None or kind.name in ("int", "bool", "rec"):
        return None
    if kind.name == "num":
        return _number(node, kind, read)
    if kind.name == "list":
        return "list"
    longest = kind.max if kind.name == "str" else max(map(len, kind.vals), default=0)
    return None if read and longest <= MAX_TEXT else "text"


def _number(node: Node, kind: Kind, read: bool) -> str | None:
    """Return how a number is made short; what a function gives, or a sum, is hardly ever short already."""
    if isinstance(node, Quantifier) or (isinstance(node, Call) and node.function):
        return "long"
    return None if read and _coarse(kind) else "number"


def _coarse(kind: Kind) -> bool:
    """Whether `bind` rounds its values to at most six decimals."""
    if kind.step is None:
        return False
    decimals = -math.floor(math.log10(kind.step))
    return decimals <= DIGITS and math.isclose(kind.step, 10.0**-decimals)


def rounded_ahead(pen: Pen) -> list[str]:
    """Return the lines that round, at the head, the numbers of the case that events hold."""
    lines = []
    for function, loose in (("sixes", False), ("sixes_or_none", True)):
        names = {value.text: name for value, name in pen.rounded.values() if value.none is loose}
        if names:
            lines.append(f"    {', '.join(names.values())}, = {function}(({', '.join(names)}, ))")
    return lines
