"""A checked rule as a tree of its own: what is compiled, what a trace numbers, what a sentence is read from."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from assessments.rules.functions import Function
from assessments.rules.kinds import Kind
from assessments.rules.units import Unit

Path = tuple[str, ...]
NOTHING: frozenset[str] = frozenset()


@dataclass(frozen=True, slots=True)
class Sort:
    """What the checker knows of an expression before any case is read.

    `missing` names whose absence can make it unknown (a root, a loop variable, `()` for a computed value); `roots`
    are the roots it reads; `base` is the name its path starts with; `literal` holds the values written in the rule.
    A Sort without a kind belongs to a part that is already faulted.
    """

    kind: Kind | None = None
    unit: Unit | None = None
    missing: frozenset[str] = NOTHING
    roots: frozenset[str] = NOTHING
    path: Path | None = None
    base: str | None = None
    literal: tuple[Any, ...] | None = None
    normed: bool = False

    @property
    def name(self) -> str:
        """The name of its kind, empty for a faulted part."""
        return self.kind.name if self.kind else ""

    @property
    def is_number(self) -> bool:
        """Whether it counts as a number."""
        return self.kind is not None and self.kind.is_number


@dataclass(frozen=True, slots=True)
class Node:
    """One part of a rule: its number in the trace and its place in the text."""

    number: int
    start: int
    end: int
    sort: Sort


@dataclass(frozen=True, slots=True)
class Broken(Node):
    """A part that was refused; a rule that holds one never runs."""


@dataclass(frozen=True, slots=True)
class Literal(Node):
    """A value written in the rule."""

    value: Any


@dataclass(frozen=True, slots=True)
class LiteralList(Node):
    """A list written in the rule, with the place of each value."""

    values: tuple[Any, ...]
    places: tuple[tuple[int, int], ...]


@dataclass(frozen=True, slots=True)
class Root(Node):
    """A name of the schema."""

    name: str


@dataclass(frozen=True, slots=True)
class Item(Node):
    """The loop variable of a quantifier."""

    name: str


@dataclass(frozen=True, slots=True)
class Field(Node):
    """A field of a record."""

    of: Node
    name: str


@dataclass(frozen=True, slots=True)
class Not(Node):
    """A yes/no turned round."""

    of: Node


@dataclass(frozen=True, slots=True)
class Minus(Node):
    """A number with its sign turned."""

    of: Node


@dataclass(frozen=True, slots=True)
class Logic(Node):
    """Parts joined by `and` or `or`."""

    word: str
    parts: tuple[Node, ...]


@dataclass(frozen=True, slots=True)
class Arithmetic(Node):
    """Two numbers joined by `+ - * /`."""

    sign: str
    left: Node
    right: Node


@dataclass(frozen=True, slots=True)
class Choose(Node):
    """`yes if test else no`."""

    test: Node
    yes: Node
    no: Node


@dataclass(frozen=True, slots=True)
class Comparison(Node):
    """A comparison, or a chain of them; each part is worked out once."""

    signs: tuple[str, ...]
    parts: tuple[Node, ...]


@dataclass(frozen=True, slots=True)
class Quantifier(Node):
    """`word(test for variable in items if keep)`."""

    word: str
    variable: str
    items: Node
    keep: Node | None
    test: Node


@dataclass(frozen=True, slots=True)
class Call(Node):
    """A word of the language or a lent function, called."""

    name: str
    arguments: tuple[Node, ...]
    function: Function | None
