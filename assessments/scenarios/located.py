"""TOML that remembers where it was written, so that a refusal names file, line and key.

The standard reader gives no places; a second, shallow walk over the lines finds the line of every key and header.
"""

import re
import tomllib
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field

from assessments.scenarios.errors import SpecRefused
from courses.trade.errors import offer

Path = tuple[str | int, ...]
_AT_LINE = re.compile(r"at line (\d+)")
_HEADER = re.compile(r"^\s*(\[\[?)\s*([^\]]+?)\s*\]")
_KEY = re.compile(r"""^\s*((?:[A-Za-z0-9_-]+|"[^"]+")(?:\s*\.\s*(?:[A-Za-z0-9_-]+|"[^"]+"))*)\s*=""")


def lines_of(text: str) -> dict[Path, int]:
    """Return the line, from 1, of every header and key.

    >>> lines_of('code = "A"\\n[[tasks]]\\nid = "x"\\n[[tasks]]\\nid = "y"')[("tasks", 1, "id")]
    5
    """
    lines: dict[Path, int] = {}
    counts: dict[Path, int] = {}
    current: Path = ()
    inside_long_text = False
    for number, line in enumerate(text.splitlines(), start=1):
        if not inside_long_text:
            current = _note(line, number, current, lines, counts)
        if line.count('"""') % 2:
            inside_long_text = not inside_long_text
    return lines


def _note(line: str, number: int, current: Path, lines: dict[Path, int], counts: dict[Path, int]) -> Path:
    header = _HEADER.match(line)
    if header:
        path = _header_path(header[2], header[1] == "[[", counts)
        lines.setdefault(path, number)
        return path
    key = _KEY.match(line)
    if key:
        lines.setdefault(current + _names(key[1]), number)
    return current


def _names(dotted: str) -> tuple[str, ...]:
    return tuple(name.strip().strip('"') for name in dotted.split("."))


def _header_path(dotted: str, repeated: bool, counts: dict[Path, int]) -> Path:
    *parents, last = _names(dotted)
    path: Path = ()
    for name in parents:
        path = (*path, name)
        if path in counts:
            path = (*path, counts[path])
    path = (*path, last)
    if repeated:
        counts[path] = counts.get(path, -1) + 1
        path = (*path, counts[path])
    return path


@dataclass(frozen=True, slots=True)
class Source:
    """A file's name and the places of its keys."""

    file: str
    lines: Mapping[Path, int]

    def refusal(self, path: Path, what: str) -> SpecRefused:
        """Return the error for a place: the file, the line of the nearest key there is, the key, what is wrong."""
        near = next((path[:n] for n in range(len(path), 0, -1) if path[:n] in self.lines), ())
        line = self.lines.get(near, 1)
        return SpecRefused(f"{self.file}, line {line}, {_written(path)}: {what}")


def _written(path: Path) -> str:
    words = "".join(f"[{part + 1}]" if isinstance(part, int) else f".{part}" for part in path)
    return words.lstrip(".") or "the file"


@dataclass(slots=True)
class Table:
    """One table being read: each value is asked for by type, and what nobody asked for is refused at the end."""

    source: Source
    path: Path
    raw: Mapping[str, object]
    asked: set[str] = field(default_factory=set)

    @classmethod
    def of(cls, text: str, file: str) -> "Table":
        """Return the whole file as a table; raise SpecRefused where it isn't TOML."""
        try:
            return cls(Source(file, lines_of(text)), (), tomllib.loads(text))
        except tomllib.TOMLDecodeError as wrong:
            place = _AT_LINE.search(str(wrong))
            line = place[1] if place else str(max(1, len(text.splitlines())))
            reason = str(wrong).partition(" (at ")[0]
            raise SpecRefused(f"{file}, line {line}: this isn't TOML: {reason}.") from wrong

    def refusal(self, key: str, what: str) -> SpecRefused:
        """Return the error for one key of this table."""
        return self.source.refusal((*self.path, key) if key else self.path, what)

    def has(self, key: str) -> bool:
        """Whether the key is written."""
        return key in self.raw

    def text(self, key: str, default: str | None = None) -> str:
        """Return a text with more than blanks in it."""
        value = self._value(key, default)
        if not isinstance(value, str) or (value != default and not value.strip()):
            raise self.refusal(key, f"should be a text, not {value!r}.")
        return value

    def number(self, key: str, default: float | None = None) -> float:
        """Return a number."""
        value = self._value(key, default)
        if isinstance(value, bool) or not isinstance(value, int | float):
            raise self.refusal(key, f"should be a number, not {value!r}.")
        return value

    def whole(self, key: str, default: int | None = None, least: int = 0) -> int:
        """Return a whole number of at least ``least``."""
        value = self._value(key, default)
        if isinstance(value, bool) or not isinstance(value, int) or value < least:
            raise self.refusal(key, f"should be a whole number from {least}, not {value!r}.")
        return value

    def flag(self, key: str) -> bool:
        """Return true or false; false where it isn't written."""
        value = self._value(key, False)
        if not isinstance(value, bool):
            raise self.refusal(key, f"should be true or false, not {value!r}.")
        return value

    def texts(self, key: str, default: tuple[str, ...] | None = None) -> tuple[str, ...]:
        """Return a list of texts."""
        value = self._value(key, default)
        if not isinstance(value, list | tuple) or not all(isinstance(item, str) for item in value):
            raise self.refusal(key, f"should be a list of texts, not {value!r}.")
        return tuple(value)

    def anything(self, key: str) -> object:
        """Return whatever stands there."""
        return self._value(key, None)

    def one_of(self, key: str, known: tuple[str, ...], default: str | None = None) -> str:
        """Return a text out of a list of known ones."""
        value = self.text(key, default)
        if value not in known:
            raise self.refusal(key, f"'{value}' isn't known here; {offer(value, known)}")
        return value

    def table(self, key: str) -> "Table":
        """Return the table of that key, empty where it isn't written."""
        value = self._value(key, {})
        if not isinstance(value, Mapping):
            raise self.refusal(key, f"should be a table, not {value!r}.")
        return Table(self.source, (*self.path, key), value)

    def tables(self, key: str) -> list["Table"]:
        """Return the repeated tables of that key, none where it isn't written."""
        value = self._value(key, [])
        if not isinstance(value, list) or not all(isinstance(item, Mapping) for item in value):
            raise self.refusal(key, "should be repeated tables, each under its own double brackets.")
        return [Table(self.source, (*self.path, key, n), item) for n, item in enumerate(value)]

    def some(self, key: str) -> "list[Table]":
        """Return the repeated tables of that key, at least one."""
        tables = self.tables(key)
        if not tables:
            raise self.refusal(key, f"at least one '[[{key}]]' is needed.")
        return tables

    def once(self, key: str, names: Iterable[str]) -> None:
        """Refuse a name that stands twice among those written under ``key``."""
        seen: set[str] = set()
        for name in names:
            if name in seen:
                raise self.refusal(key, f"'{name}' stands twice.")
            seen.add(name)

    def names(self) -> tuple[str, ...]:
        """Return every key of a table whose keys are names, and count them as read."""
        self.asked.update(self.raw)
        return tuple(self.raw)

    def finish(self) -> None:
        """Refuse the first key that nobody asked for, offering the nearest that is known."""
        for key in self.raw:
            if key not in self.asked:
                raise self.refusal(key, f"'{key}' isn't known here; {offer(key, self.asked)}")

    def _value(self, key: str, default: object) -> object:
        self.asked.add(key)
        value = self.raw.get(key, default)
        if value is None:
            raise self.refusal(key, f"'{key}' is missing.")
        return value
