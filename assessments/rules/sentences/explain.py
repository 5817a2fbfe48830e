"""A trace told in plain sentences: what was compared with what, which item decided, what was not answered."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

from assessments.rules.checking.checker import Checked
from assessments.rules.nodes import Call, Comparison, Item, Node, Quantifier
from assessments.rules.sentences.deciding import Deciders
from assessments.rules.sentences.naming import noun
from assessments.rules.sentences.spoken import Show, called, is_written, plain, unit_of
from assessments.rules.trace import Trace
from assessments.rules.units import Unit, difference

_ORDER = {"<": "under", "<=": "at most", ">": "over", ">=": "at least"}


def explain(checked: Checked, trace: Trace, show: Show = plain, case: Mapping[str, Any] | None = None) -> list[str]:
    """Return one sentence for each event of a trace; `show(value, unit)` writes values in the reader's units.

    With the case it was judged on, the item that decided is named: step 3 (sand).

    >>> from assessments.rules.checking.checker import check
    >>> from assessments.rules.kinds import Schema, num, record
    >>> schema = Schema({"answer": record({"dew_point": num()}), "key": record({"dew_point": num()})})
    >>> checked = check("near(answer.dew_point, key.dew_point, 0.5)", schema)
    >>> explain(checked, Trace(((5, True, 9.3, 9.4, 0.5),)))
    ['dew point 9.3 is within 0.5 of 9.4']
    """
    told = _Teller(show, Deciders(case))
    sentences = [told.event(checked.nodes[event[0]], event[1], event[2:]) for event in trace.events]
    if trace.cut:
        sentences.append("and more that was not kept")
    return sentences


@dataclass(frozen=True, slots=True)
class _Teller:
    show: Show
    deciders: Deciders

    def event(self, node: Node, result: Any, operands: tuple[Any, ...]) -> str:
        """Return the sentence of one event."""
        if isinstance(node, Comparison):
            return self.membership(node, result, operands) or self.chain(node, result, operands)
        if isinstance(node, Quantifier):
            return self.walk(node, result, operands)
        if isinstance(node, Call):
            return _CALLS.get(node.name, _Teller.lent)(self, node, result, operands)
        return f"{called(node)}: {'yes' if result else 'no'}" if result is not None else _absent(node)

    def chain(self, node: Comparison, result: bool | None, operands: tuple[Any, ...]) -> str:
        """Return a comparison, link by link as far as it was looked at; only the last link can have failed."""
        links = list(zip(node.signs, node.parts, node.parts[1:], operands, operands[1:], strict=False))
        last = len(links) - 1
        return " and ".join(self.link(*link, result is not False or place < last) for place, link in enumerate(links))

    def link(self, sign: str, left: Node, right: Node, a: Any, b: Any, holds: bool) -> str:
        """Return one link of a comparison."""
        for part, value in ((left, a), (right, b)):
            if value is None:
                return _absent(part)
        if sign in ("in", "not in"):
            return f"{self.subject(left, a)} is looked for in {called(right)}"
        target = self.target(right, b, left)
        if sign in _ORDER:
            return f"{self.subject(left, a, right)} is {'' if holds else 'not '}{_ORDER[sign]} {target}"
        return f"{self.subject(left, a, right)} is {'' if holds == (sign == '==') else 'not '}{target}"

    def subject(self, node: Node, value: Any, other: Node | None = None) -> str:
        """Return a part with its name and value; what is written in the rule is its own name."""
        shown = self.show(value, unit_of(node) or (unit_of(other) if other and is_written(node) else None))
        return shown if is_written(node) else f"{_name(node)} {shown}"

    def target(self, node: Node, value: Any, subject: Node) -> str:
        """Return the other side; its name only where it differs from the subject's."""
        shown = self.show(value, unit_of(node) or (unit_of(subject) if is_written(node) else None))
        return shown if is_written(node) or _name(node) == _name(subject) else f"{_name(node)} {shown}"

    def membership(self, node: Comparison, result: bool | None, operands: tuple[Any, ...]) -> str | None:
        """Return a single `in` by its result; the list itself is not in a trace."""
        if len(node.signs) > 1 or node.signs[0] not in ("in", "not in") or result is None:
            return None
        inside = result is (node.signs[0] == "in")
        return f"{self.subject(node.parts[0], operands[0])} is {'' if inside else 'not '}in {called(node.parts[1])}"

    def walk(self, node: Quantifier, result: Any, operands: tuple[Any, ...]) -> str:
        """Return how a quantifier came out and which item decided."""
        if not operands:
            return _absent(node.items)
        tested, place = operands
        items = called(node.items)
        named = None if place is None else self.deciders.called(node, place)
        which = None if place is None else named or f"item {place + 1}"
        if result is None:
            return f"{node.word} over {items}: {which} can't be told" if which else f"no {items}"
        if node.word in ("every", "any"):
            return _decided(node.word, result, items, tested, named or (which and f"{which} of {items}"))
        if node.word == "count":
            return f"{result} of {tested} {items} fit"
        shown = self.show(result, unit_of(node.test))
        where = f", {which}" if which else ""
        over = f"{tested} {items}" if tested != 1 else f"one of {items}"
        return f"the {_WALKED[node.word]} {called(node.test)} over {over} is {shown}{where}"

    def near(self, node: Call, result: bool | None, operands: tuple[Any, ...]) -> str:
        """Return what lay within what of what."""
        value, target, tolerance = node.arguments
        for part, operand in zip(node.arguments, operands, strict=True):
            if operand is None:
                return _absent(part)
        unit = "%" if node.name == "near_rel" else _tolerance_unit(value.sort.unit or target.sort.unit)
        within = self.show(operands[2], unit_of(tolerance) or unit)
        told = f"{self.subject(value, operands[0], target)} is {'' if result else 'not '}within {within} of"
        return f"{told} {self.target(target, operands[1], value)}"

    def order(self, node: Call, result: bool | None, operands: tuple[Any, ...]) -> str:
        """Return which act came first and, where the case tells, at which steps."""
        steps, (a, b) = node.arguments[0], operands[1:]
        if result is None:
            return _absent(steps)
        acts = self.deciders.acts(steps) or []
        lacking = [act for act in dict.fromkeys((a, b)) if acts and act not in {done for _number, done in acts}]
        if lacking:
            return f"there is no {' and no '.join(lacking)}"
        which = "last" if node.name == "before" else "first"
        said = "comes" if result else "doesn't come"
        return f"the {which} {a}{_step(acts, a, which)} {said} before the first {b}{_step(acts, b, 'first')}"

    def after_each(self, node: Call, result: bool | None, operands: tuple[Any, ...]) -> str:
        """Return whether one act always followed the other and, where the case tells, after which step it didn't."""
        steps, (a, b) = node.arguments[0], operands[1:]
        if result is None:
            return _absent(steps)
        if result:
            return f"every {a} is followed by {b}"
        acts = self.deciders.acts(steps) or []
        after = [*(act for _number, act in acts[1:]), ""]
        missing = next(
            (number for (number, act), then in zip(acts, after, strict=False) if act == a and then != b), None
        )
        return f"not every {a} is followed by {b}" + (f": step {missing} is not" if missing is not None else "")

    def mentions(self, node: Call, result: bool | None, operands: tuple[Any, ...]) -> str:
        """Return whether the text held one of the words."""
        if result is None:
            return _absent(node.arguments[0])
        return f"{called(node.arguments[0])} {'mentions' if result else 'mentions none of'} the words looked for"

    def answered(self, node: Call, result: bool | None, operands: tuple[Any, ...]) -> str:
        """Return whether something was answered."""
        return f"{called(node.arguments[0])} is answered" if result else _absent(node.arguments[0])

    def lent(self, node: Call, result: Any, operands: tuple[Any, ...]) -> str:
        """Return what a lent function gave."""
        return f"{called(node)} is {'not known' if result is None else self.show(result, unit_of(node))}"


