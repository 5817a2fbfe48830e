"""Where a number comes from: the standards, laws, papers and public bodies that the house rests on."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from courses.trade.errors import SourceRefused, offer
from courses.trade.tables import line_of, tables_in

MARKS: Mapping[str, str] = MappingProxyType(
    {
        "read": "seen in the source itself, or returned by a tool",
        "calc": "arithmetic with the formula of the source named beside it",
        "memory": "known, not verified",
        "practice": "a rule of the trade without a source",
        "model": "our own training model, or a draw that we chose",
    }
)
"""How a figure is known, and what the mark means on screen."""

KINDS = ("standard", "law", "paper", "public_body", "constant", "trade_page", "practice", "model")
"""What a source is; makers', shops' and press pages are ``trade_page`` and stand under a number, not a name."""

_FIELDS = ("title", "clause", "date", "mark", "kind", "note")
_KEY = re.compile(r"[a-z0-9]+(-[a-z0-9]+)*")


@dataclass(frozen=True, slots=True)
class Source:
    """One source: ``key`` as rules and sums cite it, ``title``, ``clause`` and ``date`` where it has them.

    ``mark`` is one of `MARKS`, ``kind`` one of `KINDS`; ``note`` says what was seen and what was not.

    >>> Source("iso-0000", "ISO 0000", "5.2", "2017", "read", "standard").cited()
    'ISO 0000, 5.2 (2017)'
    """

    key: str
    title: str
    clause: str
    date: str
    mark: str
    kind: str
    note: str = ""

    def cited(self) -> str:
        """The source as it stands beside a figure."""
        place = f"{self.title}, {self.clause}" if self.clause else self.title
        return f"{place} ({self.date})" if self.date else place


def read_sources(text: str, file: str) -> Mapping[str, Source]:
    """Every source of a TOML ``text`` by key; ``file`` is named, with line and key, in a `SourceRefused`.

    >>> read_sources('[iso-0000]\\ntitle = "ISO 0000"\\nmark = "read"\\nkind = "standard"', "s.toml")["iso-0000"].title
    'ISO 0000'
    """
    tables = tables_in(text, file, SourceRefused)
    return MappingProxyType({key: _source(key, values, text, file) for key, values in tables.items()})


def _source(key: str, values: object, text: str, file: str) -> Source:
    where = f"{file}, line {line_of(key, text)}, {key}"
    if not isinstance(values, dict) or not _KEY.fullmatch(key):
        raise SourceRefused("A source is a table under a key of small letters, digits and hyphens.", where)
    for field, value in values.items():
        if field not in _FIELDS:
            raise SourceRefused(f"There is no field {field!r}; {offer(field, _FIELDS)}", where)
        if not isinstance(value, str):
            raise SourceRefused(f"{field} is {value!r}; write it as text in quotes.", where)
    for field, allowed in (("mark", tuple(MARKS)), ("kind", KINDS)):
        if values.get(field) not in allowed:
            raise SourceRefused(f"{field} is {values.get(field)!r}; {offer(str(values.get(field)), allowed)}", where)
    if not values.get("title", "").strip():
        raise SourceRefused('The title is missing; write title = "ISO 0000".', where)
    return Source(key, *(values.get(field, "") for field in _FIELDS))


def _line_of(key: str, text: str) -> int:
    """The line, from 1, on which the table of this key opens."""
    rows = (row.strip() for row in text.splitlines())
    return next((number for number, row in enumerate(rows, start=1) if row == f"[{key}]"), 1)
