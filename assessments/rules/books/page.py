"""A page of TOML that knows where its keys stand, so that what is wrong with it is refused at its place."""

from __future__ import annotations

import tomllib
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Any, Self

from assessments.rules.books.lines import Lines, syntax_error
from assessments.rules.faults import Refused, nearest, offered

MAX_BYTES = 40_000


class BookRefused(Refused):
    """A rule book that can't be used: in which file, on which line, which key, and why."""

    def __init__(self, file: str, line: int, key: str, sentence: str) -> None:
        self.file, self.line, self.key, self.sentence = file, line, key, sentence
        super().__init__(f"{file}, line {line}, {key}: {sentence}")


@dataclass(frozen=True, slots=True)
class Page:
    """A parsed text: the file it is refused by, its tables, and the line of every key."""

    file: str
    table: Mapping[str, Any]
    lines: Lines

    @classmethod
    def of(cls, text: str, file: str) -> Self:
        """Return the page of a text of at most 40 000 bytes. Raises BookRefused.

        >>> Page.of("a = 1", "book.toml").table
        {'a': 1}
        """
        if len(text.encode()) > MAX_BYTES:
            raise BookRefused(file, 1, "file", f"The book has more than {MAX_BYTES} bytes.")
        try:
            return cls(file, tomllib.loads(text), Lines.of(text))
        except tomllib.TOMLDecodeError as error:
            line, what = syntax_error(text, error)
            raise BookRefused(file, line, "file", f"This is no TOML: {what}.") from None

    def refusal(self, table: str, key: str, sentence: str) -> BookRefused:
        """Return the refusal of a key of a table, `""` for the outermost, at its line or under its own heading."""
        heading = f"{table}.{key}" if table else key
        line = self.lines.keys.get((heading, "")) or self.lines.line(table, key)
        return BookRefused(self.file, line, key, sentence)

    def only(self, where: str, table: Mapping[str, Any], keys: Iterable[str]) -> None:
        """Refuse a key that nobody reads. Raises BookRefused with the near miss."""
        known = tuple(keys)
        for key in table:
            if key not in known:
                said = f"Nothing reads the key '{key}'"
                raise self.refusal(where, key, offered(said, nearest(key, known)))
