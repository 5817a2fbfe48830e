"""What a test says of one thing: its subject, and a predicate that fits one or many: "is at least 3", "are …"."""

from __future__ import annotations

from dataclasses import dataclass

from assessments.rules.kinds import Kind
from assessments.rules.nodes import Call, Comparison, Field, Item, Literal, LiteralList, Node, Root
from assessments.rules.sentences.amounts import among, written
from assessments.rules.sentences.naming import alternatives, option_words
from assessments.rules.sentences.spoken import is_written, unit_of
from assessments.rules.sentences.telling import Teller, item_under, list_of
from assessments.rules.units import difference

ORDER = {"<": "under", "<=": "at most", ">": "over", ">=": "at least"}
TURNED = {"<": ">", "<=": ">=", ">": "<", ">=": "<=", "==": "==", "!=": "!="}
_PLACES = {"<": "before", ">": "after", "<=": "no later than", ">=": "no earlier than"}
_ASIDE = " (capitals and spaces aside)"


@dataclass(frozen=True, slots=True)
class Predicate:
    """What is said of a subject: of one, and of many."""

    one: str
    many: str


@dataclass(frozen=True, slots=True)
class Statement:
    """A test as a subject, what is said of it, and what gives a written subject its unit or its words."""

    subject: Node
    predicate: Predicate
    beside: Node | None = None


def be(words: str, holds: bool = True, many: str | None = None) -> Predicate:
    """Return "is …" or "is not …".

    >>> be("at least 3", False).one
    'is not at least 3'
    """
    turned = "" if holds else "not "
    return Predicate(f"is {turned}{words}", f"are {turned}{words if many is None else many}")


def statement(teller: Teller, node: Node, holds: bool, about: str | None = None) -> Statement | None:
    """Return a test as subject and predicate, None where it has no such form.

    `about` is a loop variable: where both sides could be the subject, its side is.
    """
    if isinstance(node, Comparison):
        if len(node.signs) == 1:
            return _compared(teller, node, holds, about)
        return _between(teller, node, holds) if len(node.signs) == 2 and set(node.signs) <= set(ORDER) else None
    if isinstance(node, Call):
        return _called(teller, node, holds)
    return Statement(node, be("yes" if holds else "no")) if isinstance(node, Root | Field | Item) else None


def _compared(teller: Teller, node: Comparison, holds: bool, about: str | None) -> Statement:
    sign, (left, right) = node.signs[0], node.parts
    if sign in ("in", "not in"):
        return _act(teller, left, right, holds is (sign == "in")) or _member(teller, left, right, holds, sign)
    if _is_turned(left, right, about):
        sign, left, right = TURNED[sign], right, left
    return (
        _placed(teller, sign, left, right, holds)
        or (_act(teller, left, right, holds is (sign == "==")) if sign in ("==", "!=") else None)
        or Statement(left, _sided(teller, sign, left, right, holds))
    )


def _is_turned(left: Node, right: Node, about: str | None) -> bool:
    """Whether the right side is what the comparison is about."""
    mine, other = (_variable(part) for part in (left, right))
    if about and other == about:
        return mine != about
    return is_written(left) and not is_written(right)


def _variable(node: Node) -> str | None:
    item = item_under(node)
    return item.name if item else None


def _sided(teller: Teller, sign: str, left: Node, right: Node, holds: bool) -> Predicate:
    if sign in ORDER:
        return be(f"{ORDER[sign]} {teller.amount(right, left)}", holds)
    aside = _ASIDE if left.sort.normed or right.sort.normed else ""
    return be(f"{teller.amount(right, left)}{aside}", holds is (sign == "=="))


def _member(teller: Teller, left: Node, right: Node, holds: bool, sign: str) -> Statement:
    aside = _ASIDE if left.sort.normed else ""
    return Statement(left, be(f"{among(teller, right, left)}{aside}", holds is (sign == "in")), right)


def steps_of(node: Node) -> Kind | None:
    """Return the kind of a record with an act, such as a step, if the node is one."""
    kind = node.sort.kind
    return kind if isinstance(node, Item) and kind and "op" in kind.fields else None


