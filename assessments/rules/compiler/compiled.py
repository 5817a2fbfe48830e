"""A rule book as generated code: written, audited and compiled when it is first asked for, kept for every case."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import Any

from assessments.rules.checking.checker import Checked
from assessments.rules.compiler.audit import audited
from assessments.rules.compiler.emit import PARAMETERS, Written, written
from assessments.rules.compiler.events import AS_IS, GIVEN, KEPT, READ
from assessments.rules.compiler.runtime import RUNTIME, lent
from assessments.rules.faults import FunctionFailed, Refused
from assessments.rules.frame import RawEvent
from assessments.rules.nodes import Path
from assessments.rules.trace import Event

DRAWN = frozenset({"facts", "key"})
"""The roots that are nobody's answer: what is missing there is no silence."""
Case = Mapping[str, Any]
Values = tuple[Any, ...]


@dataclass(frozen=True, slots=True)
class Run:
    """What became of one part: its value, its events as they are stored, and the same with whole operands.

    `failed` is the sentence of a lent function that raised.
    """

    value: Any
    events: tuple[Event, ...]
    whole: tuple[RawEvent, ...]
    failed: str | None = None


class Compiled:
    """The parts of a book as one function in two variants, and each part alone for when the whole can't be run.

    A case handed in is bound already. Values are the bare ones: no guard, no rule of silence.
    """

    def __init__(self, parts: Sequence[Checked], digest: str = "") -> None:
        for part in parts:
            if part.root is None:
                raise Refused(f"The rule can't be run: {part.errors[0].message}")
        self.parts = tuple(parts)
        self.digest = digest

    @cached_property
    def nodes(self) -> tuple[tuple[int, int], ...]:
        """For the first number of an event: which part it belongs to, and which node of it."""
        return tuple((place, number) for place, part in enumerate(self.parts) for number in range(len(part.nodes)))

    def values(self, case: Case) -> Values:
        """Return one value for each part: True, False, None for unknown, or what the expression gives.

        Raises FunctionFailed when a lent function does.
        """
        return self._untraced(case)

    def traced(self, case: Case) -> tuple[Values, list[Event]]:
        """Return the values and the events as they are stored: `(k, result, operand, …)`, k a place in `nodes`.

        Raises FunctionFailed when a lent function does.
        """
        events: list[Event] = []
        kept: list[Values] = []
        return self._traced(case, events.append, kept.append), events

    def looked(self, case: Case, events: list[Event], kept: list[Values]) -> Values:
        """Return the values; events, and the operands they don't hold whole, are added to the lists as they happen."""
        return self._traced(case, events.append, kept.append)

    def silent(self, case: Case) -> Values:
        """Return the values where an answer that is missing leaves `answered(…)` of it unknown."""
        events: list[Any] = []
        return self._silent(case, events.append, events.append)

    def whole(self, case: Case, events: Sequence[Event], kept: Sequence[Values]) -> Iterator[RawEvent]:
        """Yield events with their operands as they were, their numbers those of the part's own nodes."""
        waiting, wholes = iter(kept), self._traced_text.wholes
        for event in events:
            plan = wholes.get(event[0])
            whole = event[2:] if plan is None else _wholes(case, event[2:], plan, waiting)
            yield self.nodes[event[0]][1], event[1], whole

    def runs(self, case: Case) -> tuple[Run, ...]:
        """Return what became of each part; where a lent function fails, the parts that call it have failed alone."""
        events: list[Event] = []
        kept: list[Values] = []
        try:
            values = self.looked(case, events, kept)
        except FunctionFailed:
            return tuple(alone.run(case) for alone in self.alone)
        split: list[list[Event]] = [[] for _ in values]
        whole: list[list[RawEvent]] = [[] for _ in values]
        for event, raw in zip(events, self.whole(case, events, kept), strict=True):
            part, number = self.nodes[event[0]]
            split[part].append((number, *event[1:]))
            whole[part].append(raw)
        return tuple(map(Run, values, map(tuple, split), map(tuple, whole)))

    def run(self, case: Case) -> Run:
        """Return what became of the first part, with what was looked at before a lent function failed, if one did."""
        events: list[Event] = []
        kept: list[Values] = []
        value, failed = None, None
        try:
            value = self.looked(case, events, kept)[0]
        except FunctionFailed as failure:
            failed = str(failure)
        return Run(value, tuple(events), tuple(self.whole(case, events, kept)), failed)

    @cached_property
    def alone(self) -> tuple[Compiled, ...]:
        """Each part by itself."""
        return tuple(Compiled((part,)) for part in self.parts)

    @property
    def source(self) -> str:
        """The text of the untraced variant."""
        return self._text.text

    @property
    def traced_source(self) -> str:
        """The text of the traced variant."""
        return self._traced_text.text

    @cached_property
    def _text(self) -> Written:
        return written(self.parts)

    @cached_property
    def _traced_text(self) -> Written:
        return written(self.parts, traced=True)

    @cached_property
    def _untraced(self) -> Callable[..., Values]:
        return _function(self._text, PARAMETERS[:1])

    @cached_property
    def _traced(self) -> Callable[..., Values]:
        return _function(self._traced_text, PARAMETERS)

    @cached_property
    def _silent(self) -> Callable[..., Values]:
        roots = frozenset[str]().union(*(part.root.sort.roots for part in self.parts if part.root))
        return _function(written(self.parts, traced=True, silent=roots - DRAWN), PARAMETERS)


def _wholes(case: Case, operands: Values, plan: Sequence[tuple[str, Any]], waiting: Iterator[Values]) -> Values:
    """Return the operands of one event whole: from the event, the rule, the case, or what was kept."""
    found: list[Any] = []
    held = iter(next(waiting)) if any(how == KEPT for how, _ in plan) else iter(())
    for operand, (how, what) in zip(operands, plan, strict=False):
        if how == AS_IS:
            found.append(operand)
        elif how == GIVEN:
            found.append(what)
        elif how == READ:
            found.append(_at(case, what))
        else:
            found.append(next(held))
    return tuple(found)


def _at(case: Any, path: Path) -> Any:
    for name in path:
        if case is None:
            return None
        case = case[name]
    return case


def _function(text: Written, parameters: tuple[str, ...]) -> Callable[..., Values]:
    """Audit a text, compile it and return the function; it finds nothing but what the runtime gives it."""
    lent_functions = {name: lent(function) for name, function in text.lent.items()}
    names: dict[str, Any] = {"__builtins__": {}, **RUNTIME, **lent_functions}
    tree = audited(text.text, parameters, {*RUNTIME, *lent_functions} - {"fields"})
    exec(compile(tree, "<rule book>", "exec"), names)  # noqa: S102 - audited just now, and it finds no builtins
    function: Callable[..., Values] = names["book"]
    return function
