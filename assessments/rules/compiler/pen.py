"""Writes the statements of one generated function: fresh names, blocks, what is worked out already, events to come."""

from __future__ import annotations

from collections.abc import Callable, Hashable, Mapping
from dataclasses import dataclass
from typing import Any

from assessments.rules.functions import Function
from assessments.rules.nodes import Node

INDENTS = tuple("    " * depth for depth in range(100))
"""Python reads a hundred levels; a rule is far less deep."""


@dataclass(frozen=True, slots=True)
class Value:
    """A value as an expression of generated code.

    `none` says that it may be None; `bound` is the largest a number can be; an `atom` is a name or a literal and may
    be written twice; `known` holds the value itself where the rule spells it out.
    """

    text: str
    none: bool = False
    bound: float = 1e300
    atom: bool = False
    known: tuple[Any, ...] = ()


@dataclass(frozen=True, slots=True)
class Place:
    """A point in the text to go back to when what follows can be said in one expression."""

    lines: int
    learned: int
    blocks: int
    stirred: int


Maker = Callable[["Pen", Any], Value]


class Pen:
    """The text of one function as far as it is written.

    Whatever has a name is assigned once, so that an expression of the same text means the same value within a block
    and those inside it. `silent` is None while what the checker settled is relied upon; else it names the roots of
    which an `answered(…)` that finds nothing is unknown.
    """

    def __init__(self, makers: Mapping[type[Node], Maker], recording: bool, silent: frozenset[str] | None) -> None:
        self.makers = makers
        self.traced = self.recording = recording
        self.silent = silent
        self.preamble: list[str] = []
        self.lines: list[str] = []
        self.blocks: list[tuple[int, int]] = []
        self.variables: dict[str, str] = {}
        self.lent: dict[str, Function] = {}
        self.wholes: dict[int, tuple[Any, ...]] = {}
        self.heads: frozenset[str] = frozenset()
        self.rounded: dict[str, str] = {}
        self.first = 0
        self.lends = False
        self._known: dict[Hashable, Any] = {}
        self._learned: list[Hashable] = []
        self._events: list[str] = []
        self._kept: list[str] = []
        self._level = 0
        self._closed = 0
        self._names = 0
        self._stirred = 0

    def value(self, node: Node) -> Value:
        """Return the value of a part; the statements it needs are written first."""
        return self.makers[type(node)](self, node)

    def name(self, letter: str) -> str:
        """Return a name nobody has had."""
        self._names += 1
        return f"{letter}{self._names}"

    def line(self, text: str) -> None:
        """Write one statement."""
        self.lines.append(INDENTS[len(self.blocks) + 1] + text)
        self._stirred += 1

    def named(self, value: Value, letter: str = "v") -> Value:
        """Return the value under a name, so that it may be written twice."""
        if value.atom:
            return value
        known: Value | None = self.recall(value.text)
        if known is None:
            name = self.name(letter)
            self.line(f"{name} = {value.text}")
            known = Value(name, value.none, value.bound, True)
            self.learn(value.text, known)
        return known

    def open(self, head: str) -> None:
        """Begin a block; what goes on from a block just closed has the head of that."""
        self.line(head)
        first = self._closed if head.startswith("el") else len(self.lines) - 1
        self.blocks.append((first, len(self._learned)))

    def close(self) -> None:
        """End a block; what was worked out inside is not to be relied upon after it."""
        if self._level == len(self.blocks):
            self.flush()
        head, learned = self.blocks[-1]
        if self.lines[-1].endswith(":"):
            self.line("pass")
        self._forget(learned)
        self.blocks.pop()
        self._closed = head

    def place(self) -> Place:
        """Return this point of the text."""
        return Place(len(self.lines), len(self._learned), len(self.blocks), self._stirred)

    def quiet(self, since: Place) -> bool:
        """Whether nothing was written or recorded since a point."""
        return self._stirred == since.stirred

    def back(self, to: Place) -> None:
        """Strike out what was written since a point; nothing may have been recorded since."""
        del self.lines[to.lines :]
        del self.blocks[to.blocks :]
        self._forget(to.learned)
        self._stirred = to.stirred

    def learn(self, key: Hashable, value: Any) -> None:
        """Keep what was worked out for the rest of the block."""
        self._known[key] = value
        self._learned.append(key)

    def recall(self, key: Hashable) -> Any:
        """Return what was worked out before, None where nothing was."""
        return self._known.get(key)

    def record(self, event: str, kept: str | None) -> None:
        """Note an event, and the operands it holds only in part; both are written together with the next ones."""
        if self._events and self._level != len(self.blocks):
            self.flush()
        self._level = len(self.blocks)
        self._events.append(event)
        if kept is not None:
            self._kept.append(kept)
        self._stirred += 1

    def round_ahead(self, name: str) -> str | None:
        """Return the name of a number to six decimals, to be rounded at the head; None for one that isn't there."""
        if name not in self.heads:
            return None
        return self.rounded.setdefault(name, f"r{name[1:]}")

    def flush(self) -> None:
        """Write the events on their way, before the block that was begun since and before whatever may raise."""
        for one, many, waiting in (("E", "X", self._events), ("W", "Y", self._kept)):
            if waiting:
                text = f"{one}({waiting[0]})" if len(waiting) == 1 else f"{many}(({', '.join(waiting)}))"
                self._write_at(self._level, text)
                waiting.clear()

    def _write_at(self, level: int, text: str) -> None:
        """Write a statement at the end of a block, before any block that was begun in it and is open still."""
        if level == len(self.blocks):
            self.line(text)
            return
        self.lines.insert(self.blocks[level][0], INDENTS[level + 1] + text)
        self.blocks[level:] = [(head + 1, learned) for head, learned in self.blocks[level:]]

    def _forget(self, learned: int) -> None:
        for key in self._learned[learned:]:
            self._known.pop(key, None)
        del self._learned[learned:]
