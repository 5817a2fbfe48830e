"""Fields of a scenario file: what a fact or a key number may be, and the options of a choice."""

import re
from typing import cast, get_args

from assessments.scenarios.fields import Field, FieldKind, Option
from assessments.scenarios.read_words import read_words
from courses.content.tables import Table
from courses.trade.units import UNITS

_NAME = re.compile(r"[a-z][a-z0-9_]*")
_ID = re.compile(r"[A-Za-z0-9][A-Za-z0-9_]*")
"""Of an option: the trade writes P1500, B2 and 3 passes."""


def read_fields(table: Table, key: str) -> tuple[Field, ...]:
    """Return the fields written under ``key``; raise FileRefused for one that can't stand."""
    return tuple(read_field(one) for one in table.tables(key))


def read_field(table: Table) -> Field:
    """Return one field; raise FileRefused where its kind lacks something or has too much."""
    kind = cast(FieldKind, table.only_fields_of(Field).one_of("kind", get_args(FieldKind)))
    items = read_fields(table, "items")
    field = Field(
        name=read_name(table, "name"),
        kind=kind,
        label=table.text("label", ""),
        unit=read_unit(table, kind == "quantity"),
        decimals=table.whole("decimals", 0, 9, 0),
        options=read_options(table),
        columns=read_fields(table, "columns"),
        items=items[0] if len(items) == 1 else None,
        most=table.whole("most", 1, 999, 20),
        optional=table.flag("optional"),
        hidden=table.flag("hidden"),
        clock=table.flag("clock"),
    )
    _refuse_odd_field(table, field)
    return field


def _refuse_odd_field(table: Table, field: Field) -> None:
    if field.kind == "rows" and not field.columns:
        raise table.refuse("columns", f"the rows of '{field.name}' need at least one '[[columns]]'.")
    if field.kind == "list" and field.items is None:
        raise table.refuse("items", f"the list '{field.name}' needs exactly one '[[items]]'.")
    if field.kind == "choice" and not field.options:
        raise table.refuse("options", f"the choice '{field.name}' needs '[[options]]'.")


def read_name(table: Table, key: str) -> str:
    """Return a name of small letters, digits and underscores; raise FileRefused for another."""
    name = table.text(key)
    if not _NAME.fullmatch(name):
        raise table.refuse(key, f"'{name}' isn't a name of small letters, digits and underscores.")
    return name


def read_options(table: Table) -> tuple[Option, ...]:
    """Return the options of a choice, each id once."""
    options = tuple(_option(one.only_fields_of(Option)) for one in table.tables("options"))
    table.once("options", "id")
    return options


def _option(table: Table) -> Option:
    name = table.text("id")
    if not _ID.fullmatch(name):
        raise table.refuse("id", f"'{name}' isn't a name of letters, digits and underscores.")
    return Option(name, read_words(table, "words"))


def read_unit(table: Table, needed: bool) -> str:
    """Return the unit of a quantity, nothing for what is none; raise FileRefused where only one of the two holds."""
    if table.has("unit") and not needed:
        raise table.refuse("unit", "only a quantity has a unit.")
    return table.one_of("unit", UNITS) if needed else ""
