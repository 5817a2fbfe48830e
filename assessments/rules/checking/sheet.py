"""What the checker writes on while it reads one rule: names in scope, cost so far, faults and warnings."""

from __future__ import annotations

import ast
from collections.abc import Mapping
from contextlib import contextmanager
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any, Protocol, TypeVar

from assessments.rules.checking.language import Parsed
from assessments.rules.faults import Fault, nearest, offered
from assessments.rules.functions import Function
from assessments.rules.kinds import Schema
from assessments.rules.nodes import Broken, Node, Path, Sort

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

MOST_FAULTS = 20
Some = TypeVar("Some", bound=Node)


class Reader(Protocol):
    """Reads one part of a rule into a node; the checker lends itself in this shape."""

    def __call__(self, part: ast.expr) -> Node:
        """Return the node of a part; what is wrong with it stands on the sheet."""


@dataclass(slots=True)
class Sheet:
    """The state of one check; it ends with the check."""

    parsed: Parsed
    schema: Schema
    functions: Mapping[str, Function]
    faults: list[Fault] = field(default_factory=list)
    warnings: list[Fault] = field(default_factory=list)
    nodes: list[Node] = field(default_factory=list)
    reads: set[Path] = field(default_factory=set)
    variables: dict[str, Sort] = field(default_factory=dict)
    given: frozenset[str] = frozenset()
    factor: int = 1
    cost: int = 0

    def node(self, shape: type[Some], part: ast.AST, sort: Sort, *rest: Any) -> Some:
        """Return a numbered node of a shape for a part of the text."""
        made = shape(len(self.nodes), *self.parsed.place(part), sort, *rest)
        self.nodes.append(made)
        return made

    def said(self, part: ast.AST) -> str:
        """Return the text of a part as it stands in the rule."""
        start, end = self.parsed.place(part)
        return self.parsed.text[start:end]

    def broken(self, part: ast.AST) -> Broken:
        """Return the node of a part that was refused."""
        return self.node(Broken, part, Sort())

    def refuse(self, part: ast.AST, sentence: str, near: str | None = None) -> Broken:
        """Note a fault at a part and return its node."""
        self.fault(*self.parsed.place(part), sentence, near)
        return self.broken(part)

    def fault(self, start: int, end: int, sentence: str, near: str | None = None) -> None:
        """Note a fault at a place, once, and no more than a screenful."""
        found = Fault(sentence, start, end, near)
        if found not in self.faults and len(self.faults) < MOST_FAULTS:
            self.faults.append(found)

    def unknown(self, start: int, end: int, what: str, name: str, names: Iterable[str]) -> None:
        """Note a name nobody knows, the nearest known one offered."""
        near = nearest(name, names) if len(self.faults) < MOST_FAULTS else None
        self.fault(start, end, offered(f"There is no {what} '{name}'", near), near)

    def warn(self, start: int, end: int, sentence: str, near: str | None = None) -> None:
        """Note a warning at a place, once."""
        found = Fault(sentence, start, end, near)
        if found not in self.warnings and len(self.warnings) < MOST_FAULTS:
            self.warnings.append(found)

    def spend(self, steps: int) -> None:
        """Add to the worst-case cost: steps, as often as the quantifiers round them run."""
        self.cost += self.factor * steps

    @contextmanager
    def assuming(self, given: frozenset[str]) -> Iterator[None]:
        """Read what follows knowing that these parts were answered."""
        before, self.given = self.given, self.given | given
        yield
        self.given = before

    @contextmanager
    def looping(self, variable: str, item: Sort, most: int) -> Iterator[None]:
        """Read what follows once for each item of a list, the variable in scope."""
        factor, self.factor = self.factor, self.factor * max(most, 1)
        self.variables[variable] = item
        yield
        del self.variables[variable]
        self.factor = factor
