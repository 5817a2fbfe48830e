"""The words of the language that are called: how many values each takes, of which kinds, and what it costs."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Any

from assessments.rules import vocabulary
from assessments.rules.checking.operators import alike, choose_from, computed, warn_mixed, written
from assessments.rules.checking.sheet import Sheet
from assessments.rules.functions import Function
from assessments.rules.kinds import Kind, integer, num, text, truth
from assessments.rules.nodes import LiteralList, Node, Sort
from assessments.rules.units import NUMBER, Unit, difference, shared

_CHARACTERS_A_STEP = 5
_PER_CENT = ("pct", "%", "rh")
QUANTIFIERS = ("every", "any", "count", "sum", "least", "most")


@dataclass(frozen=True, slots=True)
class Word:
    """A word of the language: how it is written, how it is checked and what it does with values that are there."""

    usage: str
    takes: int
    sort: Callable[[Sheet, Sequence[Node]], Sort]
    call: Callable[..., Any]


def _numbers(sheet: Sheet, parts: Sequence[Node]) -> bool:
    """Note a fault at each part that is no number, not only at the first."""
    fitting = [_is(sheet, part, ("num", "int"), "a number") for part in parts]
    return all(fitting)


def _is(sheet: Sheet, part: Node, names: tuple[str, ...], wanted: str) -> bool:
    """Note a fault where a part is of another kind."""
    if part.sort.kind and part.sort.name not in names:
        sheet.fault(part.start, part.end, f"This has to be {wanted}; it is {part.sort.kind.spoken}.")
    return part.sort.name in names


def _same_unit(sheet: Sheet, part: Node, unit: Unit | None, wanted: Unit | None) -> None:
    why = shared(wanted, unit)[1]
    if why and wanted and unit:
        sheet.fault(part.start, part.end, f"This is in {unit.text}; it has to be in {wanted.text}.")


def _near(sheet: Sheet, parts: Sequence[Node]) -> Sort:
    if _numbers(sheet, parts):
        value, target, tolerance = parts
        warn_mixed(sheet, value, target)
        _same_unit(sheet, target, target.sort.unit, value.sort.unit)
        _same_unit(sheet, tolerance, tolerance.sort.unit, difference(value.sort.unit or target.sort.unit))
    return computed(truth(), parts)


def _near_rel(sheet: Sheet, parts: Sequence[Node]) -> Sort:
    if _numbers(sheet, parts):
        value, target, percent = parts
        warn_mixed(sheet, value, target)
        if percent.sort.unit and percent.sort.unit.powers and percent.sort.unit.text not in _PER_CENT:
            said = f"This is taken for per cent, but it is in {percent.sort.unit.text}."
            sheet.warn(percent.start, percent.end, said)
        _same_unit(sheet, target, target.sort.unit, value.sort.unit)
    return computed(truth(), parts)


def _order(sheet: Sheet, parts: Sequence[Node]) -> Sort:
    steps, *acts = parts
    item = steps.sort.kind.item if steps.sort.kind else None
    op = item.fields.get("op") if item else None
    if steps.sort.kind and (op is None or op.name not in ("enum", "str")):
        sheet.fault(steps.start, steps.end, "This has to be a list of records with a field 'op'.")
    for act in acts:
        _act(sheet, act, op)
    sheet.spend(2 * steps.sort.kind.max if steps.sort.kind else 0)
    sort = computed(truth(), parts)
    loose = frozenset({"()"}) if op and op.opt else frozenset[str]()
    return Sort(sort.kind, None, sort.missing | loose, sort.roots)


def _act(sheet: Sheet, act: Node, op: Kind | None) -> None:
    if act.sort.kind and (act.sort.name != "str" or act.sort.literal is None):
        sheet.fault(act.start, act.end, "An act is written as a word in quotes, such as 'wash'.")
    elif op and op.name == "enum":
        choose_from(sheet, act, op.vals)


def _overlap(sheet: Sheet, parts: Sequence[Node]) -> Sort:
    left, right = parts
    mine, others = (_list(sheet, part) for part in parts)
    if mine and others and mine.item and others.item:
        sheet.spend(mine.max * others.max)
        unlike = alike(sheet, _as_item(left, mine.item), right, others.item, right.sort.unit)
        if unlike:
            sheet.fault(right.start, right.end, unlike)
    return computed(integer(), parts, NUMBER)


def _list(sheet: Sheet, part: Node) -> Kind | None:
    """Return the kind of a list, None and a fault for anything else."""
    return part.sort.kind if _is(sheet, part, ("list",), "a list") else None


def _as_item(items: Node, kind: Kind) -> Node:
    """Return a list seen as one of its items, so that it can be compared with another's."""
    sort = Sort(kind, items.sort.unit, literal=items.sort.literal)
    if isinstance(items, LiteralList):
        return LiteralList(items.number, items.start, items.end, sort, items.values, items.places)
    return Node(items.number, items.start, items.end, sort)


