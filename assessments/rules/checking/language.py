"""From the text of a rule to a syntax tree, within static bounds: nothing is ever executed here.

The bounds come first because Python's own parser recurses, folds look-alike letters into ASCII names and counts
columns in bytes. Every refusal is a Fault with its place in characters.
"""

from __future__ import annotations

import ast
import re
import unicodedata
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from typing import Any

from assessments.rules.checking.misspelt import misspelt
from assessments.rules.faults import Fault

MAX_CHARACTERS = 600
MAX_NODES = 200
MAX_DEPTH = 24
MAX_TEXT = 200
MAX_NUMBER = 1e9

_QUOTED = re.compile(r"'[^']*'|\"[^\"]*\"")
_NUMBER = re.compile(r"(?<![\w.])\d[\w.]*")
_PLAIN_NUMBER = re.compile(r"\d+(\.\d*)?([eE]\d*)?")
_HIDDEN = {"Cc": "a control character", "Cf": "an invisible character", "Cs": "half a character"}
_LINE_ENDS = {"Zl", "Zp"}
_PLAIN_FOR = {
    **dict.fromkeys("\u2018\u2019\u201a\u2032", "'"),
    **dict.fromkeys("\u201c\u201d\u201e\u2033", '"'),
    **dict.fromkeys("\u2212\u2013\u2014", "-"),
    "\u2265": ">=",
    "\u2264": "<=",
    "\u2260": "!=",
    "\u00d7": "*",
    "\u00f7": "/",
    "\u00ac": "not",
}


@dataclass(frozen=True, slots=True)
class Parsed:
    """A syntax tree with the text it stands for.

    >>> parse("answer.te > 3").text
    'answer.te > 3'
    """

    text: str
    tree: ast.expr
    indent: int

    def place(self, node: ast.AST) -> tuple[int, int]:
        """Return first and last character (exclusive) of a node; Python counts bytes, an editor characters.

        >>> parsed = parse("norm(answer.note) == 'è' and answer.ok")
        >>> parsed.place(parsed.tree.values[1])
        (29, 38)
        """
        start, end = getattr(node, "col_offset", 0), getattr(node, "end_col_offset", 0)
        if self.text.isascii():
            return start + self.indent, end + self.indent
        return self._characters(start) + self.indent, self._characters(end) + self.indent

    def _characters(self, byte: int) -> int:
        return len(self.text[self.indent :].encode()[:byte].decode(errors="ignore"))


def parse(text: object) -> Parsed | Fault:
    """Return the tree of one rule, or the first thing that bars it.

    >>> parse("answer.a >").message
    'The rule breaks off here; a value, a test or a bracket has to follow.'
    """
    fault = _unreadable(text)
    if fault is not None or not isinstance(text, str):
        return fault or Fault("A rule is a text.")
    indent = len(text) - len(text.lstrip(" "))
    try:
        tree = ast.parse(text[indent:], mode="eval").body
    except SyntaxError as error:
        return misspelt(text, _emptied(text), indent, error)
    except (ValueError, MemoryError, RecursionError, OverflowError):
        return Fault("The rule can't be read; it is nested too deep or holds a number too long.", 0, len(text))
    parsed = Parsed(text, tree, indent)
    return _too_large(parsed) or parsed


def _unreadable(text: object) -> Fault | None:
    """Return what bars a text before it is parsed."""
    if not isinstance(text, str):
        return Fault(f"A rule is a text, not {text!r:.40}.")
    if len(text) > MAX_CHARACTERS:
        return Fault(
            f"The rule has {len(text)} characters, at most {MAX_CHARACTERS} are read.", MAX_CHARACTERS, len(text)
        )
    if not text.strip():
        return Fault("The rule is empty; write a test such as answer.decision == key.decision.", 0, len(text))
    bare = _emptied(text)
    return _odd_character(text, bare) or _odd_number(bare) or _deep_brackets(bare)


