"""From the checked parts of a rule book to the text of one function that judges them all."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from assessments.rules.checking.checker import Checked
from assessments.rules.compiler.calls import call
from assessments.rules.compiler.events import rounded_ahead, tested
from assessments.rules.compiler.logic import comparison, logic, negation
from assessments.rules.compiler.loops import quantifier
from assessments.rules.compiler.orders import look_ahead
from assessments.rules.compiler.paths import item, often, path, read_ahead
from assessments.rules.compiler.pen import Maker, Pen
from assessments.rules.compiler.values import arithmetic, choose, literal, literal_list, minus
from assessments.rules.functions import Function
from assessments.rules.nodes import (
    Arithmetic,
    Call,
    Choose,
    Comparison,
    Field,
    Item,
    Literal,
    LiteralList,
    Logic,
    Minus,
    Node,
    Not,
    Quantifier,
    Root,
)

PARAMETERS = ("case", "E", "W")
"""The case, and what takes events (`E`) and the operands that an event holds only in part (`W`)."""
_OFTEN = 2
_MAKERS: dict[type[Node], Maker] = {
    Literal: literal,
    LiteralList: literal_list,
    Root: path,
    Item: item,
    Field: path,
    Not: negation,
    Minus: minus,
    Logic: logic,
    Arithmetic: arithmetic,
    Choose: choose,
    Comparison: comparison,
    Call: call,
    Quantifier: quantifier,
}


@dataclass(frozen=True, slots=True)
class Written:
    """The text of a generated function, the lent functions it calls by name, and where it keeps operands whole."""

    text: str
    lent: Mapping[str, Function]
    wholes: Mapping[int, tuple[tuple[str, Any], ...]]


def written(parts: Sequence[Checked], traced: bool = False, silent: frozenset[str] | None = None) -> Written:
    """Return the function of some parts; it gives a tuple of their values.

    `silent` asks for the variant in which `answered(…)` of something missing is unknown where it reads one of these
    roots; nothing that the checker settled is relied upon there.
    """
    pen = Pen(_MAKERS, traced, silent)
    roots = [part.root for part in parts if part.root is not None]
    read_ahead(pen, often(roots, 1 if traced else _OFTEN))
    look_ahead(pen, [part.nodes for part in parts])
    head = len(pen.lines)
    values = []
    for part, root in zip(parts, roots, strict=True):
        value = tested(pen, root) if root.sort.name == "bool" else pen.value(root)
        values.append(pen.named(value).text if traced else value.text)
        pen.first += len(part.nodes)
    pen.lines[head:head] = rounded_ahead(pen)
    pen.line(f"return ({''.join(f'{value}, ' for value in values)})")
    taken = PARAMETERS if traced else PARAMETERS[:1]
    text = "\n".join([*pen.preamble, f"def book({', '.join(taken)}):", *pen.lines, ""])
    return Written(text, pen.lent, pen.wholes)
