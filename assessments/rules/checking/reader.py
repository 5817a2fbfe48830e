"""Reads the parts of a rule, one by one, into nodes: names, fields, literals, logic, choices, calls."""

from __future__ import annotations

import ast
import re
from collections.abc import Callable
from dataclasses import replace as with_changes
from typing import Any

from assessments.rules.checking import meant
from assessments.rules.checking.answered import given_if, mark
from assessments.rules.checking.language import MAX_NUMBER, MAX_TEXT
from assessments.rules.checking.operators import ARITHMETIC, SIGNS, alike, arithmetic, comparison, computed
from assessments.rules.checking.quantifiers import quantifier
from assessments.rules.checking.sheet import Sheet
from assessments.rules.checking.words import QUANTIFIERS, RESERVED, WORDS, lent, number_kind
from assessments.rules.faults import nearest, offered
from assessments.rules.kinds import Kind, many, num, truth
from assessments.rules.nodes import (
    NOTHING,
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
    Path,
    Root,
    Sort,
)
from assessments.rules.units import KNOWN, Unit


class PartReader:
    """One pass over the syntax tree; every kind of part it doesn't name is refused."""

    def __init__(self, sheet: Sheet) -> None:
        self.sheet = sheet
        self.readers: dict[type[ast.expr], Callable[[Any], Node]] = {
            ast.Constant: self.constant,
            ast.List: self.literals,
            ast.Tuple: self.literals,
            ast.Name: self.name,
            ast.Attribute: self.field,
            ast.UnaryOp: self.unary,
            ast.BoolOp: self.logic,
            ast.BinOp: self.binary,
            ast.IfExp: self.choose,
            ast.Compare: self.compare,
            ast.Call: self.call,
        }

    def read(self, part: ast.expr) -> Node:
        """Return the node of a part."""
        self.sheet.spend(1)
        reader = self.readers.get(type(part))
        if reader is None:
            return self.sheet.refuse(part, f"{_SPOKEN.get(type(part), 'This')} is not part of the language.")
        node = reader(part)
        if self.sheet.given and node.sort.missing and mark(part) in self.sheet.given:
            node = with_changes(node, sort=with_changes(node.sort, missing=frozenset()))
            self.sheet.nodes[node.number] = node
        return node

    def constant(self, part: ast.Constant) -> Node:
        """Return a value written in the rule; texts and numbers are bounded."""
        value = part.value
        if isinstance(value, bool):
            return self._literal(part, truth(), value)
        if isinstance(value, int | float):
            if not abs(value) <= MAX_NUMBER:
                return self.sheet.refuse(part, f"The number is larger than {MAX_NUMBER:.0e}.")
            return self._literal(part, Kind("int") if isinstance(value, int) else num(), value)
        if isinstance(value, str):
            if not _ONE_TEXT.fullmatch(self.sheet.said(part)):
                return self.sheet.refuse(part, "A text stands in one pair of quotes; a comma is missing between two.")
            if len(value) > MAX_TEXT:
                return self.sheet.refuse(part, f"The text is longer than {MAX_TEXT} characters.")
            return self._literal(part, Kind("str"), value)
        return self.sheet.refuse(part, "Only numbers, texts, True and False are written; for missing use answered().")

    def _literal(self, part: ast.expr, kind: Kind, value: float | bool | str) -> Node:
        return self.sheet.node(Literal, part, Sort(kind, literal=(value,)), value)

    def literals(self, part: ast.List | ast.Tuple) -> Node:
        """Return a list written in the rule: literals only, all of one kind."""
        if isinstance(part, ast.Tuple) and not self.sheet.said(part).startswith("("):
            return self.sheet.refuse(
                part, "Commas stand inside ( ) or [ ] only; a fraction is written with a point, 3.5."
            )
        read = [self.read(each) for each in part.elts]
        values = [each for each in read if isinstance(each, Literal)]
        families = {"num" if each.sort.is_number else each.sort.name for each in values}
        if len(values) < len(read) or len(families) != 1:
            return self.sheet.refuse(part, "A list holds at least one number, or text, written out; all of one kind.")
        kind = many(number_kind(values) if "num" in families else Kind(families.pop()), len(values))
        written = tuple(each.value for each in values)
        places = tuple((each.start, each.end) for each in values)
        return self.sheet.node(LiteralList, part, Sort(kind, literal=written), written, places)

    def name(self, part: ast.Name) -> Node:
        """Return a loop variable or a name of the schema."""
        if part.id in self.sheet.variables:
            sort = self.sheet.variables[part.id]
            loose = frozenset({part.id}) if sort.kind and sort.kind.opt else sort.missing
            return self.sheet.node(Item, part, with_changes(sort, base=part.id, missing=loose), part.id)
        kind = self.sheet.schema.names.get(part.id)
        if kind is None:
            self._unknown_name(part)
            return self.sheet.broken(part)
        return self.sheet.node(
            Root, part, self._read_at(kind, (part.id,), part.id, frozenset({part.id}), part), part.id
        )

    def _unknown_name(self, part: ast.Name) -> None:
        start, end = self.sheet.parsed.place(part)
        said, instead = meant.of_name(part.id, self.sheet.schema)
        if said:
            self.sheet.fault(start, end, f"There is no name '{part.id}'{said}.", instead)
        else:
            self.sheet.unknown(start, end, "name", part.id, [*self.sheet.variables, *self.sheet.schema.names])

    def field(self, part: ast.Attribute) -> Node:
        """Return a field of a record; an unknown one is faulted at its name."""
        owner = self.read(part.value)
        if owner.sort.kind is None:
            return self.sheet.broken(part)
        end = self.sheet.parsed.place(part)[1]
        start = end - len(part.attr)
        if owner.sort.name != "rec":
            said, instead = meant.of_field(part.attr, ast.unparse(part.value), owner.sort.kind)
            spoken = owner.sort.kind.spoken.capitalize()
            self.sheet.fault(start, end, f"{spoken} has no fields, so no '{part.attr}'{said}.", instead)
            return self.sheet.broken(part)
        kind = owner.sort.kind.fields.get(part.attr)
        if kind is None:
            self.sheet.unknown(start, end, "field", part.attr, owner.sort.kind.fields)
            return self.sheet.broken(part)
        path = (*(owner.sort.path or ()), part.attr)
        sort = self._read_at(kind, path, owner.sort.base or "()", owner.sort.roots, part)
        if owner.sort.missing:
            sort = with_changes(sort, missing=sort.missing | owner.sort.missing)
        return self.sheet.node(Field, part, sort, owner, part.attr)

    def _read_at(self, kind: Kind, path: Path, base: str, roots: frozenset[str], part: ast.expr) -> Sort:
        """Return the sort of the value at a path and note that the rule reads it."""
        self.sheet.reads.add(path)
        missing = frozenset({base}) if kind.opt else NOTHING
        holder = kind.item or kind
        unit = Unit.of(holder.unit) if holder.unit else None
        if unit and holder.unit not in KNOWN and not {name for name, _ in unit.powers} <= KNOWN:
            place = self.sheet.parsed.place(part)
            near = nearest(unit.text, KNOWN)
            said = offered(f"The unit '{unit.text}' is not one of the shop's", near)
            self.sheet.warn(place[1] - len(path[-1]), place[1], said, near)
        return Sort(kind, unit, missing, roots, path, base)

    def unary(self, part: ast.UnaryOp) -> Node:
        """Return `not` or `-` of a part."""
        of = self.read(part.operand)
        if isinstance(part.op, ast.Not):
            self._need_truth(of, "'not' needs yes/no")
            return self.sheet.node(Not, part, computed(truth(), (of,)), of)
        if not isinstance(part.op, ast.USub):
            return self.sheet.refuse(part, "Of the signs before a value only '-' and 'not' are read.")
        if of.sort.kind and not of.sort.is_number:
            return self.sheet.refuse(part.operand, f"'-' needs a number; this is {of.sort.kind.spoken}.")
        known = of.sort.literal if of.sort.is_number else None
        literal = tuple(None if value is None else -value for value in known) if known else None
        return self.sheet.node(Minus, part, with_changes(of.sort, path=None, base=None, literal=literal), of)

    def logic(self, part: ast.BoolOp) -> Node:
        """Return parts joined by `and` or `or`, each read with what the parts before it settle."""
        joined_by_and = isinstance(part.op, ast.And)
        given: frozenset[str] = frozenset()
        parts = []
        for each in part.values:
            with self.sheet.assuming(given):
                parts.append(self.read(each))
            hint = meant.of_alternative(part.values[len(parts) - 2], each) if len(parts) > 1 else ""
            self._need_truth(parts[-1], f"'{'and' if joined_by_and else 'or'}' joins yes/no", hint)
            given |= given_if(each, joined_by_and)
        word = "and" if joined_by_and else "or"
        return self.sheet.node(Logic, part, computed(truth(), parts), word, tuple(parts))

    def _need_truth(self, part: Node, what: str, hint: str = "") -> None:
        if part.sort.kind and part.sort.name != "bool":
            self.sheet.fault(part.start, part.end, f"{what}; this is {part.sort.kind.spoken}{hint}.")

    def binary(self, part: ast.BinOp) -> Node:
        """Return two numbers joined by an arithmetic sign."""
        left, right = self.read(part.left), self.read(part.right)
        sign = ARITHMETIC.get(type(part.op))
        if sign is None:
            self.sheet.fault(*self._sign(left, right), meant.of_sign(part.op))
            return self.sheet.broken(part)
        return self.sheet.node(Arithmetic, part, arithmetic(self.sheet, sign, left, right), sign, left, right)

    def _sign(self, left: Node, right: Node) -> tuple[int, int]:
        """Return where the sign between two parts stands."""
        between = self.sheet.parsed.text[left.end : right.start]
        sign = between.strip(" ()")
        start = left.end + between.index(sign)
        return start, start + len(sign)

    def choose(self, part: ast.IfExp) -> Node:
        """Return `yes if test else no`; the test has to be there."""
        test = self.read(part.test)
        self._need_truth(test, "What follows 'if' has to be yes/no")
        if test.sort.missing and test.sort.name == "bool":
            said = "The condition may be missing; put answered(…) and before it."
            self.sheet.fault(test.start, test.end, said, "answered")
        with self.sheet.assuming(given_if(part.test, True)):
            yes = self.read(part.body)
        with self.sheet.assuming(given_if(part.test, False)):
            no = self.read(part.orelse)
        return self.sheet.node(Choose, part, self._either(yes, no, test), test, yes, no)

    def _either(self, yes: Node, no: Node, test: Node) -> Sort:
        if yes.sort.kind is None or no.sort.kind is None:
            return Sort()
        unlike = alike(self.sheet, yes, no, no.sort.kind, no.sort.unit)
        if unlike:
            self.sheet.fault(no.start, no.end, unlike)
            return Sort()
        numbers = yes.sort.is_number
        kind = number_kind((yes, no)) if numbers else (no.sort.kind if yes.sort.literal else yes.sort.kind)
        sort = computed(kind, (yes, no, test), yes.sort.unit or no.sort.unit)
        literal = (*yes.sort.literal, *no.sort.literal) if yes.sort.literal and no.sort.literal else None
        return with_changes(sort, literal=literal)

    def compare(self, part: ast.Compare) -> Node:
        """Return a comparison or a chain of them."""
        parts = [self.read(part.left)]
        instead = meant.of_presence(part, self.sheet.said(part.left))
        if instead:
            return self.sheet.refuse(part, f"'is' is not part of the language; write {instead}.", instead)
        signs = []
        for operator, each in zip(part.ops, part.comparators, strict=True):
            parts.append(self.read(each))
            sign = SIGNS.get(type(operator))
            if sign is None:
                return self.sheet.refuse(part, "'is' is not part of the language; write == to compare.")
            comparison(self.sheet, sign, parts[-2], parts[-1])
            signs.append(sign)
        return self.sheet.node(Comparison, part, computed(truth(), parts), tuple(signs), tuple(parts))

    def call(self, part: ast.Call) -> Node:
        """Return a quantifier, a word of the language or a lent function, called."""
        if not isinstance(part.func, ast.Name):
            return self.sheet.refuse(part.func, "Only a function named by one word can be called.")
        name = part.func.id
        if name in QUANTIFIERS:
            return quantifier(self.sheet, part, name, self.read)
        if part.keywords or any(isinstance(each, ast.Starred) for each in part.args):
            return self.sheet.refuse(part, f"{name}() takes its values in order, without names or stars.")
        if name not in WORDS and name not in self.sheet.functions:
            return self._unknown_function(part, name)
        return self._called(part, name)

    def _unknown_function(self, part: ast.Call, name: str) -> Node:
        """Note a function nobody knows; what it is called with is read all the same."""
        start, end = self.sheet.parsed.place(part.func)
        near = meant.FUNCTIONS.get(name)
        if near:
            self.sheet.fault(start, end, offered(f"There is no function '{name}'", near), near)
        else:
            self.sheet.unknown(start, end, "function", name, [*RESERVED, *self.sheet.functions])
        for each in part.args:
            if not isinstance(each, ast.GeneratorExp):
                self.read(each)
        return self.sheet.broken(part)

    def _called(self, part: ast.Call, name: str) -> Node:
        arguments = tuple(self.read(each) for each in part.args)
        function = self.sheet.functions.get(name)
        takes = len(function.params) if function else WORDS[name].takes
        if len(arguments) != takes:
            usage = function.signature if function else WORDS[name].usage
            return self.sheet.refuse(part, f"{name}() takes {takes} values, not {len(arguments)}: {usage}.")
        sort = lent(self.sheet, function, arguments) if function else WORDS[name].sort(self.sheet, arguments)
        return self.sheet.node(Call, part, sort, name, arguments, function)


_ONE_TEXT = re.compile(r"'[^']*'|\"[^\"]*\"")
_SPOKEN: dict[type[ast.expr], str] = {
    ast.Subscript: "Picking an item by its place",
    ast.Lambda: "A lambda",
    ast.JoinedStr: "A text with { } in it",
    ast.Dict: "A { } of pairs",
    ast.Set: "A { } set",
    ast.ListComp: "A list worked out in [ ]",
    ast.GeneratorExp: "A bare 'for'",
    ast.NamedExpr: "':='",
    ast.Starred: "A star",
}
