"""TOML that remembers its lines: typed reading of tables, each refusal with file, line and key."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import TypeVar

from courses.content.errors import PackError
from courses.trade.errors import offer

T = TypeVar("T", str, int, list[object], dict[str, object])

_KINDS: Mapping[object, str] = {int: "a whole number", str: "text", list: "a list", dict: "a table"}

_HEADER = re.compile(r"^\[(\[)?\s*([A-Za-z0-9_-]+)\s*\]?\]")
_KEY = re.compile(r"^([A-Za-z0-9_-]+)\s*=")
_AT_LINE = re.compile(r"\(at line (\d+), column \d+\)|\(at end of document\)")

Lines = Mapping[tuple[str | int, ...], int]


def read_table(text: str, file: str, first_line: int = 1) -> Table:
    """The whole of a TOML ``text`` as one table; ``first_line`` is where the text begins in its ``file``.

    >>> read_table('title = "Seeing"', "a.toml").text("title")
    'Seeing'
    """
    try:
        values = tomllib.loads(text)
    except tomllib.TOMLDecodeError as wrong:
        place = _AT_LINE.search(str(wrong))
        row = int(place[1]) if place and place[1] else max(1, len(text.splitlines()))
        reason = _AT_LINE.sub("", str(wrong)).strip()
        raise PackError(file, first_line + row - 1, "toml", f"this is not TOML: {reason}.") from wrong
    return Table(file, values, dict(_lines(text, first_line)), (), first_line)


def _lines(text: str, first_line: int) -> Iterator[tuple[tuple[str | int, ...], int]]:
    """Each key's path and line; what stands inside a text of several lines is skipped."""
    at: tuple[str | int, ...] = ()
    counts: dict[str, int] = {}
    inside = ""
    for number, raw in enumerate(text.splitlines(), start=first_line):
        if not inside:
            if header := _HEADER.match(raw):
                at = _opened(header, counts)
                yield at, number
            elif key := _KEY.match(raw):
                yield (*at, key[1]), number
        inside = _still_inside(raw, inside)


def _opened(header: re.Match[str], counts: dict[str, int]) -> tuple[str | int, ...]:
    if not header[1]:
        return (header[2],)
    counts[header[2]] = counts.get(header[2], -1) + 1
    return (header[2], counts[header[2]])


def _still_inside(line: str, quote: str) -> str:
    """The triple quote that is still open after this line, or nothing."""
    for mark in re.findall(r'"""|\'\'\'', line):
        if not quote:
            quote = mark
        elif mark == quote:
            quote = ""
    return quote


@dataclass(frozen=True, slots=True)
class Table:
    """One TOML table with the place of each key."""

    file: str
    values: Mapping[str, object]
    lines: Lines
    path: tuple[str | int, ...]
    line: int

    def refuse(self, key: str, sentence: str) -> PackError:
        """A `PackError` at ``key`` of this table, ready to raise."""
        return PackError(self.file, self.line_of(key), self._name(key), sentence)

    def line_of(self, key: str) -> int:
        """The line on which ``key`` stands (of a list of tables, the first), or that of this table if it is missing."""
        listed = self.lines.get((*self.path, key, 0), self.line)
        return self.lines.get((*self.path, key), listed)

    def only(self, *allowed: str) -> Table:
        """This table, after refusing every key that is not ``allowed``."""
        for key in self.values:
            if key not in allowed:
                raise self.refuse(key, f"no such key; {offer(key, allowed)}")
        return self

    def has(self, key: str) -> bool:
        """Whether ``key`` was given."""
        return key in self.values

    def text(self, key: str, default: str | None = None) -> str:
        """The text under ``key``, stripped and never empty; ``default`` if it may be left out."""
        if default is not None and key not in self.values:
            return default
        value = self._get(key, str, '"Seeing"')
        if not value.strip():
            raise self.refuse(key, "this is empty; write some words.")
        return value.strip()

    def whole(self, key: str, low: int, high: int) -> int:
        """The whole number under ``key``, from ``low`` to ``high``."""
        value = self._get(key, int, str(low))
        if not low <= value <= high:
            raise self.refuse(key, f"{value} is outside {low} to {high}.")
        return value

    def texts(self, key: str) -> tuple[str, ...]:
        """The texts listed under ``key``: at least one, none twice."""
        value = self._get(key, list, '["one", "two"]')
        for item in value:
            if not isinstance(item, str) or not item.strip():
                raise self.refuse(key, f"{item!r} is not text; every entry of this list is a text in quotes.")
        if not value:
            raise self.refuse(key, "the list is empty; name at least one.")
        for item in value:
            if value.count(item) > 1:
                raise self.refuse(key, f"{item!r} stands twice in the list.")
        return tuple(str(item).strip() for item in value)

    def table(self, key: str) -> Table:
        """The table under ``key``."""
        value = self._get(key, dict, '{ meter = "probe" }')
        return Table(self.file, value, self.lines, (*self.path, key), self.line_of(key))

    def tables(self, key: str) -> tuple[Table, ...]:
        """The tables listed under ``key``, at least one."""
        value = self._get(key, list, f"[[{key}]]")
        items = [item for item in value if isinstance(item, dict)]
        if not items or len(items) < len(value):
            raise self.refuse(key, f"this is not a list of tables; begin each with [[{key}]].")
        paths = [(*self.path, key, n) for n in range(len(items))]
        fallback = self.line_of(key)
        return tuple(
            Table(self.file, item, self.lines, path, self.lines.get(path, fallback))
            for item, path in zip(items, paths, strict=True)
        )

    def _get(self, key: str, kind: type[T], example: str) -> T:
        if key not in self.values:
            raise self.refuse(key, f"this is missing; write {self._written(key, example)}.")
        value = self.values[key]
        if type(value) is not kind:
            raise self.refuse(key, f"{value!r} is not {_KINDS[kind]}; write {self._written(key, example)}.")
        return value

    @staticmethod
    def _written(key: str, example: str) -> str:
        return example if example.startswith("[[") else f"{key} = {example}"

    def _name(self, key: str) -> str:
        return ".".join(str(part) for part in (*self.path[:1], key))
