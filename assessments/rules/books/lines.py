"""Finds the line of a key in TOML text: the parser of the standard library gives none for what it understood."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Mapping
from dataclasses import dataclass

_HEADER = re.compile(r"\s*\[\[?\s*([\w.-]+)\s*\]\]?")
_KEY = re.compile(r"\s*([\w-]+|\"[^\"]*\")\s*=(.*)")
_AT_LINE = re.compile(r"\(at line (\d+), column \d+\)|\(at end of document\)")
_FENCES = ("'''", '"""')


@dataclass(frozen=True, slots=True)
class Lines:
    """Line numbers, from 1, of every key; a table of an array is `rule[0]`, `rule[1]`, …"""

    keys: Mapping[tuple[str, str], int]

    @classmethod
    def of(cls, text: str) -> Lines:
        """Return the lines of a text that tomllib has read.

        >>> Lines.of('code = "A"\\n[[rule]]\\npoints = 2').line("rule[0]", "points")
        3
        """
        return cls(_scan(text))

    def line(self, table: str, key: str = "") -> int:
        """Return the line of a key, of its table when the key is not there, else 1."""
        return self.keys.get((table, key)) or self.keys.get((table, ""), 1)


def _scan(text: str) -> dict[tuple[str, str], int]:
    found: dict[tuple[str, str], int] = {}
    seen: dict[str, int] = {}
    table, open_until = "", ""
    depth = 0
    for number, line in enumerate(text.splitlines(), 1):
        if open_until or depth > 0:
            open_until, depth = _still_open(line, open_until, depth)
            continue
        header, key = _HEADER.match(line), _KEY.match(line)
        if header and not key:
            table = _table(line, header[1], seen)
            found[table, ""] = number
        elif key:
            found[table, key[1].strip('"')] = number
            open_until, depth = _still_open(key[2], "", 0)
    return found


def _table(line: str, name: str, seen: dict[str, int]) -> str:
    if not line.lstrip().startswith("[["):
        return name
    seen[name] = seen.get(name, -1) + 1
    return f"{name}[{seen[name]}]"


def _still_open(line: str, open_until: str, depth: int) -> tuple[str, int]:
    """Return the fence of a long text and the depth of brackets that are open at the end of a line."""
    bare, place = [], 0
    while place < len(line):
        if open_until:
            end = line.find(open_until, place)
            if end < 0:
                return (open_until, depth) if open_until in _FENCES else ("", depth)
            place, open_until = end + len(open_until), ""
            continue
        fence = next((each for each in (*_FENCES, '"', "'") if line.startswith(each, place)), "")
        if line[place] == "#":
            break
        if not fence:
            bare.append(line[place])
        open_until, place = fence, place + (len(fence) or 1)
    depth += sum((each in "[{") - (each in "]}") for each in bare)
    return (open_until if open_until in _FENCES else ""), max(depth, 0)


def syntax_error(text: str, error: tomllib.TOMLDecodeError) -> tuple[int, str]:
    """Return the line of a TOML syntax error and what is wrong there, without the parser's own place.

    >>> try: tomllib.loads('a = ')
    ... except tomllib.TOMLDecodeError as error: syntax_error('a = ', error)
    (1, 'Invalid value')
    """
    found = _AT_LINE.search(str(error))
    line = int(found[1]) if found and found[1] else max(len(text.splitlines()), 1)
    return line, _AT_LINE.sub("", str(error)).strip()
