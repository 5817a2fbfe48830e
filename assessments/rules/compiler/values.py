"""Values written in a rule, signs before them, arithmetic, and the choice between two values."""

from __future__ import annotations

import operator
from collections.abc import Callable, Sequence

from assessments.rules.compiler.events import tested
from assessments.rules.compiler.pen import Pen, Place, Value
from assessments.rules.frame import LARGEST
from assessments.rules.nodes import Arithmetic, Choose, Literal, LiteralList, Minus

Writer = Callable[[list[str]], str]
_SAFE = LARGEST / 10
_LARGEST_OF: dict[str, Callable[[float, float], float]] = {"+": operator.add, "-": operator.add, "*": operator.mul}


def literal(pen: Pen, node: Literal) -> Value:
    """Return a value written in the rule."""
    return _spelt(node.value)


def _spelt(value: float | bool | str) -> Value:
    bound = abs(value) if isinstance(value, int | float) else 0
    return Value(repr(value), False, bound, True, (value,))


def literal_list(pen: Pen, node: LiteralList) -> Value:
    """Return a list written in the rule."""
    values = list(node.values)
    return Value(repr(values), False, 0, True, (values,))


def minus(pen: Pen, node: Minus) -> Value:
    """Return a number with its sign turned."""
    of = pen.value(node.of)
    if of.known:
        return Value(f"({-of.known[0]!r})", False, of.bound, True, (-of.known[0],))
    return unless_missing(pen, [of], lambda texts: f"(-{texts[0]})", of.bound)


def arithmetic(pen: Pen, node: Arithmetic) -> Value:
    """Return two numbers joined; what has no finite result is unknown."""
    left, right = pen.value(node.left), pen.value(node.right)
    if node.sign == "/":
        return _quotient(pen, left, right, node.right.sort.name == "int")
    bound = _LARGEST_OF[node.sign](left.bound, right.bound)
    value = unless_missing(pen, [left, right], lambda texts: f"({texts[0]} {node.sign} {texts[1]})", bound)
    return within_bounds(pen, value)


def _quotient(pen: Pen, left: Value, right: Value, whole: bool) -> Value:
    if right.known and right.known[0]:
        bound = left.bound / abs(right.known[0])
        return within_bounds(pen, unless_missing(pen, [left], lambda texts: f"({texts[0]} / {right.text})", bound))
    right = pen.named(right)
    value = unless_missing(
        pen, [left, right], lambda texts: f"({texts[0]} / {texts[1]} if {texts[1]} else None)", left.bound
    )
    bound = left.bound if whole else LARGEST
    return within_bounds(pen, Value(value.text, True, bound))


def within_bounds(pen: Pen, value: Value) -> Value:
    """Return the number, unknown where it ran out of all bounds; nothing is written where it can't."""
    if value.bound <= _SAFE:
        return value
    name = pen.name("v")
    pen.line(f"{name} = {value.text}")
    there = f"{name} is not None and " if value.none else ""
    pen.line(f"if {there}not -{LARGEST!r} <= {name} <= {LARGEST!r}: {name} = None")
    return Value(name, True, LARGEST, True)


def choose(pen: Pen, node: Choose) -> Value:
    """Return one of two values; an unknown test leaves it unknown."""
    test = tested(pen, node.test)
    start, name = pen.place(), pen.name("v")
    if test.none:
        test = pen.named(test)
        pen.line(f"{name} = None")
        pen.enter(f"if {test.text} is not None:")
    whole = pen.place()
    yes, first = _branch(pen, f"if {test.text}:", name, node, True)
    no, second = _branch(pen, "else:", name, node, False)
    inline = first and second
    if inline:
        pen.back(whole if test.none else start)
    value = Value(f"({yes.text} if {test.text} else {no.text})", yes.none or no.none, max(yes.bound, no.bound))
    if test.none:
        if inline:
            pen.line(f"{name} = {value.text}")
        pen.leave()
        return Value(name, True, value.bound, True)
    return value if inline else Value(name, value.none, value.bound, True)


def _branch(pen: Pen, head: str, name: str, node: Choose, holds: bool) -> tuple[Value, bool]:
    """Write one side; say whether it is one expression."""
    pen.enter(head)
    start: Place = pen.place()
    value = pen.value(node.yes if holds else node.no)
    quiet = pen.quiet(start)
    pen.line(f"{name} = {value.text}")
    pen.leave()
    return value, quiet


def unless_missing(pen: Pen, values: Sequence[Value], write: Writer, bound: float = LARGEST) -> Value:
    """Return what is worked from values, unknown where one of them is missing."""
    if not any(value.none for value in values):
        return Value(write([value.text for value in values]), False, bound)
    named = [pen.named(value) if value.none else value for value in values]
    return Value(f"(None if {missing(named)} else {write([each.text for each in named])})", True, bound)


def missing(values: Sequence[Value]) -> str:
    """Return the test whether one of the named values is missing."""
    return " or ".join(dict.fromkeys(f"{value.text} is None" for value in values if value.none))
