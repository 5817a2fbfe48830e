"""TOML that remembers its lines: tables read by type, each refusal with file, line and key.

The standard reader gives no places; a second, shallow walk over the lines finds the line of every header and key.
"""

from __future__ import annotations

import re
import tomllib
from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass, fields
from math import isfinite
from typing import Any, TypeVar, cast

from courses.content.errors import FileRefused
from courses.trade.errors import offer

T = TypeVar("T")
Path = tuple[str | int, ...]

_KINDS: Mapping[object, str] = {
    str: "text",
    int: "a whole number",
    float: "a number",
    bool: "true or false",
    list: "a list",
    dict: "a table",
}
_NAME = r"""(?:[A-Za-z0-9_-]+|"[^"]+"|'[^']+')"""
_DOTTED = rf"{_NAME}(?:\s*\.\s*{_NAME})*"
_HEADER = re.compile(rf"\s*\[(\[)?\s*({_DOTTED})\s*\]\]?\s*(?:#.*)?$")
_KEY = re.compile(rf"\s*({_DOTTED})\s*=")
_AT_LINE = re.compile(r"\(at line (\d+), column \d+\)|\(at end of document\)")


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
        raise FileRefused(file, first_line + row - 1, "toml", f"this is not TOML: {reason}.") from wrong
    return Table(file, values, _lines(text, first_line), (), first_line)


def _lines(text: str, first_line: int) -> Mapping[Path, int]:
    """The line of every header and key, and of every table they stand in, by its path."""
    lines: dict[Path, int] = {}
    counts: dict[Path, int] = {}
    current: Path = ()
    for number, row in _rows_outside_texts(text, first_line):
        path: Path = ()
        if header := _HEADER.match(row):
            path = current = _opened(_names(header[2]), bool(header[1]), counts)
        elif key := _KEY.match(row):
            path = (*current, *_names(key[1]))
        for end in range(1, len(path) + 1):
            lines.setdefault(path[:end], number)
    return lines


def _rows_outside_texts(text: str, first_line: int) -> Iterator[tuple[int, str]]:
    """Each line with its number, but for those inside a text of several lines."""
    quote = ""
    for number, row in enumerate(text.split("\n"), start=first_line):
        if not quote:
            yield number, row
        for mark in re.findall(r'"""|\'\'\'', row):
            quote = "" if mark == quote else quote or mark


def _names(dotted: str) -> list[str]:
    return [name.strip("\"'") for name in re.findall(_NAME, dotted)]


def _opened(names: list[str], repeated: bool, counts: dict[Path, int]) -> Path:
    """The path of a header; a name that is repeated stands for its newest table."""
    path: Path = ()
    for name in names[:-1]:
        path = (*path, name)
        path = (*path, counts[path]) if path in counts else path
    path = (*path, names[-1])
    if not repeated:
        return path
    counts[path] = counts.get(path, -1) + 1
    return (*path, counts[path])


