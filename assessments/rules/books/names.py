"""Reads the names that shared rules may use, a schema written in TOML.

A kind is written as everywhere, `{ t = "num", unit = "um" }`, with two short cuts: `vals` may name a list of
`[words]`, and `item` of a list one of `[rows]`. Whatever stands under `answer` and `model` may be missing.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Any

from assessments.rules.books.page import Page
from assessments.rules.faults import SchemaRefused, nearest, offered
from assessments.rules.kinds import Kind, Schema, record

ROOTS = ("facts", "answer", "model", "key")
MISSING = ("answer", "model")
_TABLES = ("words", "rows", *ROOTS)


def read_names(text: str, file: str = "names.toml") -> Schema:
    """Return the schema of a text with `[words]`, `[rows]` and the four roots. Raises BookRefused.

    >>> read_names('[facts]\\nrh = { t = "num", unit = "rh" }').kind(("facts", "rh")).unit
    'rh'
    >>> try: read_names('[facts]\\nrh = { t = "nmu" }')
    ... except ValueError as refused: print(str(refused)[:44])
    names.toml, line 2, rh: 't' is 'nmu', it has
    """
    page = Page.of(text, file)
    page.only("", page.table, _TABLES)
    names = _Names(page, _table(page, "words"), _table(page, "rows"))
    for row in names.rows:
        names.kinds(f"rows.{row}", _table(page, "rows", row))
    return Schema({root: record(names.kinds(root, _table(page, root))) for root in ROOTS})


def _table(page: Page, *path: str) -> Mapping[str, Any]:
    found: Any = page.table
    for part in path:
        found = found.get(part, {})
    if not isinstance(found, Mapping):
        raise page.refusal(".".join(path[:-1]), path[-1], "This has to be a table of names.")
    return found


@dataclass(frozen=True, slots=True)
class _Names:
    """The lists of words and the rows that fields may name."""

    page: Page
    words: Mapping[str, Any]
    rows: Mapping[str, Any]

    def kinds(self, table: str, fields: Mapping[str, Any]) -> dict[str, Kind]:
        """Return the kind of every field of a table; the first that is none is refused at its line."""
        return {name: self._kind(table, name, written) for name, written in fields.items()}

    def _kind(self, table: str, name: str, written: object) -> Kind:
        try:
            kind = Schema.of({"t": "rec", "fields": {name: self._spelt_out(written)}}).names[name]
        except SchemaRefused as refused:
            said = str(refused).removeprefix("schema").removeprefix(f".{name}").lstrip(".: ")
            raise self.page.refusal(table, name, said) from None
        return replace(kind, opt=True) if table in MISSING else kind

    def _spelt_out(self, written: object) -> object:
        """Return a kind with its words and rows in full."""
        if not isinstance(written, Mapping):
            return written
        kind = dict(written)
        if isinstance(kind.get("vals"), str):
            kind["vals"] = _named(self.words, kind["vals"], "list of words")
        if isinstance(kind.get("item"), str):
            fields = _named(self.rows, kind["item"], "row")
            kind["item"] = {"t": "rec", "fields": {name: self._spelt_out(each) for name, each in fields.items()}}
        elif "item" in kind:
            kind["item"] = self._spelt_out(kind["item"])
        return kind


def _named(known: Mapping[str, Any], name: str, what: str) -> Any:
    if name not in known:
        raise SchemaRefused(offered(f"No {what} is called '{name}'", nearest(name, known)))
    return known[name]
