"""Walks in two values: what is looked at is there in every item."""

from __future__ import annotations

from assessments.rules.compiler.pen import Value
from assessments.rules.compiler.telling import tell_decided, tell_undecided
from assessments.rules.compiler.values import within_bounds
from assessments.rules.compiler.walk import BEATS, START, TRUE, YES_NO, Walk, Walked


class Plain(Walk):
    """A walk that needs no third value."""

    def written(self) -> Walked | None:
        """Write the walk; None where an item may leave it unknown, and then what was written is to be struck out."""
        if self.group and not (self.keep or self.test) and (self.node.word == "count" or not self.recording):
            return self._told_by_group()
        self._prepare()
        self.begin(self.recording and self.node.word not in ("count", "sum"))
        value = self._asked()
        if value is None:
            del self.pen.variables[self.node.variable]
            return None
        return self._decide(value) if self.node.word in YES_NO else self._reckon(value)

    def _told_by_group(self) -> Walked:
        """Whether the group holds a row, or how many."""
        any_there = self.node.word == "any"
        text = f"({self.word} in {self.group})" if any_there else f"len({self.group}.get({self.word}, ()))"
        return Walked(Value(text, False, self.bound(0)), self.number_tested, "None", "")

    def _prepare(self) -> None:
        word, line = self.node.word, self.pen.line
        if word not in YES_NO or not self.recording:
            line(f"{self.result} = {START[word]}")
        if self.recording and self.counted:
            line(f"{self.counter} = 0")
        if self.recording and word in BEATS:
            line(f"{self.place} = None")

    def _asked(self) -> Value | None:
        """Write the filter and return the test; None where one of them may be unknown."""
        keep = self.joined(self.keep)
        if keep.none:
            return None
        if self.keep:
            self.pen.enter(f"if {keep.text}:")
        if self.recording and self.counted:
            self.pen.line(f"{self.counter} += 1")
        value = self.joined(self.test)
        return None if value.none else value

    def _decide(self, value: Value) -> Walked:
        """Leave the loop at the first item that decides; what is recorded of it is written right there."""
        pen, decides = self.pen, self.node.word == "any"
        then = self.counter if self.counted else f"{self.index} + 1"
        tested = self.number_tested if self.recording else ""
        walked = Walked(
            Value(self.result, False, 0, True), tested, self.index, self.item, decides, then if self.recording else ""
        )
        if value is not TRUE:
            pen.enter(f"if {value.text}:" if decides else f"if not {value.text}:")
        pen.line(f"{self.result} = {decides}")
        if self.recording:
            tell_decided(pen, self.node, walked)
        pen.line("break")
        self.end()
        if self.recording:
            pen.enter("else:")
            pen.line(f"{self.result} = {not decides}")
            tell_undecided(pen, self.node, walked)
            pen.leave()
        return walked

    def _reckon(self, value: Value) -> Walked:
        """Count, add up, or keep the best."""
        pen, word = self.pen, self.node.word
        if word in BEATS:
            return self._best(pen.named(value, "w"))
        if word == "count" and value is not TRUE:
            pen.enter(f"if {value.text}:")
        pen.line(f"{self.result} += {'1' if word == 'count' else value.text}")
        self.end()
        total = within_bounds(pen, Value(self.result, False, self.bound(value.bound), True))
        return Walked(total, self.number_tested, "None", "")

    def _best(self, value: Value) -> Walked:
        pen = self.pen
        pen.enter(f"if {self.result} is None or {value.text} {BEATS[self.node.word]} {self.result}:")
        pen.line(f"{self.result} = {value.text}")
        if self.recording:
            pen.line(f"{self.place} = {self.index}")
            pen.line(f"{self.best} = {self.item}")
        self.end()
        return Walked(Value(self.result, True, value.bound, True), self.number_tested, self.place, self.best)