def _act(teller: Teller, left: Node, right: Node, holds: bool) -> Statement | None:
    """Return `s.op == 'wash'` as: it is a wash."""
    if not (isinstance(left, Field) and left.name == "op" and steps_of(left.of) and is_written(right)):
        return None
    if not isinstance(right, Literal | LiteralList):
        return None
    if holds or isinstance(right, Literal):
        return Statement(left.of, be(teller.amount(right), holds))
    return Statement(left.of, be(f"neither {alternatives([option_words(each) for each in right.values], 'nor')}"))


def _placed(teller: Teller, sign: str, left: Node, right: Node, holds: bool) -> Statement | None:
    """Return `t.n < s.n` as: it comes before it. The number of a step is its place."""
    if not _is_place(left) or not isinstance(left, Field) or sign not in _PLACES:
        return None
    if isinstance(right, Literal):
        where = f"step {written(teller, right.value)}"
    elif isinstance(right, Field) and _is_place(right) and _same_list(left.of, right.of):
        where = teller.amount(right.of)
    elif isinstance(right, Field | Root) and right.sort.name == "int" and not _is_place(right):
        where = teller.amount(right)
    else:
        return None
    said = f"{_PLACES[sign]} {where}"
    if holds:
        return Statement(left.of, Predicate(f"comes {said}", f"come {said}"))
    return Statement(left.of, Predicate(f"does not come {said}", f"do not come {said}"))


def _is_place(node: Node) -> bool:
    return isinstance(node, Field) and node.name == "n" and node.sort.name == "int" and steps_of(node.of) is not None


def _same_list(left: Node, right: Node) -> bool:
    both = [list_of(each) for each in (left, right) if isinstance(each, Item)]
    return len(both) == 2 and both[0] is not None and both[0] == both[1]


def _between(teller: Teller, node: Comparison, holds: bool) -> Statement:
    """Return a chain of two links as what it says of the middle."""
    low, middle, high = node.parts
    first, second = TURNED[node.signs[0]], node.signs[1]
    ends = (teller.amount(low, middle), teller.amount(high, middle))
    if (first, second) == (">=", "<="):
        return Statement(middle, be(f"between {ends[0]} and {ends[1]}", holds), low)
    if (first, second) == ("<=", ">="):
        return Statement(middle, be(f"between {ends[1]} and {ends[0]}", holds), low)
    both = "" if holds else "both "
    return Statement(middle, be(f"{both}{ORDER[first]} {ends[0]} and {ORDER[second]} {ends[1]}", holds), low)


def _called(teller: Teller, node: Call, holds: bool) -> Statement | None:
    if node.name in ("near", "near_rel"):
        return _near(teller, node, holds)
    subject = node.arguments[0] if node.arguments else node
    if node.name == "answered":
        return Statement(subject, be("answered" if "answer" in node.sort.roots else "known", holds))
    if node.name == "mentions":
        return Statement(subject, _mentions(teller, node.arguments[1], holds))
    return Statement(node, be("yes" if holds else "no")) if node.function else None


def _near(teller: Teller, node: Call, holds: bool) -> Statement:
    value, target, tolerance = node.arguments
    if node.name == "near" and is_written(value) and not is_written(target):
        value, target = target, value
    apart = difference(value.sort.unit or target.sort.unit)
    unit = "%" if node.name == "near_rel" else apart.text if apart and apart.powers else None
    within = _tolerance(teller, tolerance, unit)
    return Statement(value, be(f"within {within} of {teller.amount(target, value)}", holds))


def _tolerance(teller: Teller, node: Node, unit: str | None) -> str:
    if isinstance(node, Literal):
        return teller.show(node.value, unit_of(node) or unit)
    return teller.amount(node) + (" per cent" if unit == "%" and unit_of(node) is None else "")


def _mentions(teller: Teller, words: Node, holds: bool) -> Predicate:
    values = words.sort.literal or ()
    looked_for = alternatives([f"“{value}”" for value in values])
    if len(values) > 1:
        looked_for = f"{'one' if holds else 'none'} of the words {looked_for}"
        return Predicate(f"mentions {looked_for}", f"mention {looked_for}")
    turned = ("mentions", "mention") if holds else ("does not mention", "do not mention")
    return Predicate(f"{turned[0]} {looked_for}", f"{turned[1]} {looked_for}")
