"""How quantifiers run: over all items in silence, then once more over the item that decided, recorded."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Any

from assessments.rules.nodes import Quantifier
from tests.assessments.rules.oracle.frame import Frame, Run, finite

Outcome = tuple[Any, int, int | None]
Values = list[tuple[int, Any]]


def quantified(node: Quantifier, items: Run, keep: Run | None, body: Run) -> Run:
    """Return the closure of a quantifier.

    Its event holds how many items were tested and the place (from 0) of the one that decided; that item's own events
    follow. The size of a trace therefore grows with the rule, not with the list.
    """
    settle = _SETTLED[node.word]

    def run(frame: Frame) -> Any:
        listed = items(frame)
        if listed is None:
            frame.note(node.number, None)
            return None
        events, frame.events = frame.events, None
        result, tested, place = settle(_walk(frame, node.variable, listed, keep, body))
        frame.events = events
        frame.note(node.number, result, tested, place)
        if events is not None and place is not None:
            frame.variables[node.variable] = listed[place]
            body(frame)
        frame.variables.pop(node.variable, None)
        return result

    return run


def _walk(frame: Frame, variable: str, items: Sequence[Any], keep: Run | None, body: Run) -> Callable[[Any], Values]:
    """Return a walk that stops after the first value equal to the one that decides; what no filter keeps is left out.

    An item of which the filter is unknown counts with an unknown value.
    """

    def walk(decides: Any) -> Values:
        values: Values = []
        for place, item in enumerate(items):
            frame.variables[variable] = item
            kept = True if keep is None else keep(frame)
            if kept is False:
                continue
            values.append((place, body(frame) if kept else None))
            if decides is not None and values[-1][1] is decides:
                break
        return values

    return walk


Walk = Callable[[Any], Values]


def _decided(decides: bool) -> Callable[[Walk], Outcome]:
    """Settle `any` (a True decides) or `every` (a False decides); else one unknown item leaves it unknown."""

    def settle(walk: Walk) -> Outcome:
        values = walk(decides)
        if values and values[-1][1] is decides:
            return decides, len(values), values[-1][0]
        for place, value in values:
            if value is None:
                return None, len(values), place
        return not decides, len(values), None

    return settle


def _count(walk: Walk) -> Outcome:
    values = walk(None)
    unknown = _first_unknown(values)
    found = sum(1 for _, value in values if value)
    return (found if unknown is None else None), len(values), unknown


def _sum(walk: Walk) -> Outcome:
    values = walk(None)
    unknown = _first_unknown(values)
    if unknown is not None:
        return None, len(values), unknown
    total: float = 0
    for _, value in values:
        total += value
    return finite(total), len(values), None


def _extreme(sign: int) -> Callable[[Walk], Outcome]:
    """Settle `least` or `most`; of no items it is unknown."""

    def settle(walk: Walk) -> Outcome:
        values = walk(None)
        unknown = _first_unknown(values)
        if unknown is not None or not values:
            return None, len(values), unknown
        place, value = max(values, key=lambda each: sign * each[1])
        return value, len(values), place

    return settle


def _first_unknown(values: Values) -> int | None:
    return next((place for place, value in values if value is None), None)


_SETTLED: dict[str, Callable[[Walk], Outcome]] = {
    "every": _decided(False),
    "any": _decided(True),
    "count": _count,
    "sum": _sum,
    "least": _extreme(-1),
    "most": _extreme(1),
}
