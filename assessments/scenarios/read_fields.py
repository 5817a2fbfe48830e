"""Fields and tasks of a scenario file: what a fact, a key number or an answer may be."""

import re
from collections.abc import Collection
from typing import cast, get_args

from assessments.scenarios.fields import Field, FieldKind, Option
from assessments.scenarios.read_words import read_sentence, read_words
from assessments.scenarios.spec import TASK_SHAPES, Task
from courses.content.tables import Table
from courses.trade.units import UNITS

_NAME = re.compile(r"[a-z][a-z0-9_]*")


def read_fields(table: Table, key: str) -> tuple[Field, ...]:
    """Return the fields written under ``key``; raise FileRefused for one that can't stand."""
    return tuple(_field(one) for one in table.tables(key))


def read_task(table: Table, known: Collection[str]) -> Task:
    """Return one task; raise FileRefused where its kind lacks something or has too much.

    The sentences of its model answer are told with the values that are ``known``.
    """
    kind = table.only_fields_of(Task).one_of("kind", TASK_SHAPES)
    task = Task(
        id=_name(table, "id"),
        kind=kind,
        title=table.text("title"),
        ask=read_words(table, "ask"),
        hint=read_words(table, "hint", default=""),
        unit=_unit(table, TASK_SHAPES[kind].unit),
        decimals=table.whole("decimals", 0, 9, 0),
        low=table.number("low") if table.has("low") else None,
        high=table.number("high") if table.has("high") else None,
        options=_options(table),
        model=tuple(read_sentence(one, known) for one in table.tables("model")),
    )
    _refuse_odd_task(table, task)
    return task


def _refuse_odd_task(table: Table, task: Task) -> None:
    needs_options = TASK_SHAPES[task.kind].options
    if needs_options != bool(task.options):
        says = "needs options" if needs_options else "takes no options"
        raise table.refuse("options", f"a task of kind '{task.kind}' {says}.")
    if (task.kind == "text") != bool(task.model):
        raise table.refuse("model", "a task of kind 'text', and no other, has a '[[model]]' answer in sentences.")
    if (task.low is None) != (task.high is None) or (task.low or 0) > (task.high or 0):
        raise table.refuse("low", "'low' and 'high' stand together, the lower one first.")


def _field(table: Table) -> Field:
    kind = cast(FieldKind, table.only_fields_of(Field).one_of("kind", get_args(FieldKind)))
    items = read_fields(table, "items")
    field = Field(
        name=_name(table, "name"),
        kind=kind,
        label=table.text("label", ""),
        unit=_unit(table, kind == "quantity"),
        decimals=table.whole("decimals", 0, 9, 0),
        options=_options(table),
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


def _name(table: Table, key: str) -> str:
    name = table.text(key)
    if not _NAME.fullmatch(name):
        raise table.refuse(key, f"'{name}' isn't a name of small letters, digits and underscores.")
    return name


def _options(table: Table) -> tuple[Option, ...]:
    options = tuple(_option(one.only_fields_of(Option)) for one in table.tables("options"))
    table.once("options", "id")
    return options


def _option(table: Table) -> Option:
    return Option(_name(table, "id"), read_words(table, "words"))


def _unit(table: Table, needed: bool) -> str:
    if table.has("unit") and not needed:
        raise table.refuse("unit", "only a quantity has a unit.")
    return table.one_of("unit", UNITS) if needed else ""
