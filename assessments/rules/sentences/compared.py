"""The values a finding shows: everything a rule compared, with its unit, the limits written in the rule included."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import Any

from assessments.rules.checking.checker import Checked
from assessments.rules.frame import RawEvent
from assessments.rules.nodes import Call, Comparison, Field, Item, Node, Quantifier, Root
from assessments.rules.sentences.spoken import called, is_written, unit_of
from assessments.rules.units import difference

MAX_VALUES = 12
_MAX_ITEMS = 40
_NAMED = {"near": "within", "near_rel": "within"}


@dataclass(frozen=True, slots=True)
class Compared:
    """One value: its path (`answer.dew_point`), what it was worked out from, or `limit` and `within`; and its unit."""

    name: str
    value: Any
    unit: str | None

    def as_json(self) -> dict[str, Any]:
        """Return the value in the shape of the `mark` door."""
        return {"name": self.name, "value": self.value, "unit": self.unit}


def compared(checked: Checked, events: Iterable[RawEvent]) -> tuple[Compared, ...]:
    """Return what a run compared, each once, in the order it was looked at, at most twelve values."""
    found: dict[tuple[str, str], Compared] = {}
    places: dict[tuple[str, ...], int] = {}
    for number, _, operands in events:
        node = checked.nodes[number]
        _remember(node, operands, places)
        for each in _of(node, operands, places):
            found.setdefault((each.name, repr(each.value)), each)
    return tuple(found.values())[:MAX_VALUES]


def _remember(node: Node, operands: tuple[Any, ...], places: dict[tuple[str, ...], int]) -> None:
    """Keep the place of the item that decided, for the names of its fields."""
    if isinstance(node, Quantifier) and node.items.sort.path and operands and operands[1] is not None:
        places[(*node.items.sort.path, "[]")] = operands[1] + 1


def _of(node: Node, operands: tuple[Any, ...], places: dict[tuple[str, ...], int]) -> Iterator[Compared]:
    if isinstance(node, Comparison):
        for place, value in enumerate(operands):
            yield _one(node.parts[place], value, _beside(node.parts, place), places, "limit")
    elif isinstance(node, Call) and node.name != "answered":
        for place, (part, value) in enumerate(zip(node.arguments, operands, strict=True)):
            last = node.name in _NAMED and place == 2
            yield _tolerance(node, value) if last else _one(part, value, node.arguments[0], places, "limit")


def _beside(parts: tuple[Node, ...], place: int) -> Node:
    """Return the neighbour whose unit a written value takes."""
    return parts[place - 1] if place else parts[1]


def _tolerance(node: Call, value: Any) -> Compared:
    target, tolerance = node.arguments[0], node.arguments[2]
    apart = difference(target.sort.unit or node.arguments[1].sort.unit)
    unit = "%" if node.name == "near_rel" else apart.text if apart and apart.powers else None
    return Compared(_NAMED[node.name], value, unit_of(tolerance) or unit)


def _one(node: Node, value: Any, beside: Node, places: dict[tuple[str, ...], int], written: str) -> Compared:
    if is_written(node):
        return Compared(written, value, unit_of(node) or unit_of(beside))
    return Compared(_name(node, places), _kept(value), unit_of(node))


def _name(node: Node, places: dict[tuple[str, ...], int]) -> str:
    path = node.sort.path
    if path is None or not isinstance(node, Field | Item | Root):
        return called(node)
    name = ""
    for place, part in enumerate(path):
        number = places.get(path[: place + 1]) if part == "[]" else None
        name += (f"[{number}]" if number else "[]") if part == "[]" else f".{part}"
    return name.removeprefix(".")


def _kept(value: Any) -> Any:
    """Return the value, a list of records as how many there were."""
    if isinstance(value, list):
        return len(value) if any(isinstance(item, dict) for item in value) else value[:_MAX_ITEMS]
    return value
