"""What somebody meant who writes as in another language: the word or the sign to write instead."""

from __future__ import annotations

import ast
from collections.abc import Iterable, Iterator

from assessments.rules.kinds import Kind, Schema

_NAMES = {"true": "True", "TRUE": "True", "yes": "True", "false": "False", "FALSE": "False", "no": "False"}
_NOTHING = ("null", "none", "nil", "undefined", "missing", "empty")
FUNCTIONS = {
    "all": "every",
    "forall": "every",
    "some": "any",
    "exists": "any",
    "min": "least",
    "max": "most",
    "total": "sum",
    "size": "len",
    "length": "len",
    "lower": "norm",
    "strip": "norm",
    "contains": "mentions",
    "isclose": "near",
    "is_answered": "answered",
}
"""Functions of other languages, each with the word that stands for it here."""

_SIZES = ("len", "length", "size", "count")
_SIGNS: dict[type[ast.operator], str] = {
    ast.Mod: "A per cent sign is not read; write the number alone, as in near_rel(a, b, 5).",
    ast.Pow: "There are no powers; write a * a.",
    ast.FloorDiv: "Write / to divide.",
    ast.BitAnd: "Write and to join tests.",
    ast.BitOr: "Write or to join tests.",
    ast.BitXor: "There are no powers; write a * a.",
}


def of_sign(operator: ast.operator) -> str:
    """Return what to write instead of an arithmetic sign the language has not.

    >>> of_sign(ast.FloorDiv())
    'Write / to divide.'
    """
    return _SIGNS.get(type(operator), "Of the arithmetic signs only + - * / are read.")


def of_field(name: str, items: str, kind: Kind) -> tuple[str, str | None]:
    """Return what to write instead of a field of a list or a text, and that alone where it can replace the field.

    >>> from assessments.rules.kinds import many, num
    >>> of_field("len", "answer.a", many(num()))
    ('; write len(answer.a)', 'len(answer.a)')
    """
    if name in _SIZES and kind.name in ("list", "str"):
        return f"; write len({items})", f"len({items})"
    if kind.item is not None and name in kind.item.fields:
        return f"; walk it, as in any(s.{name} … for s in {items})", None
    return "", None


def of_name(name: str, schema: Schema) -> tuple[str, str | None]:
    """Return what to write instead of a name nobody knows, and that alone where it can replace the name.

    >>> of_name("true", Schema({}))
    ('; write True', 'True')
    """
    if name in _NAMES:
        return f"; write {_NAMES[name]}", _NAMES[name]
    if name in _NOTHING:
        return "; what is missing is asked for by not answered(…)", None
    if name in _choices(schema.names.values()):
        return f"; a word stands in quotes, '{name}'", f"'{name}'"
    return "", None


def _choices(kinds: Iterable[Kind]) -> Iterator[str]:
    waiting = list(kinds)
    while waiting:
        kind = waiting.pop()
        yield from kind.vals
        waiting += [*kind.fields.values(), *([kind.item] if kind.item else [])]


def of_presence(part: ast.Compare, said: str) -> str | None:
    """Return what to write instead of `x is None` and `x is not None`, None for any other comparison.

    >>> of_presence(ast.parse("a is None", mode="eval").body, "a")
    'not answered(a)'
    """
    to_nothing = isinstance(part.comparators[0], ast.Constant) and part.comparators[0].value is None
    if not to_nothing or not isinstance(part.ops[0], ast.Is | ast.IsNot):
        return None
    return f"{'not ' if isinstance(part.ops[0], ast.Is) else ''}answered({said})"


def of_alternative(before: ast.expr, part: ast.expr) -> str:
    """Return how `x == 'a' or 'b'` is written, nothing where something else was meant.

    >>> tree = ast.parse("x == 'a' or 'b'", mode="eval").body
    >>> of_alternative(*tree.values)
    "; write x in ['a', 'b']"
    """
    if not (isinstance(part, ast.Constant) and isinstance(before, ast.Compare) and len(before.ops) == 1):
        return ""
    first = before.comparators[0]
    if not (isinstance(first, ast.Constant) and isinstance(before.ops[0], ast.Eq)):
        return ""
    return f"; write {ast.unparse(before.left)} in [{first.value!r}, {part.value!r}]"
