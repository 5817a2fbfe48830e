"""What is wrong with a text that can't be parsed, in words of ours: what stands there, and what to write instead."""

from __future__ import annotations

import keyword
import re

from assessments.rules.faults import Fault

_SIGNS: dict[str, tuple[str, str | None]] = {
    r"&&?": ("Write and to join tests", "and"),
    r"\|\|?": ("Write or to join tests", "or"),
    r"!==|<>|=!": ("Write != for 'is not equal'", "!="),
    r"!(?!=)": ("Write not before a test", "not"),
    r"=>": ("Write >= for 'at least'", ">="),
    r"=<": ("Write <= for 'at most'", "<="),
    r"===|(?<![<>=!:])=(?!=)": ("Write == to compare", "=="),
    r"%": ("A per cent sign is not read; write the number alone, as in near_rel(a, b, 5)", None),
    r"\?": ("Write a if test else b to choose between two values", None),
    r";": ("A rule is one test; write and to join two", "and"),
    r"(?<![\w.])(?:elif|else\s+if)\b": ("There is no 'else if'; write a if test else (b if other else c)", None),
    r"(?<![\w.])then\b": ("Write a if test else b, without 'then'", None),
    r"(?<![\w.])(?:AND|OR|NOT|IN|IF|ELSE|FOR)\b": ("Write {small} in small letters", "{small}"),
    r"(?<![\w.])between\b": ("Write 3 <= value <= 5 for 'between'", None),
    r"(?<![\w.])contains\b": ("Write value in list for 'contains'", None),
    r"(?<![\w.])xor\b": ("Write != for 'one or the other'", "!="),
    r"[$@`]|->|\.\.+": ("'{found}' is not part of the language", None),
    r"(?<![\w.])0\d+\b(?!\.)": ("A number has no 0 before it; write 7, not 007", None),
}
_SIGN = re.compile("|".join(f"({pattern})" for pattern in _SIGNS))
_BY_PYTHON = {
    "was never closed": "This bracket is never closed",
    "unmatched": "This bracket was never opened",
    "does not match": "This bracket closes one of another kind",
    "expected 'else'": "An if needs its else: a if test else b",
    "must be parenthesized": "A word that walks a list takes nothing beside it: any(test for x in list)",
    "forgot a comma": "A comma, a sign or a word such as and is missing here",
}
_WALK = "A list is walked inside a word, as in any(test for x in list)."
_JOIN = "A comma, a sign or a word such as and is missing before this."
_OPENS = "'\"([{"
_LEADING = {"for": _WALK, "if": "A rule starts with no 'if'; write a if test else b."}
_JOINING = ("and", "or", "in", "is", "if", "else", "for")
_UNIT = re.compile(r"[A-Za-z]{1,4}\d?(?![\w.(])")
_AFTER_NUMBER = re.compile(r"(?<![\w.])[\d.]+\s*$")
_AFTER_WALK = re.compile(r"\b(every|any|count|sum|least|most)\s*$")
_AFTER_VALUE = re.compile(r"[\w'\")\]]\s*$")


def misspelt(text: str, bare: str, indent: int, error: SyntaxError) -> Fault:
    """Return what is wrong with a text, from Python's own syntax error; `bare` is the text with its quotes emptied.

    >>> from ast import parse
    >>> try: parse("answer.te = 3", mode="eval")
    ... except SyntaxError as error: misspelt("answer.te = 3", "answer.te = 3", 0, error).message
    'Write == to compare.'
    """
    start, end = _place(text, indent, error)
    if (error.msg or "").startswith("unterminated"):
        said = "The quote opened here is never closed; a text with an apostrophe stands in double quotes."
        return Fault(said, start, end)
    sign = _SIGN.search(bare)
    if sign:
        said, near = list(_SIGNS.values())[(sign.lastindex or 1) - 1]
        words = {"small": sign[0].lower(), "found": sign[0]}
        return Fault(f"{said.format(**words)}.", *sign.span(), near and near.format(**words))
    for part, sentence in _BY_PYTHON.items():
        if part in (error.msg or ""):
            return Fault(f"{sentence}.", start, end)
    return Fault(_wanted(text[:start], text[start:]), start, end)


def _place(text: str, indent: int, error: SyntaxError) -> tuple[int, int]:
    """Return where Python stopped; at the end of the text it gives no place."""
    start = min(len(text), indent + error.offset - 1) if error.offset else len(text.rstrip())
    last = indent + error.end_offset - 1 if error.end_offset and error.end_offset > 0 else start
    end = min(len(text), max(last, start + 1))
    return min(start, end), end


def _wanted(before: str, here: str) -> str:
    """Return what is wanted at a place, from the text before it and after it."""
    found = re.match(r"\w+", here)
    word = found[0] if found else ""
    if not here.strip():
        return "The rule breaks off here; a value, a test or a bracket has to follow."
    if not before.strip() and word in _LEADING:
        return _LEADING[word]
    if _AFTER_WALK.search(before):
        return _WALK
    if word in _JOINING:
        return f"A value or a test is missing before '{word}'."
    if keyword.iskeyword(word):
        return f"'{word}' is not part of the language."
    if _UNIT.match(here) and _AFTER_NUMBER.search(before):
        return f"A number is written without its unit, '{word}'; it takes that of the other side."
    if (word or here[0] in _OPENS) and _AFTER_VALUE.search(before):
        return _JOIN
    return f"A value or a test is missing before '{word or here[0]}'."