@dataclass(frozen=True, slots=True)
class Table:
    """One TOML table with the place of each key; every reading method raises `FileRefused` at that place."""

    file: str
    values: Mapping[str, object]
    lines: Mapping[Path, int]
    path: Path
    line: int

    def refuse(self, key: str, sentence: str) -> FileRefused:
        """A `FileRefused` at ``key`` of this table, ready to raise."""
        words = (f"[{part + 1}]" if isinstance(part, int) else f".{part}" for part in (*self.path, key))
        return FileRefused(self.file, self.line_of(key), "".join(words).removeprefix("."), sentence)

    def line_of(self, key: str) -> int:
        """The line on which ``key`` stands (of a list of tables, the first), or that of this table if it is missing."""
        return self.lines.get((*self.path, key), self.line)

    def only(self, *allowed: str) -> Table:
        """This table, after refusing every key that is not ``allowed``."""
        for key in self.values:
            self.refuse_unknown(key, key, allowed)
        return self

    def only_fields_of(self, shape: type[Any]) -> Table:
        """This table, after refusing every key that is no field of the dataclass ``shape``."""
        return self.only(*(field.name for field in fields(shape)))

    def refuse_unknown(self, key: str, value: str, known: Collection[str]) -> None:
        """Refuse a ``value`` that stands at ``key`` and is none of the ``known``, offering the nearest."""
        if value not in known:
            raise self.refuse(key, f"{value!r} isn't known here; {offer(value, known)}")

    def has(self, key: str) -> bool:
        """Whether ``key`` was given."""
        return key in self.values

    def text(self, key: str, default: str | None = None) -> str:
        """The text under ``key``, stripped and never empty; ``default`` if it may be left out."""
        value = self._get(key, default, '"Seeing"', str)
        if self.has(key) and not value.strip():
            raise self.refuse(key, "this is empty; write some words.")
        return value.strip()

    def new(self, key: str, taken: Collection[str]) -> str:
        """The text under ``key``, refused if it is ``taken``."""
        value = self.text(key)
        if value in taken:
            raise self.refuse(key, f"{value!r} stands above already; each {key} is used once.")
        return value

    def one_of(self, key: str, known: Collection[str], default: str | None = None) -> str:
        """The text under ``key``, one of the ``known``; ``default`` if it may be left out."""
        value = self.text(key, default)
        if self.has(key):
            self.refuse_unknown(key, value, known)
        return value

    def number(self, key: str, default: float | None = None) -> float:
        """The number under ``key``, never infinite; ``default`` if it may be left out."""
        value = self._get(key, default, "3.5", float, int)
        if not isfinite(value):
            raise self.refuse(key, f"{value} is not a finite number; write {key} = 3.5.")
        return value

    def whole(self, key: str, low: int, high: int, default: int | None = None) -> int:
        """The whole number under ``key``, from ``low`` to ``high``; ``default`` if it may be left out."""
        value = self._get(key, default, str(low), int)
        if not low <= value <= high:
            raise self.refuse(key, f"{value} is outside {low} to {high}.")
        return value

    def flag(self, key: str) -> bool:
        """Whether ``key`` is true; false where it is left out."""
        return self._get(key, False, "true", bool)

    def texts(self, key: str, default: tuple[str, ...] | None = None) -> tuple[str, ...]:
        """The texts listed under ``key``: at least one, none twice; ``default`` if they may be left out."""
        if default is not None and not self.has(key):
            return default
        value = self._get(key, None, '["one", "two"]', list)
        for item in value:
            if not isinstance(item, str) or not item.strip():
                raise self.refuse(key, f"{item!r} is not text; every entry of this list is a text in quotes.")
        if not value:
            raise self.refuse(key, "the list is empty; name at least one.")
        for item in value:
            if value.count(item) > 1:
                raise self.refuse(key, f"{item!r} stands twice in the list.")
        return tuple(item.strip() for item in value)

    def some_of(self, key: str, known: Collection[str], default: tuple[str, ...] | None = None) -> tuple[str, ...]:
        """The texts listed under ``key``, each one of the ``known``; ``default`` if they may be left out."""
        values = self.texts(key, default)
        for value in values:
            self.refuse_unknown(key, value, known)
        return values

    def table(self, key: str) -> Table:
        """The table under ``key``, empty where it is left out."""
        value = self._get(key, {}, '{ meter = "probe" }', dict)
        return Table(self.file, value, self.lines, (*self.path, key), self.line_of(key))

    def tables(self, key: str) -> tuple[Table, ...]:
        """The tables listed under ``key``, none where it is left out."""
        value = self._get(key, [], f"[[{key}]]", list)
        if not all(isinstance(item, dict) for item in value):
            raise self.refuse(key, f"this is not a list of tables; begin each with [[{key}]].")
        places = [(*self.path, key, n) for n in range(len(value))]
        return tuple(
            Table(self.file, item, self.lines, place, self.lines.get(place, self.line_of(key)))
            for item, place in zip(value, places, strict=True)
        )

    def some(self, key: str) -> tuple[Table, ...]:
        """The tables listed under ``key``, at least one."""
        tables = self.tables(key)
        if not tables:
            raise self.refuse(key, f"none stands here; begin at least one with [[{key}]].")
        return tables

    def once(self, key: str, name: str, taken: Collection[str] = ()) -> None:
        """Refuse the table listed under ``key`` whose ``name`` stands in one before it, or is ``taken``."""
        seen = set(taken)
        for table in self.tables(key):
            seen.add(table.new(name, seen))

    def _get(self, key: str, default: T | None, example: str, *kinds: type[T]) -> T:
        written = example if example.startswith("[[") else f"{key} = {example}"
        if not self.has(key):
            if default is None:
                raise self.refuse(key, f"this is missing; write {written}.")
            return default
        value = self.values[key]
        if type(value) not in kinds:
            raise self.refuse(key, f"{value!r} is not {_KINDS[kinds[0]]}; write {written}.")
        return cast(T, value)
