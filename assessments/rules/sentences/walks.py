"""Quantifiers in words: "there is a wash step that comes before it", "for every step whose …", "at most 2 cells …"."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from assessments.rules.nodes import Call, Comparison, Field, Item, Literal, Logic, Node, Not, Quantifier
from assessments.rules.sentences.amounts import among
from assessments.rules.sentences.joining import BODY, Said, group, spoken
from assessments.rules.sentences.naming import Noun, article
from assessments.rules.sentences.predicates import TURNED, statement
from assessments.rules.sentences.spoken import is_written
from assessments.rules.sentences.telling import Reference, Teller, item_under, items_noun, own_words

Condition = tuple[Node, bool]
_COUNTED = {"<": "fewer than", "<=": "at most", ">": "more than", ">=": "at least", "==": "exactly", "!=": "other than"}
_OPPOSITE = {"<": ">=", "<=": ">", ">": "<=", ">=": "<", "==": "!=", "!=": "=="}
_NONE = (("==", 0), ("<=", 0), ("<", 1))
_SOME = ((">", 0), (">=", 1), ("!=", 0))


@dataclass(frozen=True, slots=True)
class Walked:
    """The items a quantifier looks at: the teller who knows the item, its noun, and what tells it from the others."""

    teller: Teller
    noun: Noun
    one: str
    many: str

    @property
    def single(self) -> str:
        """One such item, without an article: wash step that comes before it."""
        return f"{self.noun.one}{self.noun.of}{self.one}"

    @property
    def plural(self) -> str:
        """All such items: wash steps that come before it."""
        return f"{self.noun.many}{self.noun.of}{self.many}"

    @property
    def open(self) -> bool:
        """Whether what tells it runs on to the end."""
        return " for which " in self.one


def exists(teller: Teller, node: Quantifier, holds: bool) -> Said:
    """Return `any`: there is a step that …; there is no step that …."""
    return _there_is(teller, node, [*_kept(node), (node.test, True)], holds)


def _there_is(teller: Teller, node: Quantifier, conditions: list[Condition], holds: bool) -> Said:
    walked = walk(teller, node, conditions)
    one = article(walked.single) if holds else f"no {walked.single}"
    return Said(f"there is {one}", open=walked.open)


def each(teller: Teller, node: Quantifier, holds: bool) -> Said:
    """Return `every`: for every step whose …, …; where it has not to hold: there is one that does not."""
    if not holds:
        return _there_is(teller, node, [*_kept(node), (node.test, False)], True)
    walked = walk(teller, node, _kept(node))
    said = statement(walked.teller, node.test, True, node.variable)
    if said and isinstance(said.subject, Item) and said.subject.name == node.variable and not walked.open:
        return Said(f"every {walked.single} {said.predicate.one}")
    return Said(f"for every {walked.single}, {spoken(walked.teller.clause(node.test), BODY)}", open=True)


def counted(teller: Teller, node: Comparison, holds: bool) -> Said | None:
    """Return a number of items against a written number: there are at most 2 cells that …; no remedy is ….

    None for a comparison of anything else.
    """
    sign, (left, right) = node.signs[0], node.parts[:2]
    if isinstance(left, Literal):
        sign, left, right = TURNED.get(sign, sign), right, left
    if len(node.signs) > 1 or sign not in _COUNTED or not isinstance(right, Literal):
        return None
    many = (sign, right.value) if holds else (_OPPOSITE[sign], right.value)
    if isinstance(left, Quantifier) and left.word == "count":
        return _counted_items(teller, left, *many)
    return _shared(teller, left, *many) if isinstance(left, Call) and left.name == "overlap" else None


def _counted_items(teller: Teller, node: Quantifier, sign: str, value: float) -> Said:
    conditions = [*_kept(node), (node.test, True)]
    if (sign, value) in _NONE:
        return _there_is(teller, node, conditions, False)
    if (sign, value) in _SOME:
        return _there_is(teller, node, conditions, True)
    walked = walk(teller, node, conditions, many=True)
    few = value == 1
    there = f"there {'is' if few else 'are'} {_COUNTED[sign]} {teller.show(value, None)}"
    return Said(f"{there} {walked.single if few else walked.plural}", open=walked.open)


def _shared(teller: Teller, node: Call, sign: str, value: float) -> Said:
    """Return `overlap(mine, others)` against a number: at least 2 cells are among the key's required."""
    mine, others = node.arguments
    held, where = items_noun(teller, mine), among(teller, others, mine)
    if (sign, value) in _NONE or (sign, value) in _SOME:
        return Said(f"{'no' if (sign, value) in _NONE else 'at least one'} {held.one}{held.of} is {where}")
    few = value == 1
    said = f"{_COUNTED[sign]} {teller.show(value, None)} {held.one if few else held.many}{held.of}"
    return Said(f"{said} {'is' if few else 'are'} {where}")


