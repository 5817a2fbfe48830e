"""What is recorded of a walk: how it came out, and the item that decided it."""

from __future__ import annotations

from assessments.rules.compiler.events import note_walk, tested
from assessments.rules.compiler.pen import Pen, Value
from assessments.rules.compiler.settled import settled
from assessments.rules.compiler.walk import Walked
from assessments.rules.nodes import Quantifier


def tell(pen: Pen, node: Quantifier, walked: Walked) -> None:
    """Record a walk of which only the run can say how it came out, then the item that decided it."""
    note_walk(pen, node, walked.value, f", {walked.tested}, {walked.place}")
    if walked.place == "None":
        return
    start = pen.place()
    pen.enter(f"if {walked.place} is not None:")
    inside = pen.place()
    pen.variables[node.variable] = walked.item
    _ = tested(pen, node.test) if node.word in ("every", "any", "count") else pen.value(node.test)
    del pen.variables[node.variable]
    if pen.quiet(inside):
        pen.back(start)
    else:
        pen.leave()


def tell_decided(pen: Pen, node: Quantifier, walked: Walked) -> None:
    """Record a walk that was decided, and the item that did it; the loop is still open, or its names still stand."""
    recording, pen.recording = pen.recording, True
    outer = pen.variables.get(node.variable)
    pen.variables[node.variable] = walked.item
    note_walk(pen, node, _known(walked.decides is True), f", {walked.then}, {walked.place}")
    settled(pen, node.test, walked.decides is True)
    del pen.variables[node.variable]
    if outer is not None:
        pen.variables[node.variable] = outer
    pen.recording = recording


def tell_undecided(pen: Pen, node: Quantifier, walked: Walked) -> None:
    """Record a walk that went to the end of its list."""
    note_walk(pen, node, _known(walked.decides is False), f", {walked.tested}, None")


def tell_again(pen: Pen, node: Quantifier, walked: Walked) -> None:
    """Record a walk that was made before, for another quantifier that says the same."""
    if walked.decides is None:
        tell(pen, node, walked)
        return
    pen.enter(f"if {walked.value.text}:" if walked.decides else f"if not {walked.value.text}:")
    tell_decided(pen, node, walked)
    pen.leave()
    pen.enter("else:")
    tell_undecided(pen, node, walked)
    pen.leave()


def _known(result: bool) -> Value:
    return Value(str(result), known=(result,))
