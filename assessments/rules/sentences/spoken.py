"""How the parts of a rule are called in a sentence."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from assessments.rules.nodes import Arithmetic, Call, Field, Item, Literal, LiteralList, Minus, Node, Quantifier, Root
from assessments.rules.units import Unit

Show = Callable[[Any, str | None], str]
_SYMBOLS = {"degc": "°C", "degC": "°C", "rh": "%", "pct": "%", "um": "µm", "m2": "m²", "m3": "m³", "ml": "mL", "l": "L"}
SIGNS = {"+": "+", "-": "−", "*": "×", "/": "÷"}
_WALKED = {
    "count": "number of",
    "sum": "sum over",
    "least": "least of",
    "most": "most of",
    "every": "every",
    "any": "any",
}


def plain(value: Any, unit: str | None) -> str:
    """Return a value as text in the base unit; a shell passes its own to show the reader's units.

    >>> plain(9.3, "K"), plain(True, None)
    ('9.3\\xa0K', 'yes')
    """
    if isinstance(value, bool):
        return "yes" if value else "no"
    if not isinstance(value, int | float):
        return str(value)
    said = f"{value:.6g}".replace("-", "−")
    return f"{said}\u00a0{_SYMBOLS.get(unit, unit)}" if unit else said


def called(node: Node) -> str:
    """Return what a part is called: `answer.dew_point` is the dew point."""
    if isinstance(node, Root | Item | Field):
        return _words(node.name, node.sort.unit)
    if isinstance(node, Literal):
        return plain(node.value, None)
    if isinstance(node, LiteralList):
        return f"({', '.join(plain(value, None) for value in node.values)})"
    if isinstance(node, Arithmetic):
        return f"{called(node.left)} {SIGNS[node.sign]} {called(node.right)}"
    if isinstance(node, Minus):
        return f"−{called(node.of)}"
    if isinstance(node, Quantifier):
        return f"{_WALKED[node.word]} {called(node.items)}"
    if isinstance(node, Call):
        return _call(node)
    return "this"


def _words(name: str, unit: Unit | None) -> str:
    """Return a field name as words, without the unit at its end."""
    ending = f"_{unit.text.lower()}" if unit and unit.text != "rh" else ""
    return (name.removesuffix(ending) if ending else name).replace("_", " ")


def _call(node: Call) -> str:
    arguments = " and ".join(called(each) for each in node.arguments)
    return arguments if node.name == "norm" else f"{node.name.replace('_', ' ')} of {arguments}"


def unit_of(node: Node) -> str | None:
    """Return the unit of a part as declared, None for pure numbers and what has none."""
    unit = node.sort.unit
    return unit.text if unit and unit.powers else None


def is_written(node: Node) -> bool:
    """Whether the part is a value written in the rule."""
    return node.sort.literal is not None
