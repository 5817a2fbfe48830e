"""Which values may be compared, added, multiplied: kinds, choice lists and units."""

from __future__ import annotations

import ast
from collections.abc import Callable, Sequence
from functools import lru_cache

from assessments.rules.checking.sheet import Sheet
from assessments.rules.faults import listed, nearest, offered
from assessments.rules.kinds import Kind, num, truth
from assessments.rules.nodes import NOTHING, Choose, Literal, LiteralList, Node, Sort
from assessments.rules.units import Unit, added, product, quotient, shared, subtracted

SIGNS: dict[type[ast.cmpop], str] = {
    ast.Lt: "<",
    ast.LtE: "<=",
    ast.Gt: ">",
    ast.GtE: ">=",
    ast.Eq: "==",
    ast.NotEq: "!=",
    ast.In: "in",
    ast.NotIn: "not in",
}
ARITHMETIC: dict[type[ast.operator], str] = {ast.Add: "+", ast.Sub: "-", ast.Mult: "*", ast.Div: "/"}
_UNITS: dict[str, Callable[[Unit | None, Unit | None], tuple[Unit | None, str | None]]] = {
    "+": added,
    "-": subtracted,
    "*": lambda left, right: (product(left, right), None),
    "/": lambda left, right: (quotient(left, right), None),
}
_HINTS = {"str": "; words in a text are looked for by mentions()"}
_YES_NO = truth()
_MIXED = "This has no unit, the other side is in {unit}; the two are taken to agree."


def missing_of(parts: Sequence[Node]) -> frozenset[str]:
    """Return everything whose absence can make one of the parts unknown."""
    return NOTHING.union(*[part.sort.missing for part in parts])


def roots_of(parts: Sequence[Node]) -> frozenset[str]:
    """Return the roots that the parts read."""
    return NOTHING.union(*[part.sort.roots for part in parts])


def computed(kind: Kind, parts: Sequence[Node], unit: Unit | None = None) -> Sort:
    """Return the sort of a value worked out from parts."""
    if kind is _YES_NO and unit is None:
        return _yes_no(missing_of(parts), roots_of(parts))
    return Sort(kind, unit, missing_of(parts), roots_of(parts))


@lru_cache(maxsize=256)
def _yes_no(missing: frozenset[str], roots: frozenset[str]) -> Sort:
    return Sort(_YES_NO, None, missing, roots)


def arithmetic(sheet: Sheet, sign: str, left: Node, right: Node) -> Sort:
    """Return the sort of `left sign right`; faults stand on the sheet, at the right-hand operand for unlike units."""
    for part in (left, right):
        if part.sort.kind and not part.sort.is_number:
            sheet.fault(part.start, part.end, f"'{sign}' needs numbers; this is {part.sort.kind.spoken}.")
    if not (left.sort.is_number and right.sort.is_number):
        return Sort()
    if sign in "+-":
        warn_mixed(sheet, left, right)
    unit, why = _UNITS[sign](left.sort.unit, right.sort.unit)
    if why:
        sheet.fault(right.start, right.end, why)
        return Sort()
    whole = sign != "/" and left.sort.name == right.sort.name == "int"
    sort = computed(Kind("int") if whole else num(), (left, right), unit)
    safe = right.sort.literal is not None and not {0, None} & set(right.sort.literal)
    extra = frozenset[str]() if sign != "/" or safe else frozenset({"()"})
    both = left.sort.literal is not None and right.sort.literal is not None
    return Sort(sort.kind, unit, sort.missing | extra, sort.roots, literal=(None,) if both else None)


def warn_mixed(sheet: Sheet, left: Node, right: Node) -> None:
    """Warn where a value without a unit meets one that has one; what is written in the rule takes the other's."""
    for bare, other in ((left, right), (right, left)):
        unit = other.sort.unit
        unsaid = bare.sort.unit is None and bare.sort.literal is None
        if unsaid and bare.sort.is_number and unit is not None and unit.powers:
            sheet.warn(bare.start, bare.end, _MIXED.format(unit=unit.text))


def comparison(sheet: Sheet, sign: str, left: Node, right: Node) -> Sort:
    """Return the sort of one comparison of a chain."""
    kind = right.sort.kind
    if left.sort.kind and kind:
        if sign in ("in", "not in"):
            _membership(sheet, sign, left, right, kind)
        else:
            _pair(sheet, sign, left, right, kind)
    return computed(truth(), (left, right))


