"""A walk over a list or over the rows of a group: its names, its loop, and what it leaves behind."""

from __future__ import annotations

from dataclasses import dataclass
from functools import partial

from assessments.rules.compiler.logic import Joined
from assessments.rules.compiler.orders import split
from assessments.rules.compiler.pen import Pen, Value
from assessments.rules.nodes import Node, Quantifier

YES_NO = ("every", "any")
BEATS = {"least": "<", "most": ">"}
START = {"every": "True", "any": "False", "count": "0", "sum": "0", "least": "None", "most": "None"}
_TWO = 2
TRUE = Value("True", atom=True)


@dataclass(frozen=True, slots=True)
class Walked:
    """What a walk left behind: its value, and the names of how many items were tested, which decided and where.

    `decides` is what the test gives of an item that decides, None where that isn't known beforehand; `then` is how
    many were tested up to there.
    """

    value: Value
    tested: str
    place: str
    item: str
    decides: bool | None = None
    then: str = ""


class Walk:
    """One walk. `recording` asks for what a trace holds of it; inside the loop nothing is recorded."""

    def __init__(self, pen: Pen, node: Quantifier, items: Value, recording: bool) -> None:
        self.pen, self.node, self.items, self.recording = pen, node, items, recording
        self.result, self.counter, self.index, self.item = (pen.name(letter) for letter in "qnix")
        self.place, self.best = pen.name("j"), pen.name("z")
        self.keep: tuple[Node, ...] = (node.keep,) if node.keep else ()
        self.test: tuple[Node, ...] = (node.test,)
        self.counted = bool(self.keep)
        self.group, self.word = "", ""
        self.blocks = len(pen.blocks)
        self._narrow()

    def _narrow(self) -> None:
        """Walk the rows of a group, where one was made."""
        narrowed = split(self.node)
        group = self.pen.recall(("group", narrowed.items, narrowed.field)) if narrowed else None
        if narrowed and group:
            self.group, self.word, self.keep = group, repr(narrowed.word), narrowed.keep
            self.test = self.test if narrowed.test is None else narrowed.test

    def begin(self, placed: bool) -> None:
        """Open the loop; places are told where they are asked for."""
        pen = self.pen
        source = f"{self.group}.get({self.word}, ())" if self.group else self.items.text
        if self.group and pen.traced:
            pen.enter(f"for {self.index}, {self.item} in {source}:")
        elif placed:
            pen.enter(f"for {self.index}, {self.item} in enumerate({source}):")
        else:
            pen.enter(f"for {self.item} in {source}:")
        pen.variables[self.node.variable] = self.item

    def end(self) -> None:
        """Close the loop and whatever is open inside it."""
        while len(self.pen.blocks) > self.blocks:
            self.pen.leave()
        del self.pen.variables[self.node.variable]

    def joined(self, parts: tuple[Node, ...]) -> Value:
        """Return parts joined by `and`; where nothing is asked, that is met."""
        if len(parts) < _TWO:
            return self.pen.value(parts[0]) if parts else TRUE
        joined = Joined(self.pen, "and", self.pen.value(parts[0]))
        for part in parts[1:]:
            joined.add(partial(self.pen.value, part))
        return joined.value

    @property
    def number_tested(self) -> str:
        """How many items were tested, where the walk went to the end."""
        return self.counter if self.counted else f"len({self.items.text})"

    def bound(self, each: float) -> float:
        """Return the largest that the value can be, `each` the largest of what is looked at."""
        most = self.node.items.sort.kind.max if self.node.items.sort.kind else 1
        return {"count": most, "sum": each * most}.get(self.node.word, each)
