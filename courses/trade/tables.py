"""Shipped tables of the trade: TOML in, plain values out, refused with file, line and key."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from math import isfinite

from courses.trade.errors import TableRefused, offer

_PLACE = re.compile(r" \(at (?:line (\d+), column \d+|end of document)\)")


def tables_in(text: str, file: str, refused: type[TableRefused] = TableRefused) -> dict[str, object]:
    """What stands in a TOML ``text`` by key; ``refused`` with ``file`` and line where it is no TOML.

    >>> tables_in("[swirl]\\nthin = false", "defects.toml")
    {'swirl': {'thin': False}}
    """
    try:
        return tomllib.loads(text)
    except tomllib.TOMLDecodeError as wrong:
        place = _PLACE.search(str(wrong))
        line = (place and place[1]) or len(text.splitlines())
        reason = _PLACE.sub("", str(wrong))
        raise refused(f"This is not TOML: {reason}.", f"{file}, line {line}") from wrong


def line_of(key: str, text: str) -> int:
    """The line, from 1, on which the table of this key opens; 1 where it stands nowhere.

    >>> line_of("haze", "[swirl]\\n\\n[haze]")
    3
    """
    rows = (row.strip() for row in text.splitlines())
    return next((number for number, row in enumerate(rows, start=1) if row == f"[{key}]"), 1)


@dataclass(frozen=True, slots=True)
class Entry:
    """One table of a file: its ``values``, and ``where`` it stands; every method raises `TableRefused` there."""

    values: Mapping[str, object]
    where: str

    @classmethod
    def at(cls, key: str, value: object, text: str, file: str) -> Entry:
        """The table that stands under ``key`` in the ``text`` of ``file``.

        >>> Entry.at("haze", {"thin": True}, "[haze]", "defects.toml").flag("thin")
        True
        """
        where = f"{file}, line {line_of(key, text)}, {key}"
        if not isinstance(value, dict):
            raise TableRefused(f"{value!r} is no table; open it with [{key}].", where)
        return cls(value, where)

    def refused(self, sentence: str) -> TableRefused:
        """The refusal of this entry that says ``sentence``, ready to raise."""
        return TableRefused(sentence, self.where)

    def only(self, *known: str) -> Entry:
        """This entry, after refusing every key that is not ``known``."""
        for key in self.values:
            if key not in known:
                raise self.refused(f"There is no field {key!r}; {offer(key, known)}")
        return self

    def text(self, key: str, known: tuple[str, ...] = ()) -> str:
        """The text under ``key``, never empty, one of the ``known`` where some are given."""
        value = self.values.get(key)
        if not isinstance(value, str) or not value.strip():
            raise self.refused(f'{key} is {value!r}; write it as text: {key} = "words".')
        if known and value not in known:
            raise self.refused(f"{key} is {value!r}; {offer(value, known)}")
        return value

    def texts(self, key: str, known: tuple[str, ...] = ()) -> tuple[str, ...]:
        """The list of texts under ``key``, each one of the ``known`` where some are given."""
        listed = self._list(key, str)
        for value in listed:
            if known and value not in known:
                raise self.refused(f"{key} names {value!r}; {offer(str(value), known)}")
        return tuple(str(value) for value in listed)

    def numbers(self, key: str, count: int) -> tuple[float, ...]:
        """The ``count`` finite numbers listed under ``key``."""
        listed = self._list(key, float)
        if len(listed) != count:
            raise self.refused(f"{key} holds {len(listed)} numbers; write {count}.")
        return tuple(float(value) for value in listed if isinstance(value, int | float))

    def number(self, key: str) -> float:
        """The finite number under ``key``."""
        value = self.values.get(key)
        if isinstance(value, bool) or not isinstance(value, int | float) or not isfinite(value):
            raise self.refused(f"{key} is {value!r}; write a number: {key} = 3.5.")
        return float(value)

    def flag(self, key: str, default: bool | None = None) -> bool:
        """The true or false under ``key``; ``default`` where it may be left out."""
        value = self.values.get(key, default)
        if not isinstance(value, bool):
            raise self.refused(f"{key} is {value!r}; write {key} = true or {key} = false.")
        return value

    def table(self, key: str) -> Entry:
        """The table under ``key``."""
        value = self.values.get(key)
        if not isinstance(value, dict):
            raise self.refused(f"{key} is {value!r}; it is a table of its own.")
        return Entry(value, f"{self.where}.{key}")

    def _list(self, key: str, kind: type) -> list[object]:
        value = self.values.get(key)
        if not isinstance(value, list) or not all(_is(item, kind) for item in value):
            raise self.refused(f"{key} is {value!r}; write a list of {'texts' if kind is str else 'numbers'}.")
        return value


def _is(item: object, kind: type) -> bool:
    if kind is str:
        return isinstance(item, str)
    return isinstance(item, int | float) and not isinstance(item, bool) and isfinite(item)
