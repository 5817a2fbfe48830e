"""Exemplars of a scenario file: answers with a known outcome, checked against the tasks they answer."""

from collections.abc import Mapping
from dataclasses import fields
from types import MappingProxyType
from typing import Final

from assessments.scenarios.spec import Exemplar
from assessments.scenarios.tasks import Task
from courses.content.tables import Table, read_table

OUTCOMES: Final = ("satisfactory", "not_yet_satisfactory", "critical_fail", "cannot_certify")

TICKED: Final = ("many", "ask", "zones")
"""Kinds of task whose answer is a list of ids, of which an exemplar adds some, drops some or takes all."""

Tasks = tuple[Task, ...]


def read_exemplars(text: str, file: str, tasks: Tasks) -> tuple[Exemplar, ...]:
    """Return the exemplars that a rule book brings along in its ``text``; raise FileRefused with line and key.

    >>> read_exemplars('code = "COA-01"', "COA-01-v1.toml", ())
    ()
    """
    whole = read_table(text, file)
    whole.once("exemplars", "name")
    return tuple(read_exemplar(table, tasks) for table in whole.tables("exemplars"))


def written(exemplar: Exemplar) -> dict[str, object]:
    """Return an exemplar as the table it is read from; what it leaves at its default is left out.

    >>> written(Exemplar("coats", ("critical_fail",), not_met=("R41",)))
    {'name': 'coats', 'outcomes': ['critical_fail'], 'not_met': ['R41']}
    """
    bare = Exemplar(exemplar.name, exemplar.outcomes)
    said = {field.name: getattr(exemplar, field.name) for field in fields(Exemplar)}
    kept = {key: value for key, value in said.items() if key in ("name", "outcomes") or value != getattr(bare, key)}
    return {key: _plain(value) for key, value in kept.items()}


def _plain(value: object) -> object:
    if isinstance(value, Mapping):
        return {key: _plain(each) for key, each in value.items()}
    return list(value) if isinstance(value, tuple) else value


def read_exemplar(table: Table, tasks: Tasks) -> Exemplar:
    """Return one exemplar; raise FileRefused for an unknown outcome, task or option."""
    table.only_fields_of(Exemplar)
    made = Exemplar(
        name=table.text("name"),
        outcomes=table.some_of("outcomes", OUTCOMES),
        when=table.text("when", ""),
        not_met=table.texts("not_met", ()),
        exactly=table.flag("exactly"),
        safest=table.flag("safest"),
        put=_put(table.table("put"), tasks),
        work=_work(table.table("work"), tasks),
        add=_ticks(table.table("add"), tasks),
        drop=_ticks(table.table("drop"), tasks),
        tick_all=tuple(_ticked(table, "tick_all", name, tasks).id for name in table.texts("tick_all", ())),
        without=_acts(table.table("without"), tasks),
        before=_put(table.table("before"), tasks),
        after=_put(table.table("after"), tasks),
        verdict=_verdicts(table.table("verdict"), tasks),
        half=MappingProxyType({name: table.table("half").flag(name) for name in _ids(table.table("half"), tasks)}),
        rows=MappingProxyType(
            {name: table.table("rows").table(name).values for name in _ids(table.table("rows"), tasks)}
        ),
        unanswered=tuple(_task(table, "unanswered", name, tasks).id for name in table.texts("unanswered", ())),
    )
    if made.safest and "critical_fail" in made.outcomes:
        raise table.refuse("outcomes", "the safest answer never fails on a critical rule.")
    return made


def _ids(table: Table, tasks: Tasks) -> list[str]:
    return [_task(table, name, name, tasks).id for name in table.values]


def _acts(table: Table, tasks: Tasks) -> MappingProxyType[str, tuple[str, ...]]:
    acts = {task.id: [*(act.id for act in task.acts), *task.ops] for task in tasks}
    return MappingProxyType({name: table.some_of(name, acts[name]) for name in _ids(table, tasks)})


def _verdicts(table: Table, tasks: Tasks) -> MappingProxyType[str, str]:
    known = {task.id: [option.id for option in task.options] for task in tasks}
    return MappingProxyType({name: table.one_of(name, known[name]) for name in _ids(table, tasks)})


def _halves(table: Table, tasks: Tasks) -> MappingProxyType[str, bool]:
    return MappingProxyType({name: table.flag(name) for name in _ids(table, tasks)})


def _rows(table: Table, tasks: Tasks) -> MappingProxyType[str, Mapping[str, object]]:
    return MappingProxyType({name: table.table(name).values for name in _ids(table, tasks)})


def _put(table: Table, tasks: Tasks) -> MappingProxyType[str, object]:
    return MappingProxyType({name: table.values[name] for name in _ids(table, tasks)})


def _work(table: Table, tasks: Tasks) -> MappingProxyType[str, str]:
    return MappingProxyType({name: table.text(name) for name in _ids(table, tasks)})


def _ticks(table: Table, tasks: Tasks) -> MappingProxyType[str, tuple[str, ...]]:
    return MappingProxyType(
        {name: table.some_of(name, _ticked(table, name, name, tasks).option_ids) for name in table.values}
    )


def _ticked(table: Table, key: str, name: str, tasks: Tasks) -> Task:
    task = _task(table, key, name, tasks)
    if task.kind not in TICKED:
        raise table.refuse(key, f"'{name}' has no options to tick.")
    return task


def _task(table: Table, key: str, name: str, tasks: Tasks) -> Task:
    known = {task.id: task for task in tasks}
    table.refuse_unknown(key, name, known)
    return known[name]