def _name(node: Node) -> str:
    """Return what a part is called; an item by what its list holds, not by its loop variable."""
    return noun(node.sort.path[:-1] if node.sort.path else None, "").one if isinstance(node, Item) else called(node)


def _absent(node: Node) -> str:
    return f"{called(node)} is not {'answered' if 'answer' in node.sort.roots else 'known'}"


def _decided(word: str, result: bool, items: str, tested: int, which: str | None) -> str:
    if which is not None:
        return f"{which} {'fits' if result else 'does not fit'}"
    if tested == 0:
        return f"there is nothing to look at in {items}"
    if tested == 1:
        return f"the only one looked at in {items} {'fits' if word == 'every' else 'does not fit'}"
    return f"all {tested} of {items} fit" if word == "every" else f"none of {tested} in {items} fits"


def _step(acts: list[tuple[int, str]], wanted: str, which: str) -> str:
    """Return at which step the first or the last of an act stands, nothing where that isn't known."""
    numbers = [number for number, act in acts if act == wanted]
    return f" (step {numbers[0 if which == 'first' else -1]})" if numbers else ""


def _tolerance_unit(unit: Unit | None) -> str | None:
    apart = difference(unit)
    return apart.text if apart and apart.powers else None


_WALKED = {"sum": "sum of", "least": "least", "most": "most"}
_CALLS: dict[str, Callable[[_Teller, Call, Any, tuple[Any, ...]], str]] = {
    "near": _Teller.near,
    "near_rel": _Teller.near,
    "before": _Teller.order,
    "starts_before": _Teller.order,
    "after_each": _Teller.after_each,
    "mentions": _Teller.mentions,
    "answered": _Teller.answered,
}
