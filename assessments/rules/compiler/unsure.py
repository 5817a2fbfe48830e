"""Walks in three values: the first item that leaves them unknown is remembered."""

from __future__ import annotations

from assessments.rules.compiler.pen import Pen, Value
from assessments.rules.compiler.values import within_bounds
from assessments.rules.compiler.walk import BEATS, START, YES_NO, Walk, Walked
from assessments.rules.nodes import Quantifier


class Unsure(Walk):
    """A walk in which the filter or the test of an item may be unknown."""

    def __init__(self, pen: Pen, node: Quantifier, items: Value, recording: bool) -> None:
        super().__init__(pen, node, items, recording)
        self.held, self.unknown, self.first = (pen.name(letter) for letter in "wuy")

    def written(self) -> Walked:
        """Write the walk."""
        for name, value in ((self.result, START[self.node.word]), (self.counter, "0")):
            self.pen.line(f"{name} = {value}")
        self.pen.line(f"{self.unknown} = {self.first} = {self.place} = {self.best} = None")
        self.begin(True)
        bound = self._asked()
        if self.node.word in YES_NO:
            return self._decided()
        self._remember()
        return self._reckoned(bound)

    def _asked(self) -> float:
        """Write filter and test; an unknown filter leaves the item unknown."""
        pen = self.pen
        keep = self.joined(self.keep)
        if keep.none:
            keep = pen.named(keep)
            pen.enter(f"if {keep.text} is not False:")
        elif self.keep:
            pen.enter(f"if {keep.text}:")
        if self.counted:
            pen.line(f"{self.counter} += 1")
        if keep.none:
            pen.line(f"{self.held} = None")
            pen.enter(f"if {keep.text}:")
        value = self.joined(self.test)
        pen.line(f"{self.held} = {value.text}")
        if keep.none:
            pen.leave()
        return value.bound

    def _remember(self) -> None:
        """Remember the first item that leaves it unknown; what is done with the rest may go on with `elif`."""
        pen = self.pen
        pen.enter(f"if {self.held} is None:")
        pen.enter(f"if {self.unknown} is None:")
        pen.line(f"{self.unknown} = {self.index}")
        pen.line(f"{self.first} = {self.item}")
        pen.leave()
        pen.leave()

    def _decided(self) -> Walked:
        """Leave the loop at the first item that decides; else one unknown leaves it unknown."""
        pen, every = self.pen, self.node.word == "every"
        pen.enter(f"if {self.held} is {not every}:")
        pen.line(f"{self.result} = {not every}")
        if not self.counted:
            pen.line(f"{self.counter} = {self.index} + 1")
        pen.line("break")
        pen.leave()
        self._remember()
        self.end()
        pen.enter("else:")
        if not self.counted:
            pen.line(f"{self.counter} = {self.number_tested}")
        pen.line(f"{self.index} = {self.unknown}")
        pen.enter(f"if {self.unknown} is not None:")
        pen.line(f"{self.result} = None")
        pen.line(f"{self.item} = {self.first}")
        pen.leave()
        pen.leave()
        return Walked(Value(self.result, True, 0, True), self.counter, self.index, self.item)

    def _reckoned(self, bound: float) -> Walked:
        """Count, add up or keep the best of what is there; one unknown leaves the whole unknown."""
        pen, word = self.pen, self.node.word
        if word in BEATS:
            pen.enter(f"elif {self.result} is None or {self.held} {BEATS[word]} {self.result}:")
            pen.line(f"{self.result} = {self.held}")
            pen.line(f"{self.place} = {self.index}")
            pen.line(f"{self.best} = {self.item}")
        else:
            pen.enter(f"elif {self.held}:" if word == "count" else "else:")
            pen.line(f"{self.result} += {'1' if word == 'count' else self.held}")
        self.end()
        total = Value(self.result, False, self.bound(bound), True)
        total = total if word in BEATS else within_bounds(pen, total)
        pen.enter(f"if {self.unknown} is not None:")
        pen.line(f"{total.text} = None")
        pen.line(f"{self.place} = {self.unknown}")
        pen.line(f"{self.best} = {self.first}")
        pen.leave()
        return Walked(Value(total.text, True, total.bound, True), self.number_tested, self.place, self.best)
