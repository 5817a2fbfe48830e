"""What the parts of a reading share: labels, the reader's units, what a loop variable is called, and each other."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Protocol

from assessments.rules.nodes import Field, Item, LiteralList, Node, Root
from assessments.rules.sentences.joining import Said
from assessments.rules.sentences.naming import Name, Noun, alternatives, field_words, label, noun, option_words
from assessments.rules.sentences.spoken import Show


@dataclass(frozen=True, slots=True)
class Reference:
    """What an item is called once it was named: `it`, and its fields: `its `; and the noun it was named by."""

    subject: str
    owner: str
    noun: Noun


class Teller(Protocol):
    """Whoever reads a rule back; the parts of the reading ask it for the parts of theirs."""

    @property
    def name(self) -> Name:
        """The caller's own labels."""

    @property
    def show(self) -> Show:
        """Writes a value in the reader's units."""

    @property
    def references(self) -> Mapping[str, Reference]:
        """What the loop variables in scope are called."""

    def amount(self, node: Node, beside: Node | None = None) -> str:
        """Return a value as words; one written in the rule takes the unit of what stands beside it."""

    def clause(self, node: Node, holds: bool = True) -> Said:
        """Return a yes/no as a clause, turned round where it has not to hold."""

    def knowing(self, variable: str, reference: Reference) -> Teller:
        """Return the teller of what is said of one item."""


def item_under(node: Node) -> Item | None:
    """Return the loop variable whose field a path reads, None for a path of the schema."""
    while isinstance(node, Field):
        node = node.of
    return node if isinstance(node, Item) else None


def own_words(teller: Teller, node: Field) -> str:
    """Return the name of an item's field without its owner: the family."""
    said = teller.name(node.sort.path) if node.sort.path else None
    if said is not None:
        return said
    words = field_words(node.name, node.sort.unit, node.sort.is_number)
    return f"{own_words(teller, node.of)} {words}" if isinstance(node.of, Field) else words


def called(teller: Teller, node: Root | Field | Item) -> str:
    """Return what a path is called: the trainee's dew point, its family, that zone."""
    item = item_under(node)
    if item is None:
        return label(node.sort.path or (node.name,), node.sort.unit, teller.name)
    reference = teller.references[item.name]
    return f"{reference.owner}{own_words(teller, node)}" if isinstance(node, Field) else reference.subject


def items_noun(teller: Teller, items: Node) -> Noun:
    """Return the noun of the items of a list, however the list is given."""
    path = items.sort.path
    if isinstance(items, LiteralList):
        return Noun("item", "items", f" of {alternatives([option_words(each) for each in items.values], 'and')}")
    if path is None or item_under(items):
        return noun(None, teller.amount(items))
    return noun(path, teller.amount(items), teller.name(path) is not None)


def list_of(node: Item) -> tuple[str, ...] | None:
    """Return the path of the list that a loop variable walks."""
    return node.sort.path[:-1] if node.sort.path else None
