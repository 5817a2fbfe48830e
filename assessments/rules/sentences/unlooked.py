"""What a run never looked at, because something before it settled the matter."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from assessments.rules.checking.checker import Checked
from assessments.rules.nodes import (
    Arithmetic,
    Call,
    Choose,
    Comparison,
    Field,
    Item,
    Literal,
    Logic,
    Minus,
    Node,
    Not,
    Quantifier,
    Root,
)
from assessments.rules.sentences.deciding import Deciders
from assessments.rules.sentences.naming import alternatives
from assessments.rules.sentences.spoken import Show, called, is_written, plain, unit_of
from assessments.rules.trace import Trace

_MOST_NAMES = 4
_UNTOLD = "no event tells"
"""A bare yes/no in a branch of an if-else leaves no event."""


def unlooked(checked: Checked, trace: Trace, show: Show = plain, case: Mapping[str, Any] | None = None) -> list[str]:
    """Return a short sentence for each part of a rule that a run never looked at; none where it looked at all.

    A part is left out where an `and`, `or`, chain or if-else was settled before it, an item where one before it
    decided. With the case, the item that decided is named.

    >>> from assessments.rules.checking.checker import check
    >>> from assessments.rules.evaluate import evaluate
    >>> from assessments.rules.kinds import Schema, choice, num, record
    >>> schema = Schema({"answer": record({"decision": choice(["wait", "coat"]), "margin": num("K")})})
    >>> checked = check("answer.decision == 'wait' and answer.margin > 3", schema)
    >>> unlooked(checked, evaluate(checked, {"answer": {"decision": "coat", "margin": 2}})[1])
    ['not looked at: the margin, because the decision settled it']
    """
    if checked.root is None:
        return []
    if trace.cut:
        return ["what was not looked at can't be told, for not all was kept"]
    run = _Run({event[0]: event[1:] for event in trace.events}, show, Deciders(case))
    began = run.seen(checked.root) or checked.root.sort.name != "bool"
    return list(dict.fromkeys(run.under(checked.root))) if began else []


@dataclass(frozen=True, slots=True)
class _Run:
    """What one run left behind: an event for each part that was compared, tested, walked or called."""

    events: Mapping[int, tuple[Any, ...]]
    show: Show
    deciders: Deciders

    def under(self, node: Node) -> Iterator[str]:
        """Return what was not looked at in a part that was."""
        yield from _UNDER.get(type(node), _nothing)(self, node)

    def seen(self, test: Node) -> bool:
        """Whether a yes/no was looked at; one that is written in the rule needs no looking."""
        if isinstance(test, Not):
            return self.seen(test.of)
        if isinstance(test, Logic):
            return self.seen(test.parts[0])
        if isinstance(test, Choose):
            return self.seen(test.test)
        return test.number in self.events or isinstance(test, Literal)

    def value(self, test: Node) -> object:
        """Return what a yes/no that was looked at came to, or that no event tells."""
        if isinstance(test, Not):
            value = self.value(test.of)
            return value if value in (None, _UNTOLD) else not value
        if isinstance(test, Logic):
            return self.joined(test)
        if isinstance(test, Choose):
            taken = self.value(test.test)
            return taken if taken in (None, _UNTOLD) else self.value(test.yes if taken else test.no)
        return test.value if isinstance(test, Literal) else self.events.get(test.number, (_UNTOLD,))[0]

    def joined(self, node: Logic) -> object:
        """Return what an `and` or `or` came to, from what was looked at of it."""
        values = [self.value(part) for part in node.parts if self.seen(part)]
        decides = node.word == "or"
        if decides in values:
            return decides
        return next((each for each in (_UNTOLD, None) if each in values), not decides)

    def left_out(self, parts: Sequence[Node], settled_by: Sequence[Node]) -> str:
        """Return the sentence for parts that something before them settled."""
        rest, settled = self.about(parts), self.about(settled_by)
        if rest == settled:
            return f"not looked at: what else is asked of {rest}, because that settled it"
        return f"not looked at: {rest}, because {settled} settled it"

    def about(self, parts: Sequence[Node]) -> str:
        """Return the names of what parts read, each once."""
        names = list(dict.fromkeys(name for part in parts for name in self.names(part)))
        shown = names if len(names) <= _MOST_NAMES else [*names[: _MOST_NAMES - 1], "more"]
        return alternatives(shown, "and") if shown else "the rest"

    def names(self, node: Node) -> Iterator[str]:
        """Return what a part is about."""
        if isinstance(node, Root | Field | Item):
            yield f"the {called(node)}"
        elif isinstance(node, Quantifier):
            yield from self.names(node.items)
        else:
            for part in _parts(node):
                yield from self.names(part)


def _parts(node: Node) -> Sequence[Node]:
    """Return the parts of a part, in the order in which they are looked at."""
    if isinstance(node, Not | Minus):
        return (node.of,)
    if isinstance(node, Arithmetic):
        return (node.left, node.right)
    if isinstance(node, Choose):
        return (node.test, node.yes, node.no)
    if isinstance(node, Call):
        return node.arguments
    return node.parts if isinstance(node, Logic | Comparison) else ()


def _nothing(run: _Run, node: Node) -> Iterator[str]:
    for part in _parts(node):
        yield from run.under(part)


def _logic(run: _Run, node: Logic) -> Iterator[str]:
    for place, part in enumerate(node.parts):
        rest = node.parts[place + 1 :]
        if not run.seen(part):
            yield f"not looked at: {run.about((part, *rest))}, because the judging broke off before it"
            return
        yield from run.under(part)
        value = run.value(part)
        if rest and (value is (node.word == "or") or (value == _UNTOLD and not run.seen(rest[0]))):
            yield run.left_out(rest, (part,))
            return


def _comparison(run: _Run, node: Comparison) -> Iterator[str]:
    """A chain stops at the first link that fails."""
    looked_at = len(run.events.get(node.number, ())) - 1
    for part in node.parts[: max(looked_at, 0)]:
        yield from run.under(part)
    rest = node.parts[looked_at:] if looked_at > 0 else ()
    if rest:
        words = alternatives([_end(run, part, node) for part in rest], "and")
        yield f"not looked at: {words}, because the comparison before it settled it"


def _end(run: _Run, part: Node, node: Comparison) -> str:
    """Return one end of a chain: what is written with its unit, all else by name."""
    if not isinstance(part, Literal):
        return run.about((part,))
    named = next((each for each in node.parts if not is_written(each)), part)
    return run.show(part.value, unit_of(named))


def _choose(run: _Run, node: Choose) -> Iterator[str]:
    yield from run.under(node.test)
    taken = run.value(node.test)
    if isinstance(taken, bool):
        yield from run.under(node.yes if taken else node.no)
        yield run.left_out((node.no if taken else node.yes,), (node.test,))


def _quantifier(run: _Run, node: Quantifier) -> Iterator[str]:
    """A walk over a list stops at the item that decides; what was asked of that item is in the trace."""
    _, *found = run.events.get(node.number, (None,))
    place = found[1] if found else None
    if place is None:
        return
    which = run.deciders.called(node, place) or f"item {place + 1}"
    listed = run.deciders.listed(node)
    settled = run.events[node.number][0] is (node.word == "any") and node.word in ("every", "any")
    if settled and (listed is None or place + 1 < len(listed)):
        yield f"not looked at: what comes after {which} in {called(node.items)}, because {which} settled it"
    yield from run.under(node.test)


_UNDER: dict[type[Node], Callable[[_Run, Any], Iterator[str]]] = {
    Logic: _logic,
    Comparison: _comparison,
    Choose: _choose,
    Quantifier: _quantifier,
}
