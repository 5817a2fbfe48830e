"""Yes and no: `not`, `and`, `or`, comparisons and their chains, in three values only where one may be unknown."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import partial

from assessments.rules.compiler.events import keep_plan, kept, note, note_held, operands, tested
from assessments.rules.compiler.pen import Pen, Value
from assessments.rules.compiler.values import unless_missing
from assessments.rules.nodes import Comparison, Logic, Node, Not

Next = Callable[[], Value]
_HEADS = {("and", False): "if {0}:", ("and", True): "if {0} is not False:"}
_HEADS |= {("or", False): "if not {0}:", ("or", True): "if {0} is not True:"}


def negation(pen: Pen, node: Not) -> Value:
    """Return a yes/no turned round."""
    return unless_missing(pen, [tested(pen, node.of)], lambda texts: f"(not {texts[0]})")


def logic(pen: Pen, node: Logic) -> Value:
    """Return parts joined by `and` or `or`; what is not needed is not worked out."""
    joined = Joined(pen, node.word, tested(pen, node.parts[0]))
    for part in node.parts[1:]:
        joined.add(partial(tested, pen, part))
    return joined.value


class Joined:
    """Parts joined one after the other: one expression while each is one, else statements."""

    def __init__(self, pen: Pen, word: str, first: Value) -> None:
        self.pen, self.word = pen, word
        self.none = first.none
        self.texts = [first.text]
        self.name = ""

    @property
    def value(self) -> Value:
        """All of them together."""
        if self.name:
            return Value(self.name, self.none, 0, True)
        text = f" {self.word} ".join(self.texts)
        return Value(f"({text})" if len(self.texts) > 1 else text, self.none)

    def add(self, part: Next, then: Callable[[], None] | None = None) -> None:
        """Join one more part, which is written only where it is looked at, with `then` after it."""
        pen, start, named = self.pen, self.pen.place(), self.name
        self._assign(self.value.text)
        pen.enter(_HEADS[self.word, self.none].format(self.name))
        inside = pen.place()
        value = part()
        if not (then or named or self.none or value.none) and pen.quiet(inside):
            pen.back(start)
            self.name = ""
            self.texts.append(value.text)
            return
        self._join(value)
        if then:
            then()
        pen.leave()
        self.none = self.none or value.none

    def _assign(self, text: str) -> None:
        if not self.name:
            self.name = self.pen.name("b")
            self.pen.line(f"{self.name} = {text}")

    def _join(self, value: Value) -> None:
        if not self.none:
            self.pen.line(f"{self.name} = {value.text}")
            return
        decides, passes = ("False", "True") if self.word == "and" else ("True", "False")
        if value.none:
            value = self.pen.named(value)
            self.pen.line(f"if {value.text} is not {passes}: {self.name} = {value.text}")
            return
        turned = "not " if self.word == "and" else ""
        self.pen.line(f"if {turned}{value.text}: {self.name} = {decides}")


def comparison(pen: Pen, node: Comparison) -> Value:
    """Return a comparison; a chain stops where it is decided, each part worked out once."""
    if len(node.signs) > 1:
        return _chain(pen, node)
    values = [pen.value(part) for part in node.parts]
    if pen.recording:
        values = [pen.named(value) for value in values]
    value = _pair(pen, node.signs[0], values)
    if pen.recording:
        value = pen.named(value, "b")
        note(pen, node, value.text, list(zip(node.parts, values, strict=True)))
    return value


def _pair(pen: Pen, sign: str, values: Sequence[Value]) -> Value:
    return unless_missing(pen, values, lambda texts: f"({texts[0]} {sign} {texts[1]})")


def _chain(pen: Pen, node: Comparison) -> Value:
    plain = _recorded_plain(pen, node) if pen.recording else _plain(pen, node)
    if plain:
        return plain
    chain = _Chain(pen, node)
    for place in range(1, len(node.parts)):
        chain.add(place)
    return chain.end()


def _plain(pen: Pen, node: Comparison) -> Value | None:
    """Return a chain as Python writes it, None where a part may be unknown or takes statements of its own."""
    start = pen.place()
    values = [pen.value(part) for part in node.parts[:2]]
    middle = pen.place()
    values += [pen.value(part) for part in node.parts[2:]]
    if any(value.none for value in values) or not pen.quiet(middle):
        pen.back(start)
        return None
    links = [f" {sign} {value.text}" for sign, value in zip(node.signs, values[1:], strict=True)]
    return Value(f"({values[0].text}{''.join(links)})")


def _recorded_plain(pen: Pen, node: Comparison) -> Value | None:
    """Return a chain of two links, recorded, None where its last part may be unknown or takes statements of its own."""
    start = pen.place()
    values = [pen.named(pen.value(part)) for part in node.parts[:2]]
    middle = pen.place()
    values.append(pen.value(node.parts[2]))
    pairs = list(zip(node.parts, values, strict=False))
    plain = len(node.parts) == len(pairs) and pen.quiet(middle) and values[2].atom and kept(pairs[2:]) is None
    if not plain or any(value.none for value in values):
        pen.back(start)
        return None
    name = pen.name("b")
    pen.line(f"{name} = {_pair(pen, node.signs[0], values[:2]).text}")
    pen.enter(f"if {name}:")
    pen.line(f"{name} = {_pair(pen, node.signs[1], values[1:]).text}")
    note(pen, node, name, pairs)
    pen.leave()
    pen.enter("else:")
    note(pen, node, "False", pairs[:2])
    pen.leave()
    keep_plan(pen, node, pairs)
    return Value(name, False, 0, True)


class _Chain:
    """A chain of comparisons: the links joined by `and`, the operands looked at so far for the trace."""

    def __init__(self, pen: Pen, node: Comparison) -> None:
        self.pen, self.node = pen, node
        self.seen = [pen.named(pen.value(node.parts[0]))]
        self.joined: Joined | None = None
        self.held, self.whole = pen.name("o"), pen.name("w")

    @property
    def pairs(self) -> list[tuple[Node, Value]]:
        """The operands looked at so far, each with its part."""
        return list(zip(self.node.parts, self.seen, strict=False))

    def add(self, place: int) -> None:
        """Add one link; its operand is worked out only where the links before it leave the chain open."""
        if self.joined is not None:
            self.joined.add(partial(self._link, place), self._hold if self.pen.recording else None)
            return
        self.joined = Joined(self.pen, "and", self._link(place))
        self._hold()

    def end(self) -> Value:
        """Return the chain, recorded with what was looked at."""
        assert self.joined is not None
        value = self.pen.named(self.joined.value, "b")
        if self.pen.recording:
            note_held(self.pen, self.node, value.text, self.pairs, self.held, self.whole)
        return value

    def _link(self, place: int) -> Value:
        pen = self.pen
        self.seen.append(pen.named(pen.value(self.node.parts[place])))
        return _pair(pen, self.node.signs[place - 1], self.seen[-2:])

    def _hold(self) -> None:
        if self.pen.recording:
            kept_so_far = kept(self.pairs) or "()"
            self.pen.line(f"{self.held} = ({operands(self.pen, self.pairs)[2:]},)")
            self.pen.line(f"{self.whole} = {kept_so_far}")
