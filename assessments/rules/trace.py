"""What a run looked at, small enough to be stored with every mark."""

from __future__ import annotations

import json
from collections.abc import Iterable
from dataclasses import dataclass
from typing import Any

MAX_BYTES = 4096
MAX_TEXT = 40
DIGITS = 6

Event = tuple[Any, ...]


@dataclass(frozen=True, slots=True)
class Trace:
    """Events in the order they happened: (number of the part, result, operands…); `cut` when some were left out.

    `failed` is the sentence of a lent function that raised.

    >>> Trace(((3, True, 9.3, 9.4, 0.5),)).as_json()
    {'events': [[3, True, 9.3, 9.4, 0.5]]}
    """

    events: tuple[Event, ...] = ()
    cut: bool = False
    failed: str | None = None

    def as_json(self) -> dict[str, Any]:
        """Return the trace as plain lists; `from_json` reads it back."""
        kept: dict[str, Any] = {"events": [list(event) for event in self.events]}
        if self.cut:
            kept["cut"] = True
        if self.failed:
            kept["failed"] = self.failed
        return kept

    @classmethod
    def from_json(cls, kept: dict[str, Any]) -> Trace:
        """Return the trace that was stored.

        >>> Trace.from_json({"events": [[1, None]], "cut": True})
        Trace(events=((1, None),), cut=True, failed=None)
        """
        events = tuple(tuple(event) for event in kept["events"])
        return cls(events, kept.get("cut", False), kept.get("failed"))


def small(value: Any) -> Any:
    """Return a value as it is stored.

    >>> small(1 / 3), small([1, 2, 3])
    (0.333333, [3])
    """
    if isinstance(value, float):
        return round(value, DIGITS)
    if isinstance(value, str):
        return value if len(value) <= MAX_TEXT else f"{value[: MAX_TEXT - 1]}…"
    if isinstance(value, list):
        return [len(value)]
    return value


def size(kept: Any) -> int:
    """Return the bytes of a value as compact JSON.

    >>> size({"events": []})
    13
    """
    return len(json.dumps(kept, separators=(",", ":"), ensure_ascii=False).encode())


def packed(traces: Iterable[tuple[str, str, Trace]], most: int = MAX_BYTES) -> dict[str, Any]:
    """Return the traces of a whole mark, given as (rule, part, trace), as JSON of at most so many bytes.

    What doesn't fit is cut: every rule keeps the first events of its fair share, and `cut` says so.

    >>> packed([("R21", "test", Trace(((2, True, "wait", "wait"),)))])
    {'rules': {'R21': [['test', 2, True, 'wait', 'wait']]}}
    """
    rules: dict[str, list[list[Any]]] = {}
    for code, part, trace in traces:
        rules.setdefault(code, []).extend([part, *event] for event in trace.events)
    whole = {"rules": {code: events for code, events in rules.items() if events}}
    return whole if size(whole) <= most else _fair_shares(whole["rules"], most)


def _fair_shares(rules: dict[str, list[list[Any]]], most: int) -> dict[str, Any]:
    left = most - size({"rules": {}, "cut": True})
    kept: dict[str, list[list[Any]]] = {}
    for place, (code, events) in enumerate(rules.items()):
        fitting = _first(events, left // (len(rules) - place) - size({code: []}))
        if fitting:
            kept[code] = fitting
            left -= size({code: fitting})
    return {"rules": kept, "cut": True}


def _first(events: list[list[Any]], most: int) -> list[list[Any]]:
    """Return the first events that together take no more than so many bytes."""
    kept: list[list[Any]] = []
    for event in events:
        most -= size(event) + 1
        if most < 0:
            break
        kept.append(event)
    return kept


def unpacked(record: dict[str, Any], code: str, part: str) -> Trace:
    """Return the trace of one part of one rule out of a stored record.

    >>> unpacked({"rules": {"R21": [["test", 2, True]]}}, "R21", "test").events
    ((2, True),)
    """
    events = record["rules"].get(code, [])
    return Trace(tuple(tuple(event[1:]) for event in events if event[0] == part), record.get("cut", False))
