"""Tasks of a scenario file: each kind with what it needs and nothing else."""

from collections.abc import Collection, Mapping
from types import MappingProxyType
from typing import Final

from assessments.scenarios.fields import Option
from assessments.scenarios.planned import MOST_STEPS, STEPS
from assessments.scenarios.read_fields import read_fields, read_name, read_options, read_unit
from assessments.scenarios.read_words import read_sentence, read_words
from assessments.scenarios.tasks import ALL, PARTS, TASK_SHAPES, Act, Carry, Reading, Row, Task
from assessments.scenarios.wording import Paragraph
from courses.content.tables import Table
from courses.trade.surface import FAMILIES, OPS

VERDICTS: Final = ("polish", "sand", "chemistry", "leave", "refer")
"""What can be decided of a zone."""

FAMILY_OF: Final[Mapping[str, str]] = MappingProxyType({**{op.op: op.family for op in OPS.values()}, "bleach": "chem"})
"""The family of each act that is known: the steps of a plan, and bleach, which no plan has; others say theirs."""


def read_task(table: Table, known: Collection[str]) -> Task:
    """Return one task; raise FileRefused where its kind lacks something or has too much.

    Sentences of it (a model answer, what a reading tells) are told with the values that are ``known``.
    """
    kind = table.only_fields_of(Task).one_of("kind", TASK_SHAPES)
    carries = tuple(_carry(one) for one in table.tables("carries"))
    task = Task(
        id=read_name(table, "id"),
        kind=kind,
        title=table.text("title"),
        ask=read_words(table, "ask"),
        hint=read_words(table, "hint", default=""),
        unit=read_unit(table, "unit" in TASK_SHAPES[kind].needs),
        decimals=table.whole("decimals", 0, 9, 0),
        low=table.number("low") if table.has("low") else None,
        high=table.number("high") if table.has("high") else None,
        options=read_options(table),
        model=_sentences(table, "model", known),
        readings=tuple(_reading(one, known) for one in table.tables("readings")),
        acts=tuple(_act(one, carries) for one in table.tables("acts")),
        carries=carries,
        spots=table.flag("spots"),
        laid=tuple(_laid(one, carries) for one in table.tables("laid")),
        ops=table.some_of("ops", tuple(OPS), ()),
        most=table.whole("most", 1, 40, MOST_STEPS if kind == "plan" else 12),
        rows=_rows(table, known),
        columns=read_fields(table, "columns"),
        picture=table.text("picture", ""),
        verdicts=table.flag("verdicts"),
    )
    _refuse_odd(table, task)
    return task


def _refuse_odd(table: Table, task: Task) -> None:
    shape = TASK_SHAPES[task.kind]
    if (task.kind == "text") != bool(task.model):
        raise table.refuse("model", "a task of kind 'text', and no other, has a '[[model]]' answer in sentences.")
    for part in PARTS:
        there = bool(getattr(task, part))
        if part in shape.needs and not there:
            raise table.refuse(part, f"a task of kind '{task.kind}' needs {part}.")
        if there and part not in shape.needs + shape.may:
            raise table.refuse(part, f"a task of kind '{task.kind}' takes no {part}.")
    if (task.low is None) != (task.high is None) or (task.low or 0) > (task.high or 0):
        raise table.refuse("low", "'low' and 'high' stand together, the lower one first.")
    if any(column.kind != "choice" for column in task.columns):
        raise table.refuse("columns", "a column of rows is a choice.")
    _refuse_odd_acts(table, task)
    if task.verdicts != (task.kind == "zones" and bool(task.options)):
        raise table.refuse("verdicts", "verdicts and their options stand together.")
    _refuse_unknown_readings(table, task)
    for option in task.options if task.verdicts else ():
        table.refuse_unknown("options", option.id, VERDICTS)


def _refuse_odd_acts(table: Table, task: Task) -> None:
    for act in task.acts:
        if bool(act.op) != task.spots:
            raise table.refuse("acts", f"act '{act.id}': an act of spots, and no other, says by 'op' what it tries.")
    for laid in task.laid:
        table.refuse_unknown("laid", laid["op"], [act.id for act in task.acts])
    if task.kind == "plan" and task.id != STEPS:
        raise table.refuse("id", f"a plan is called '{STEPS}'; rules read its steps by that name.")


def _refuse_unknown_readings(table: Table, task: Task) -> None:
    told = [sentence for reading in task.readings for sentence in reading.tells]
    for name in (name for sentence in told for name in (*sentence.asked, *sentence.not_asked)):
        table.refuse_unknown("readings", name, task.option_ids)


def _sentences(table: Table, key: str, known: Collection[str]) -> Paragraph:
    return tuple(read_sentence(one, known) for one in table.tables(key))


def _reading(table: Table, known: Collection[str]) -> Reading:
    table.only_fields_of(Reading)
    minutes = table.whole("minutes", 0, 240, 0)
    return Reading(read_name(table, "id"), read_words(table, "words"), minutes, _sentences(table, "tells", known))


def _carry(table: Table) -> Carry:
    table.only_fields_of(Carry)
    name, options = read_name(table, "name"), read_options(table)
    if name == "zone" and ALL not in [one.id for one in options]:
        options += (Option(ALL, "everywhere"),)
    default = table.one_of("default", [one.id for one in options], ALL if name == "zone" else None)
    return Carry(name, table.text("label"), options, default)


def _act(table: Table, carries: tuple[Carry, ...]) -> Act:
    table.only("id", "words", "family", "with", "op")
    act = read_name(table, "id")
    family = table.one_of("family", FAMILIES, FAMILY_OF.get(act, "clean"))
    carried = table.some_of("with", [one.name for one in carries], ())
    op = table.one_of("op", tuple(OPS)) if table.has("op") else ""
    return Act(act, read_words(table, "words"), family, carried, op)


def _laid(table: Table, carries: tuple[Carry, ...]) -> Mapping[str, str]:
    table.only("op", *(one.name for one in carries))
    return MappingProxyType({name: table.text(name) for name in table.values})


def _rows(table: Table, known: Collection[str]) -> tuple[Row, ...]:
    rows = tuple(_row(one, known) for one in table.tables("rows"))
    numbers = [row.n for row in rows]
    if len(set(numbers)) < len(numbers):
        raise table.refuse("rows", "each row has a number of its own.")
    return rows


def _row(table: Table, known: Collection[str]) -> Row:
    table.only_fields_of(Row)
    return Row(table.whole("n", 1, 99), _sentences(table, "tells", known))
