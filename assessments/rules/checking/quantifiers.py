"""`every any count sum least most (test for x in list if cond)`: shape, scope, cost, and what may be missing."""

from __future__ import annotations

import ast
from collections.abc import Collection

from assessments.rules.checking.answered import given_if
from assessments.rules.checking.sheet import Reader, Sheet
from assessments.rules.checking.words import RESERVED
from assessments.rules.kinds import Kind, integer, num, truth
from assessments.rules.nodes import Node, Quantifier, Sort
from assessments.rules.units import NUMBER, Unit

MAX_NEST = 2
_SHAPE = "Write {word}(test for x in list) or {word}(test for x in list if condition)."


def quantifier(sheet: Sheet, call: ast.Call, word: str, read: Reader) -> Node:
    """Return the node of a quantifier; what is wrong with it stands on the sheet."""
    shape = _shape(sheet, call, word)
    if shape is None:
        return sheet.broken(call)
    test, loop, variable = shape
    items = read(loop.iter)
    if items.sort.kind and items.sort.kind.item is None:
        sheet.fault(items.start, items.end, f"{word}() walks a list; this is {items.sort.kind.spoken}.")
    keep_part = loop.ifs[0] if loop.ifs else None
    with sheet.looping(variable, _item(items), items.sort.kind.max if items.sort.kind else 1):
        keep = _keep(sheet, word, keep_part, read) if keep_part else None
        with sheet.assuming(given_if(keep_part, True) if keep_part else frozenset()):
            body = read(test)
        _check_test(sheet, word, body)
    return sheet.node(Quantifier, call, _sort(word, variable, items, keep, body), word, variable, items, keep, body)


def _shape(sheet: Sheet, call: ast.Call, word: str) -> tuple[ast.expr, ast.comprehension, str] | None:
    """Return test, loop and variable when the quantifier is written as it has to be."""
    whole = call.args[0] if len(call.args) == 1 and not call.keywords else None
    if not isinstance(whole, ast.GeneratorExp):
        sheet.refuse(call, _SHAPE.format(word=word))
        return None
    loop = whole.generators[0]
    if len(whole.generators) > 1 or len(loop.ifs) > 1 or loop.is_async or not isinstance(loop.target, ast.Name):
        sheet.refuse(call, f"One 'for' with one plain name and one 'if' is read. {_SHAPE.format(word=word)}")
        return None
    if len(sheet.variables) >= MAX_NEST:
        sheet.refuse(call, f"Quantifiers are nested at most {MAX_NEST} deep.")
        return None
    taken: Collection[str] = {*sheet.variables, *sheet.schema.names, *sheet.functions, *RESERVED}
    if loop.target.id in taken or loop.target.id.startswith("_"):
        sheet.refuse(loop.target, f"The name '{loop.target.id}' is taken; use a fresh one such as s or t.")
        return None
    return whole.elt, loop, loop.target.id


def _item(items: Node) -> Sort:
    kind = items.sort.kind.item if items.sort.kind else None
    if kind is None:
        return Sort(roots=items.sort.roots)
    path = (*items.sort.path, "[]") if items.sort.path else None
    unit = Unit.of(kind.unit) if kind.unit else None
    return Sort(kind, unit, frozenset(), items.sort.roots, path)


def _keep(sheet: Sheet, word: str, part: ast.expr, read: Reader) -> Node:
    keep = read(part)
    if keep.sort.kind and keep.sort.name != "bool":
        sheet.fault(keep.start, keep.end, f"What follows 'if' has to be yes/no; it is {keep.sort.kind.spoken}.")
    _need_answered(sheet, keep, f"The filter of {word}()")
    return keep


def _check_test(sheet: Sheet, word: str, test: Node) -> None:
    """Check what a quantifier tests or adds up."""
    if test.sort.kind is None:
        return
    if word in ("every", "any", "count"):
        if test.sort.name != "bool":
            sheet.fault(test.start, test.end, f"{word}() needs a yes/no test; this is {test.sort.kind.spoken}.")
    elif not test.sort.is_number:
        sheet.fault(test.start, test.end, f"{word}() needs numbers; this is {test.sort.kind.spoken}.")
    elif word == "sum" and test.sort.unit and test.sort.unit.is_point:
        sheet.fault(test.start, test.end, "Temperatures can't be added up; take least(), most() or a difference in K.")
    if word not in ("every", "any"):
        _need_answered(sheet, test, f"What {word}() looks at")


def _need_answered(sheet: Sheet, part: Node, what: str) -> None:
    """A field an item may lack would leave the item neither in nor out: the rule has to say answered() first."""
    if part.sort.missing & set(sheet.variables):
        sheet.fault(
            part.start, part.end, f"{what} may be missing in an item; put answered(…) and before it.", "answered"
        )


def _sort(word: str, variable: str, items: Node, keep: Node | None, test: Node) -> Sort:
    parts = [items, test] if keep is None else [items, test, keep]
    missing = frozenset[str]().union(*(part.sort.missing for part in parts))
    if variable in missing:
        missing = missing - {variable} | {items.sort.base or "()"}
    roots = frozenset[str]().union(*(part.sort.roots for part in parts))
    if word in ("least", "most"):
        missing |= {"()"}
    kind: Kind = truth() if word in ("every", "any") else integer()
    unit = NUMBER if word == "count" else None
    if word in ("sum", "least", "most"):
        kind, unit = (integer() if test.sort.name == "int" else num()), test.sort.unit
    return Sort(kind, unit, missing, roots)