def _membership(sheet: Sheet, sign: str, left: Node, right: Node, kind: Kind) -> None:
    if kind.item is None:
        sheet.fault(
            right.start,
            right.end,
            f"The right side of 'in' has to be a list; this is {kind.spoken}{_HINTS.get(kind.name, '')}.",
        )
        return
    _warn_text(sheet, left)
    if isinstance(right, LiteralList):
        for value, place in zip(right.values, right.places, strict=True):
            _warn_fraction(sheet, sign, value, place)
    sheet.spend(max(kind.max, 1))
    unlike = alike(sheet, left, right, kind.item, right.sort.unit)
    if unlike:
        sheet.fault(right.start, right.end, unlike)


def _pair(sheet: Sheet, sign: str, left: Node, right: Node, kind: Kind) -> None:
    unlike = alike(sheet, left, right, kind, right.sort.unit)
    if unlike:
        sheet.fault(right.start, right.end, unlike)
    elif sign not in ("==", "!=") and not left.sort.is_number:
        sheet.fault(left.start, right.end, f"Only numbers have an order; this compares {kind.spoken}.")
    else:
        _warn_pair(sheet, sign, left, right)


def _warn_pair(sheet: Sheet, sign: str, left: Node, right: Node) -> None:
    if sign not in ("==", "!="):
        return
    for part, other in ((right, left), (left, right)):
        value = part.sort.literal[0] if part.sort.literal else None
        if other.sort.literal is None:
            _warn_fraction(sheet, sign, value, (part.start, part.end))
        _warn_text(sheet, other)


def _warn_fraction(sheet: Sheet, sign: str, value: object, place: tuple[int, int]) -> None:
    if isinstance(value, float) and value != int(value):
        said = f"'{sign}' with {value:g} is met only by that very number; near(…, {value:g}, tolerance) is meant."
        sheet.warn(*place, said, "near")


def _warn_text(sheet: Sheet, part: Node) -> None:
    if part.sort.name == "str" and part.sort.literal is None and not part.sort.normed:
        said = "A free text is compared letter by letter here; put it through norm()."
        sheet.warn(part.start, part.end, said, "norm")


def alike(sheet: Sheet, left: Node, right: Node, kind: Kind, unit: Unit | None) -> str | None:
    """Return why `left` can't be compared with values of `kind`, None when it can or the fault is noted already."""
    mine = left.sort.kind or kind
    if mine.is_number and kind.is_number:
        warn_mixed(sheet, left, right)
        return shared(left.sort.unit, unit)[1]
    if "enum" in (mine.name, kind.name) and {mine.name, kind.name} <= {"enum", "str"}:
        return _choices(sheet, left, right, mine, kind)
    if mine.name == kind.name and mine.name in ("str", "bool"):
        return None
    return f"{_capital(mine.spoken)} can't be compared with {kind.spoken}."


def _choices(sheet: Sheet, left: Node, right: Node, mine: Kind, kind: Kind) -> str | None:
    """Check choices against choices, or against words written in the rule."""
    if mine.name == kind.name:
        apart = not set(mine.vals) & set(kind.vals)
        return f"These choices share no word with the left side: {listed(mine.vals)}." if apart else None
    words, vals = (right, mine.vals) if mine.name == "enum" else (left, kind.vals)
    if words.sort.literal is None:
        return "A choice is compared with its own words or another choice, not with a free text."
    choose_from(sheet, words, vals)
    return None


def choose_from(sheet: Sheet, words: Node, vals: Sequence[str]) -> None:
    """Fault each written word that is not in the list of choices, at the word."""
    for word, (start, end) in written(words):
        if word not in vals:
            near = nearest(word, vals)
            sheet.fault(start, end, offered(f"'{word}' is none of the choices {listed(vals)}", near), near)


def written(part: Node) -> list[tuple[str, tuple[int, int]]]:
    """Return the words written in a part, each with its place."""
    if isinstance(part, LiteralList):
        return [(str(value), place) for value, place in zip(part.values, part.places, strict=True)]
    if isinstance(part, Choose):
        return written(part.yes) + written(part.no)
    return [(str(part.value), (part.start, part.end))] if isinstance(part, Literal) else []


def _capital(sentence: str) -> str:
    return sentence[:1].upper() + sentence[1:]
