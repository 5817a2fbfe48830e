"""Quantifiers as loops: silent over the items, left where they are decided, then the item that decided, recorded."""

from __future__ import annotations

from dataclasses import replace

from assessments.rules.compiler.events import note_walk
from assessments.rules.compiler.paths import below
from assessments.rules.compiler.pen import Pen, Value
from assessments.rules.compiler.plain import Plain
from assessments.rules.compiler.telling import tell, tell_again
from assessments.rules.compiler.unsure import Unsure
from assessments.rules.compiler.walk import Walked
from assessments.rules.nodes import (
    Arithmetic,
    Call,
    Comparison,
    Field,
    Item,
    Literal,
    LiteralList,
    Logic,
    Node,
    Quantifier,
    Root,
)


def quantifier(pen: Pen, node: Quantifier) -> Value:
    """Return the value of a quantifier; the same walk is made once within a block."""
    items = pen.named(pen.value(node.items))
    key = (pen.recording, node.word, items.text, shape(pen, node, {}))
    walked: Walked | None = pen.recall(key)
    if walked is None:
        walked = _walked(pen, node, items)
        pen.learn(key, walked)
    elif pen.recording:
        _again(pen, node, items, walked)
    return walked.value


def shape(pen: Pen, node: Node, bound: dict[str, str]) -> tuple[object, ...]:
    """Return what a part says, whatever its loop variables are called."""
    kind = type(node)
    if isinstance(node, Item):
        return "item", bound.get(node.name) or pen.variables[node.name]
    if isinstance(node, Literal):
        return kind, repr(node.value)
    if isinstance(node, LiteralList):
        return kind, repr(node.values)
    said = None
    if isinstance(node, Quantifier):
        bound = {**bound, node.variable: f"#{len(bound)}"}
        said = node.word, node.keep is None
    elif kind in _SAID:
        said = getattr(node, _SAID[kind])
    return kind, said, *[shape(pen, part, bound) for part in below(node)]


_SAID: dict[type[Node], str] = {
    Root: "name",
    Field: "name",
    Call: "name",
    Logic: "word",
    Arithmetic: "sign",
    Comparison: "signs",
}


def _walked(pen: Pen, node: Quantifier, items: Value) -> Walked:
    """Write the walk, and what is recorded of it; of a list that is missing it is unknown."""
    if not items.none:
        return _told(pen, node, items)
    name = pen.name("q")
    pen.line(f"{name} = None")
    pen.enter(f"if {items.text} is not None:")
    walked = _told(pen, node, items)
    pen.line(f"{name} = {walked.value.text}")
    pen.leave()
    if pen.recording:
        pen.enter("else:")
        note_walk(pen, node)
        pen.leave()
    return replace(walked, value=Value(name, True, walked.value.bound, True))


def _told(pen: Pen, node: Quantifier, items: Value) -> Walked:
    walked = _either(pen, node, items)
    if pen.recording and walked.decides is None:
        walked = replace(walked, value=pen.named(walked.value, "q"))
        tell(pen, node, walked)
    return walked


def _again(pen: Pen, node: Quantifier, items: Value, walked: Walked) -> None:
    """Record a walk that was made before."""
    if not items.none:
        tell_again(pen, node, walked)
        return
    pen.enter(f"if {items.text} is None:")
    note_walk(pen, node)
    pen.leave()
    pen.enter("else:")
    tell_again(pen, node, walked)
    pen.leave()


def _either(pen: Pen, node: Quantifier, items: Value) -> Walked:
    """Write the walk in two values, in three where two don't do."""
    recording, pen.recording = pen.recording, False
    start = pen.place()
    walked = Plain(pen, node, items, recording).written()
    if walked is None:
        pen.back(start)
        walked = Unsure(pen, node, items, recording).written()
    pen.recording = recording
    return walked
