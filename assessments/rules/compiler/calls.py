"""Words of the language and lent functions, called."""

from __future__ import annotations

from assessments.rules.compiler.events import note, stored
from assessments.rules.compiler.orders import ORDERS
from assessments.rules.compiler.pen import Pen, Value
from assessments.rules.compiler.values import missing, unless_missing
from assessments.rules.frame import LARGEST
from assessments.rules.functions import Function
from assessments.rules.nodes import Call
from assessments.rules.vocabulary import SLACK

_LOOSE = ("before", "starts_before", "after_each")
_LONG = ("overlap", "norm", "mentions", "near_rel", *_LOOSE)
_MANY = 1e8
"""More than any text or list can hold."""


def call(pen: Pen, node: Call) -> Value:
    """Return a word or a lent function, called on values that are all there; unknown where one is missing."""
    if node.name == "answered":
        return _answered(pen, node)
    values = [pen.value(part) for part in node.arguments]
    recorded = pen.recording and (node.sort.name == "bool" or node.function is not None)
    if recorded or node.name == "near":
        values = [pen.named(value) for value in values]
    value = _lent(pen, node.function, values) if node.function else _word(pen, node, values)
    if recorded:
        value = pen.named(value, "b")
        note(pen, node, stored(pen, node, value), list(zip(node.arguments, values, strict=True)))
    return value


def _answered(pen: Pen, node: Call) -> Value:
    part = node.arguments[0]
    of = pen.value(part)
    value = Value("True", atom=True)
    if of.none:
        of = pen.named(of)
        value = Value(f"({of.text} is not None)")
        if pen.silent is not None and part.sort.roots & pen.silent:
            value = Value(f"(None if {of.text} is None else True)", True)
    if pen.recording:
        value = pen.named(value, "b")
        note(pen, node, value.text)
    return value


def _lent(pen: Pen, function: Function, values: list[Value]) -> Value:
    """Return what a lent function gives; it may know no answer."""
    name = next((name for name, known in pen.lent.items() if known is function), "")
    if not name:
        name = f"h{len(pen.lent)}"
        pen.lent[name] = function
    bound = LARGEST if function.returns.is_number else 0
    asked = unless_missing(pen, values, lambda texts: f"{name}({', '.join(texts)})", bound)
    return pen.named(Value(asked.text, True, bound))


def _word(pen: Pen, node: Call, values: list[Value]) -> Value:
    if node.name == "near":
        return _near(pen, values)
    if node.name in ORDERS:
        known = pen.recall(("places", values[0].text))
        if known:
            return _order(known, node, values)
    bound = values[0].bound if node.name == "abs" else _MANY
    value = unless_missing(pen, values, lambda texts: f"{node.name}({', '.join(texts)})", bound)
    loose = node.name in _LOOSE and _may_lack_op(node)
    value = Value(value.text, value.none or loose, bound)
    return pen.named(value) if node.name in _LONG else value


def _may_lack_op(node: Call) -> bool:
    kind = node.arguments[0].sort.kind
    item = kind.item if kind else None
    return item is None or item.opt or item.fields["op"].opt


def _order(found: tuple[str, str], node: Call, values: list[Value]) -> Value:
    """Return an order told from the places of the acts, which several tests share."""
    first, last = found
    one, other = (last, first) if node.name == "before" else (first, first)
    text = f"(-1 < {one}.get({values[1].text}, -1) < {other}.get({values[2].text}, -1))"
    unsure = values[0].none or _may_lack_op(node)
    return Value(f"(None if {first} is None else {text})", True) if unsure else Value(text)


def _near(pen: Pen, values: list[Value]) -> Value:
    """Return the test of `vocabulary.near`, the slack worked out only where the bare tolerance doesn't do."""
    a, b, within = values
    apart = f"abs({a.text} - {b.text})"
    slack = f"{SLACK!r} * max(1.0, abs({a.text}), abs({b.text}))"
    text = f"({apart} <= {within.text} or {apart} <= {within.text} + {slack})"
    return Value(f"(None if {missing(values)} else {text})", True) if missing(values) else Value(text)