def number(teller: Teller, node: Quantifier) -> str:
    """Return `count`, `sum`, `least` or `most` as a number."""
    if node.word == "count":
        return f"the number of {walk(teller, node, [*_kept(node), (node.test, True)], many=True).plural}"
    walked = walk(teller, node, _kept(node), many=True)
    if isinstance(node.test, Item):
        of = "sum of" if node.word == "sum" else f"{node.word} of"
        return f"the {of} the {walked.plural}"
    bare = teller.knowing(node.variable, Reference("each", "", walked.noun))
    return f"the {_SUMMED[node.word]} {bare.amount(node.test)} over the {walked.plural}"


_SUMMED = {"sum": "sum of", "least": "least", "most": "most"}


def walk(teller: Teller, node: Quantifier, conditions: list[Condition], many: bool = False) -> Walked:
    """Return what a quantifier looks at, under conditions on its item."""
    noun = items_noun(teller, node.items)
    inside = teller.knowing(node.variable, _reference(teller, node, noun, many))
    told = [_relative(inside, part, holds, node) for part, holds in _each_of(conditions)]
    acts = [each.act for each in told if each.act]
    named = noun.kind(acts[0]) if acts else noun
    relatives = [each for each in told if each.one and each.act not in acts[:1]]
    rest = [each.clause for each in told if each.clause]
    one, plural = ([getattr(each, form) for each in relatives] for form in ("one", "many"))
    if rest:
        said = f"for which {spoken(group('and', rest) if len(rest) > 1 else rest[0], BODY)}"
        one, plural = [*one, said], [*plural, said]
    return Walked(inside, named, _chained(one), _chained(plural))


def _chained(relatives: list[str]) -> str:
    return f" {' and '.join(relatives)}" if relatives else ""


def _reference(teller: Teller, node: Quantifier, noun: Noun, many: bool) -> Reference:
    """Return what the item is called later on: the outer one is "it", an inner one is named by its noun."""
    item = node.items.sort.kind.item if node.items.sort.kind else None
    plain = item is not None and item.name != "rec"
    if not teller.references and not many:
        return Reference(f"that {noun.one}" if plain else "it", "its ", noun)
    taken = any(known.noun == noun and known.subject != "it" for known in teller.references.values())
    that = f"the {noun.one} looked for" if taken else f"that {noun.one}"
    return Reference(that, f"{that}'s ", noun)


def _kept(node: Quantifier) -> list[Condition]:
    return [(node.keep, True)] if node.keep else []


def _each_of(conditions: list[Condition]) -> Iterator[Condition]:
    """Return conditions one by one: parts of an `and` that has to hold, of an `or` that has not to."""
    for part, holds in conditions:
        if isinstance(part, Not):
            yield from _each_of([(part.of, not holds)])
        elif isinstance(part, Logic) and (part.word == "and") is holds:
            yield from _each_of([(each, holds) for each in part.parts])
        else:
            yield part, holds


@dataclass(frozen=True, slots=True)
class _Relative:
    """A condition as a relative clause, as an act before the noun, or, where it is neither, as a whole clause."""

    one: str = ""
    many: str = ""
    act: str = ""
    clause: Said | None = None


def _relative(teller: Teller, part: Node, holds: bool, node: Quantifier) -> _Relative:
    said = statement(teller, part, holds, node.variable)
    if said is None or not _is_about(said.subject, node.variable):
        return _Relative(clause=teller.clause(part, holds))
    if isinstance(said.subject, Field):
        words = own_words(teller, said.subject)
        whose = f"whose {words} {said.predicate.one}"
        return _Relative(whose, whose)
    act = _act(part, holds)
    return _Relative(f"that {said.predicate.one}", f"that {said.predicate.many}", act)


def _is_about(subject: Node, variable: str) -> bool:
    item = item_under(subject) if isinstance(subject, Field | Item) else None
    return item is not None and item.name == variable


def _act(part: Node, holds: bool) -> str:
    """Return the act of `s.op == 'wash'`, to be said before the noun."""
    if not (isinstance(part, Comparison) and part.signs == ("==",) and holds):
        return ""
    field, word = sorted(part.parts, key=is_written)
    acts = isinstance(field, Field) and field.name == "op" and isinstance(field.of, Item) and isinstance(word, Literal)
    return str(word.value).replace("_", " ") if acts and isinstance(word, Literal) else ""


WALKS: dict[str, Callable[[Teller, Quantifier, bool], Said]] = {"any": exists, "every": each}