def _emptied(text: str) -> str:
    """Return the text with nothing in its quotes that could be taken for a sign, each character at its place."""
    return _QUOTED.sub(lambda quoted: "'" + "_" * (len(quoted[0]) - 2) + "'", text)


def _odd_character(text: str, bare: str) -> Fault | None:
    if text.isascii() and text.isprintable() and "\\" not in text:
        return None
    for place, character in enumerate(text):
        category = unicodedata.category(character)
        if category in _HIDDEN or category in _LINE_ENDS:
            what = _HIDDEN.get(category, "a line end")
            return Fault(f"There is {what} here; a rule is one line of plain text.", place, place + 1)
        if character == "\\":
            return Fault("A backslash is not part of the language.", place, place + 1)
        if not bare[place].isascii():
            return Fault(*_foreign(character, place))
    return None


def _foreign(character: str, place: int) -> tuple[str, int, int, str | None]:
    plain = _PLAIN_FOR.get(character)
    name = unicodedata.name(character, "a letter")
    said = f"write {plain}." if plain else "outside quotes only plain ASCII is read."
    return f"'{character}' is {name}; {said}", place, place + 1, plain


def _odd_number(bare: str) -> Fault | None:
    for found in _NUMBER.finditer(bare):
        if not _PLAIN_NUMBER.fullmatch(found[0]):
            return Fault(
                f"'{found[0][:20]}' is no number; write it plainly, as 100 or 0.5.", found.start(), found.end()
            )
    return None


def _deep_brackets(bare: str) -> Fault | None:
    depth = 0
    if sum(map(bare.count, "([{")) <= MAX_DEPTH:
        return None
    for place, character in enumerate(bare):
        depth += (character in "([{") - (character in ")]}")
        if depth > MAX_DEPTH:
            return Fault(f"Brackets are nested more than {MAX_DEPTH} deep here.", place, place + 1)
    return None


def _too_large(parsed: Parsed) -> Fault | None:
    """Count nodes and depth without recursion, before anything walks the tree recursively."""
    level, count = [parsed.tree], 0
    for _ in range(MAX_DEPTH):
        count += len(level)
        level = [each for node in level for each in _below(node)]
        if not level or count > MAX_NODES:
            break
    return _what_is_too_large(parsed) if level or count > MAX_NODES else None


def _below(node: ast.AST) -> Iterable[Any]:
    below = _PARTS.get(type(node))
    if below:
        return below(node)
    return [each for each in ast.iter_child_nodes(node) if not isinstance(each, _GRAMMAR)]


def _what_is_too_large(parsed: Parsed) -> Fault | None:
    """Return the fault of a tree that is too large, at the first part that is nested too deep."""
    waiting: list[tuple[ast.AST, int]] = [(parsed.tree, 1)]
    count = 0
    while waiting:
        node, depth = waiting.pop()
        count += 1
        if count > MAX_NODES:
            return Fault(f"The rule has more than {MAX_NODES} parts; split it.", 0, len(parsed.text))
        if depth > MAX_DEPTH:
            return Fault(f"The rule is nested more than {MAX_DEPTH} deep here.", *parsed.place(node))
        waiting += [(each, depth + 1) for each in _below(node)]
    return None


_GRAMMAR = (ast.expr_context, ast.operator, ast.boolop, ast.unaryop, ast.cmpop)
_PARTS: dict[type[ast.AST], Callable[[Any], Iterable[Any]]] = {
    ast.Name: lambda node: (),
    ast.Constant: lambda node: (),
    ast.Attribute: lambda node: (node.value,),
    ast.Compare: lambda node: (node.left, *node.comparators),
    ast.BoolOp: lambda node: node.values,
    ast.BinOp: lambda node: (node.left, node.right),
    ast.UnaryOp: lambda node: (node.operand,),
    ast.Call: lambda node: (node.func, *node.args, *node.keywords),
}
"""The parts of what most rules are made of, in the order they stand, without asking Python for them one by one."""
