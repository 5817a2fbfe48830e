"""A checked rule read back as one plain sentence, so that whoever put it together sees what it asks."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace
from types import MappingProxyType
from typing import Any

from assessments.rules.checking.checker import Checked
from assessments.rules.nodes import Call, Choose, Comparison, Field, Literal, Logic, Node, Not, Quantifier, Root
from assessments.rules.sentences.amounts import amount
from assessments.rules.sentences.joining import BODY, INSIDE, TOP, Said, group, spoken
from assessments.rules.sentences.naming import Name, is_plural, option_words, unnamed
from assessments.rules.sentences.predicates import Statement, be, statement
from assessments.rules.sentences.spoken import Show, plain
from assessments.rules.sentences.telling import Reference, Teller, items_noun
from assessments.rules.sentences.walks import WALKS, counted, number


def read_back(checked: Checked, name: Name | None = None, show: Show = plain) -> str:
    """Return what a rule asks as one whole sentence; nothing for a rule with errors.

    `name(path)` gives a path the caller's own label, `show(value, unit)` writes values in the reader's units.

    >>> from assessments.rules.checking.checker import check
    >>> from assessments.rules.kinds import Schema, num, record
    >>> schema = Schema({"answer": record({"margin": num("K")}), "key": record({"margin": num("K")})})
    >>> read_back(check("answer.margin >= 3 and near(answer.margin, key.margin, 0.5)", schema)).replace(chr(160), " ")
    "The trainee's margin is at least 3 K, and the trainee's margin is within 0.5 K of the key's margin."
    """
    if checked.root is None:
        return ""
    teller = reading(name, show)
    said = _whole(teller, checked.root)
    first = len(said) - len(said.lstrip("("))
    return f"{said[:first]}{said[first : first + 1].upper()}{said[first + 1 :]}."


def reading(name: Name | None = None, show: Show = plain) -> Reading:
    """Return who reads the parts of a rule back.

    >>> from assessments.rules.checking.checker import check
    >>> from assessments.rules.kinds import Schema, num
    >>> reading().amount(check("te + 3", Schema({"te": num("K")}), wants="num").root).replace(chr(160), " ")
    'the te + 3 K'
    """
    return Reading(name or unnamed, show)


def _whole(teller: Teller, root: Node) -> str:
    if root.sort.name == "bool":
        return spoken(teller.clause(root), TOP)
    return f"{'the share of the points' if root.sort.is_number else 'the value'} is {teller.amount(root)}"


_NOBODY: Mapping[str, Reference] = MappingProxyType({})


@dataclass(frozen=True, slots=True)
class Reading:
    """Reads parts back, each loop variable in scope with what it is called."""

    name: Name
    show: Show
    references: Mapping[str, Reference] = field(default_factory=lambda: _NOBODY)

    def knowing(self, variable: str, reference: Reference) -> Reading:
        """Return the teller of what is said of one item."""
        return replace(self, references={**self.references, variable: reference})

    def amount(self, node: Node, beside: Node | None = None) -> str:
        """Return a value as words."""
        if isinstance(node, Quantifier) and node.word not in WALKS:
            return number(self, node)
        return amount(self, node, beside)

    def clause(self, node: Node, holds: bool = True) -> Said:
        """Return a yes/no as a clause."""
        return _CLAUSES.get(type(node), _stated)(self, node, holds)


def _stated(teller: Teller, node: Node, holds: bool) -> Said:
    """Return a test as subject and predicate."""
    said = statement(teller, node, holds) or Statement(node, be("yes" if holds else "no"))
    subject = teller.amount(said.subject, said.beside)
    many = isinstance(said.subject, Root | Field) and is_plural(subject)
    return Said(f"{subject} {said.predicate.many if many else said.predicate.one}")


def _not(teller: Teller, node: Not, holds: bool) -> Said:
    return teller.clause(node.of, not holds)


def _logic(teller: Teller, node: Logic, holds: bool) -> Said:
    """Return parts joined; turned round, each part is turned and the word with it. `not a or b` is told as if, then."""
    if node.word == "or" and holds and len(node.parts) == 2 and isinstance(node.parts[0], Not):
        condition, then = teller.clause(node.parts[0].of), teller.clause(node.parts[1])
        return Said(f"if {spoken(condition, INSIDE)}, then {spoken(then, BODY)}", open=True)
    word = node.word if holds else {"and": "or", "or": "and"}[node.word]
    return group(word, [teller.clause(part, holds) for part in node.parts])


def _choose(teller: Teller, node: Choose, holds: bool) -> Said:
    test, yes, no = (teller.clause(node.test), teller.clause(node.yes, holds), teller.clause(node.no, holds))
    said = f"if {spoken(test, INSIDE)}, then {_closed(yes)}, and otherwise {_closed(no)}"
    return Said(said, open=True)


def _closed(said: Said) -> str:
    return f"({spoken(said, INSIDE)})" if said.is_group else said.text


def _comparison(teller: Teller, node: Comparison, holds: bool) -> Said:
    few = counted(teller, node, holds)
    if few is not None:
        return few
    if statement(teller, node, holds) is not None:
        return _stated(teller, node, holds)
    return group("and" if holds else "or", [teller.clause(link, holds) for link in _links(node)])


def _links(node: Comparison) -> list[Comparison]:
    pairs = zip(node.signs, node.parts, node.parts[1:], strict=False)
    return [replace(node, signs=(sign,), parts=(left, right)) for sign, left, right in pairs]


def _quantifier(teller: Teller, node: Quantifier, holds: bool) -> Said:
    return WALKS[node.word](teller, node, holds)


def _call(teller: Teller, node: Call, holds: bool) -> Said:
    make = _ORDERS.get(node.name)
    return make(teller, node, holds) if make else _stated(teller, node, holds)


def _literal(teller: Teller, node: Literal, holds: bool) -> Said:
    return Said("this always holds" if node.value is holds else "this never holds")


def _order(teller: Teller, node: Call, holds: bool) -> Said:
    a, b = _acts(node)
    first = "last" if node.name == "before" else "first"
    where = _where(teller, node)
    if holds:
        return Said(f"{where}the {first} {a} comes before the first {b}, and both are there", open=True)
    if node.name == "before":
        return Said(f"{where}the last {a} does not come before the first {b} (where both are there)")
    return Said(f"{where}no {a} comes before the first {b} (where there is one)")


def _after_each(teller: Teller, node: Call, holds: bool) -> Said:
    a, b = _acts(node)
    every, comes = ("every", "is") if holds else ("some", "is not")
    return Said(f"{_where(teller, node)}{every} {a} {comes} followed at once by {b}")


def _acts(node: Call) -> tuple[str, str]:
    a, b = (option_words(each) for part in node.arguments[1:] for each in part.sort.literal or ())
    return a, b


def _where(teller: Teller, node: Call) -> str:
    """Return which list the acts stand in, nothing for the steps of the answer."""
    steps = node.arguments[0]
    noun = items_noun(teller, steps)
    return "" if (noun.one, noun.of) == ("step", "") else f"among {teller.amount(steps)} "


_ORDERS: dict[str, Callable[[Teller, Call, bool], Said]] = {
    "before": _order,
    "starts_before": _order,
    "after_each": _after_each,
}
_CLAUSES: dict[type[Node], Callable[[Teller, Any, bool], Said]] = {
    Not: _not,
    Logic: _logic,
    Choose: _choose,
    Comparison: _comparison,
    Quantifier: _quantifier,
    Call: _call,
    Literal: _literal,
}
