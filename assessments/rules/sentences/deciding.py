"""Which item of a list decided, by name: a trace keeps its place, the case knows what stood there."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

from assessments.rules.nodes import Field, Item, LiteralList, Node, Quantifier, Root
from assessments.rules.sentences.naming import noun, option_words


@dataclass(slots=True)
class Deciders:
    """The items that decided so far; without a case none of them has a name."""

    case: Mapping[str, Any] | None = None
    items: dict[str, Any] = field(default_factory=dict)

    def called(self, node: Quantifier, place: int) -> str | None:
        """Return the item at a place (from 0) as "step 3 (sand)", None where the case doesn't tell.

        It is kept as the item its quantifier stands at, for the lists inside it.
        """
        listed = self.listed(node)
        if listed is None or place >= len(listed):
            return None
        item = self.items[node.variable] = listed[place]
        one = noun(node.items.sort.path, "").one
        if isinstance(item, Mapping) and isinstance(item.get("op"), str):
            return f"{one} {item.get('n', place + 1)} ({option_words(item['op'])})"
        return f"{one} {option_words(item)}" if isinstance(item, str) else None

    def listed(self, node: Quantifier) -> Sequence[Any] | None:
        """Return the list a quantifier walked, None where the case doesn't tell."""
        return self._listed(node.items)

    def acts(self, steps: Node) -> list[tuple[int, str]] | None:
        """Return number and act of each step of a list, None where the case doesn't tell."""
        listed = self._listed(steps)
        if listed is None or not all(isinstance(step, Mapping) and isinstance(step.get("op"), str) for step in listed):
            return None
        return [(step.get("n", place), step["op"]) for place, step in enumerate(listed, start=1)]

    def _listed(self, node: Node) -> Sequence[Any] | None:
        found = self._value(node)
        return found if isinstance(found, list | tuple) else None

    def _value(self, node: Node) -> Any:
        if isinstance(node, Field):
            owner = self._value(node.of)
            return owner.get(node.name) if isinstance(owner, Mapping) else None
        if isinstance(node, LiteralList):
            return node.values
        known = {Root: self.case or {}, Item: self.items}.get(type(node))
        return known.get(node.name) if known and isinstance(node, Root | Item) else None
