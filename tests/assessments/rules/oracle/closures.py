"""From a checked rule to closures that judge a case. Three-valued throughout: None is unknown and no case can raise."""

from __future__ import annotations

import operator
from collections.abc import Callable
from typing import Any

from assessments.rules.checking.words import WORDS
from assessments.rules.faults import FunctionFailed
from assessments.rules.functions import Function
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
    Quantifier,
    Root,
)
from tests.assessments.rules.oracle.frame import Frame, Run, finite
from tests.assessments.rules.oracle.loops import quantified

_COMPARE: dict[str, Callable[[Any, Any], bool]] = {
    "<": operator.lt,
    "<=": operator.le,
    ">": operator.gt,
    ">=": operator.ge,
    "==": operator.eq,
    "!=": operator.ne,
    "in": lambda value, items: value in items,
    "not in": lambda value, items: value not in items,
}


def closure(node: Node) -> Run:
    """Return the closure of a node; it gives the node's value on a frame, None where that is unknown."""
    return _MAKERS[type(node)](node)


def tested(node: Node) -> Run:
    """Return the closure of a yes/no in the place of a test; a bare field is recorded: nothing else shows it."""
    run = closure(node)
    if not isinstance(node, Field | Item | Root):
        return run

    def recorded(frame: Frame) -> Any:
        value = run(frame)
        frame.note(node.number, value)
        return value

    return recorded


def _literal(node: Literal) -> Run:
    value = node.value
    return lambda frame: value


def _literal_list(node: LiteralList) -> Run:
    values = list(node.values)
    return lambda frame: values


def _root(node: Root) -> Run:
    name = node.name
    return lambda frame: frame.case[name]


def _item(node: Item) -> Run:
    name = node.name
    return lambda frame: frame.variables[name]


def _field(node: Field) -> Run:
    owner, name = closure(node.of), node.name

    def run(frame: Frame) -> Any:
        record = owner(frame)
        return None if record is None else record[name]

    return run


def _not(node: Not) -> Run:
    part = tested(node.of)

    def run(frame: Frame) -> bool | None:
        value: bool | None = part(frame)
        return None if value is None else not value

    return run


def _minus(node: Minus) -> Run:
    part = closure(node.of)

    def run(frame: Frame) -> Any:
        value = part(frame)
        return None if value is None else -value

    return run


def _logic(node: Logic) -> Run:
    """Kleene's strong `and` and `or`: one deciding part decides, else one unknown part leaves it unknown."""
    parts = [tested(part) for part in node.parts]
    decides = node.word == "or"

    def run(frame: Frame) -> bool | None:
        result: bool | None = not decides
        for part in parts:
            value: bool | None = part(frame)
            if value is decides:
                return decides
            if value is None:
                result = None
        return result

    return run


def _arithmetic(node: Arithmetic) -> Run:
    left, right, work_out = closure(node.left), closure(node.right), _ARITHMETIC[node.sign]

    def run(frame: Frame) -> float | None:
        a, b = left(frame), right(frame)
        return None if a is None or b is None else work_out(a, b)

    return run


def _finite(work_out: Callable[[float, float], float]) -> Callable[[float, float], float | None]:
    """Return the operation with unknown for what has no finite result: a division by zero, an overflow."""

    def run(a: float, b: float) -> float | None:
        try:
            return finite(work_out(a, b))
        except (ZeroDivisionError, OverflowError):
            return None

    return run


_ARITHMETIC = {
    "+": _finite(operator.add),
    "-": _finite(operator.sub),
    "*": _finite(operator.mul),
    "/": _finite(operator.truediv),
}


def _choose(node: Choose) -> Run:
    test, yes, no = tested(node.test), closure(node.yes), closure(node.no)

    def run(frame: Frame) -> Any:
        holds = test(frame)
        if holds is None:
            return None
        return yes(frame) if holds else no(frame)

    return run


def _comparison(node: Comparison) -> Run:
    """A chain stops where it is decided; what was not looked at is not in the trace."""
    parts = [closure(part) for part in node.parts]
    compares = [_COMPARE[sign] for sign in node.signs]

    def run(frame: Frame) -> bool | None:
        values = [parts[0](frame)]
        result: bool | None = True
        for compare, part in zip(compares, parts[1:], strict=True):
            values.append(part(frame))
            a, b = values[-2:]
            holds = None if a is None or b is None else compare(a, b)
            if holds is False:
                result = False
                break
            result = None if holds is None else result
        frame.note(node.number, result, *values)
        return result

    return run


def _call(node: Call) -> Run:
    if node.name == "answered":
        return _answered(node)
    arguments = [closure(part) for part in node.arguments]
    call = _lent(node.function) if node.function else WORDS[node.name].call
    recorded = node.sort.name == "bool" or node.function is not None

    def run(frame: Frame) -> Any:
        values = [argument(frame) for argument in arguments]
        result = None if any(value is None for value in values) else call(*values)
        if recorded:
            frame.note(node.number, result, *values)
        return result

    return run


def _answered(node: Call) -> Run:
    part, roots = closure(node.arguments[0]), node.arguments[0].sort.roots

    def run(frame: Frame) -> bool | None:
        missing = part(frame) is None
        result = None if missing and roots & frame.silent else not missing
        frame.note(node.number, result)
        return result

    return run


def _lent(function: Function) -> Callable[..., Any]:
    """Return a lent function whose every exception carries its name and whose values are of the kind it promised."""
    promised = _PROMISED[function.returns.name]

    def run(*values: Any) -> Any:
        try:
            result = function.call(*values)
            if result is not None and type(result) not in promised:
                raise TypeError(f"it gave {result!r:.40} where {function.returns.spoken} was promised")
        except Exception as error:
            raise FunctionFailed(function.name, error) from error
        return finite(result) if isinstance(result, float) else result

    return run


def _quantifier(node: Quantifier) -> Run:
    yes_no = node.word in ("every", "any", "count")
    body = tested(node.test) if yes_no else closure(node.test)
    return quantified(node, closure(node.items), tested(node.keep) if node.keep else None, body)


_PROMISED: dict[str, tuple[type, ...]] = {
    "num": (float, int),
    "int": (int,),
    "bool": (bool,),
    "str": (str,),
    "enum": (str,),
}
_MAKERS: dict[type[Node], Callable[[Any], Run]] = {
    Literal: _literal,
    LiteralList: _literal_list,
    Root: _root,
    Item: _item,
    Field: _field,
    Not: _not,
    Minus: _minus,
    Logic: _logic,
    Arithmetic: _arithmetic,
    Choose: _choose,
    Comparison: _comparison,
    Call: _call,
    Quantifier: _quantifier,
}
