"""Writes the statements of one generated function: fresh names, blocks, what is worked out already."""

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
        self.blocks: list[int] = []
        self.variables: dict[str, str] = {}
        self.lent: dict[str, Function] = {}
        self.wholes: dict[int, tuple[Any, ...]] = {}
        self.heads: dict[str, Value] = {}
        self.rounded: dict[str, tuple[Value, str]] = {}
        self.first = 0
        self._known: dict[Hashable, Any] = {}
        self._learned: list[Hashable] = []
        self._names = 0

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

    def enter(self, head: str) -> None:
        """Begin a block."""
        self.line(head)
        self.blocks.append(len(self._learned))

    def leave(self) -> None:
        """End a block; what was worked out inside is not to be relied upon after it."""
        if self.lines[-1].endswith(":"):
            self.line("pass")
        self._forget(self.blocks.pop())

    def place(self) -> Place:
        """Return this point of the text."""
        return Place(len(self.lines), len(self._learned), len(self.blocks))

    def quiet(self, since: Place) -> bool:
        """Whether nothing was written since a point."""
        return len(self.lines) == since.lines

    def back(self, to: Place) -> None:
        """Strike out what was written since a point."""
        del self.lines[to.lines :]
        del self.blocks[to.blocks :]
        self._forget(to.learned)

    def learn(self, key: Hashable, value: Any) -> None:
        """Keep what was worked out for the rest of the block."""
        self._known[key] = value
        self._learned.append(key)

    def recall(self, key: Hashable) -> Any:
        """Return what was worked out before, None where nothing was."""
        return self._known.get(key)

    def record(self, event: str, kept: str | None) -> None:
        """Write an event, and the operands that it holds only in part."""
        self.line(f"E({event})")
        if kept is not None:
            self.line(f"W({kept})")

    def round_ahead(self, value: Value) -> str | None:
        """Return the name of a number to six decimals, to be rounded at the head; None for one that isn't there."""
        known = self.heads.get(value.text)
        if known is None:
            return None
        name = f"r{value.text[1:]}"
        self.rounded[known.text] = known, name
        return name

    def _forget(self, learned: int) -> None:
        for key in self._learned[learned:]:
            self._known.pop(key, None)
        del self._learned[learned:]