def _norm(sheet: Sheet, parts: Sequence[Node]) -> Sort:
    _is(sheet, parts[0], ("str",), "a text")
    sheet.spend(_reading(parts[0]))
    sort = computed(text(), parts)
    return Sort(sort.kind, None, sort.missing, sort.roots, normed=True)


def _reading(part: Node) -> int:
    """Return what it costs to bring a text to one form, which grows with its longest length."""
    return 20 + (part.sort.kind.max if part.sort.kind else 0) // _CHARACTERS_A_STEP


def _mentions(sheet: Sheet, parts: Sequence[Node]) -> Sort:
    note, words = parts
    _is(sheet, note, ("str",), "a text")
    if words.sort.kind and not (isinstance(words, LiteralList) and words.sort.kind.item == Kind("str")):
        sheet.fault(words.start, words.end, "The words are written as a list, such as ['left', 'stays'].")
    sheet.spend(2 * _reading(note) + len(written(words)))
    return computed(truth(), parts)


def _abs(sheet: Sheet, parts: Sequence[Node]) -> Sort:
    if not _numbers(sheet, parts):
        return Sort()
    sort = parts[0].sort
    return Sort(sort.kind, sort.unit, sort.missing, sort.roots)


def _len(sheet: Sheet, parts: Sequence[Node]) -> Sort:
    _is(sheet, parts[0], ("list", "str"), "a list or a text")
    return computed(integer(), parts, NUMBER)


def _answered(sheet: Sheet, parts: Sequence[Node]) -> Sort:
    return Sort(truth(), roots=parts[0].sort.roots)


WORDS: dict[str, Word] = {
    "near": Word("near(a, b, tolerance)", 3, _near, vocabulary.near),
    "near_rel": Word("near_rel(a, b, percent)", 3, _near_rel, vocabulary.near_rel),
    "before": Word("before(steps, 'a', 'b')", 3, _order, vocabulary.before),
    "starts_before": Word("starts_before(steps, 'a', 'b')", 3, _order, vocabulary.starts_before),
    "after_each": Word("after_each(steps, 'a', 'b')", 3, _order, vocabulary.after_each),
    "overlap": Word("overlap(list, list)", 2, _overlap, vocabulary.overlap),
    "norm": Word("norm(text)", 1, _norm, vocabulary.norm),
    "mentions": Word("mentions(text, ['word'])", 2, _mentions, vocabulary.mentions),
    "abs": Word("abs(number)", 1, _abs, abs),
    "len": Word("len(list)", 1, _len, len),
    "answered": Word("answered(value)", 1, _answered, lambda value: value is not None),
}
RESERVED = (*WORDS, *QUANTIFIERS)


def lent(sheet: Sheet, function: Function, parts: Sequence[Node]) -> Sort:
    """Return the sort of a call of a lent function, its arguments checked against the signature."""
    sheet.spend(function.cost)
    for kind, part in zip(function.params, parts, strict=True):
        if part.sort.kind:
            _fits(sheet, part, kind)
    unit = Unit.of(function.returns.unit) if function.returns.unit else None
    sort = computed(function.returns, parts, unit or (NUMBER if function.returns.is_number else None))
    loose = frozenset({"()"}) if function.returns.opt else frozenset[str]()
    return Sort(sort.kind, sort.unit, sort.missing | loose, sort.roots)


def _fits(sheet: Sheet, part: Node, kind: Kind) -> None:
    wanted = Node(part.number, part.start, part.end, Sort(kind, Unit.of(kind.unit) if kind.unit else None))
    if kind.is_number and _is(sheet, part, ("num", "int") if kind.name == "num" else ("int",), kind.spoken):
        warn_mixed(sheet, part, wanted)
        _same_unit(sheet, part, part.sort.unit, wanted.sort.unit)
    elif kind.name == "enum" and part.sort.name == "str" and part.sort.literal:
        choose_from(sheet, part, kind.vals)
    elif not kind.is_number:
        _is(sheet, part, (kind.name,), kind.spoken)


def number_kind(parts: Sequence[Node]) -> Kind:
    """Return whole number when all parts are, else number."""
    return integer() if all(part.sort.name == "int" for part in parts) else num()
