"""Exemplars of a scenario file: answers with a known outcome, checked against the tasks they answer."""

from types import MappingProxyType
from typing import Final

from assessments.scenarios.located import Table
from assessments.scenarios.spec import Exemplar, Task
from courses.trade.errors import offer

OUTCOMES: Final = ("satisfactory", "not_yet_satisfactory", "critical_fail", "cannot_certify")

Tasks = tuple[Task, ...]


def read_exemplar(table: Table, tasks: Tasks) -> Exemplar:
    """Return one exemplar; raise SpecRefused for an unknown outcome, task or option."""
    made = Exemplar(
        name=table.text("name"),
        outcomes=_outcomes(table),
        when=table.text("when", ""),
        not_met=table.texts("not_met", ()),
        exactly=table.flag("exactly"),
        safest=table.flag("safest"),
        put=_put(table.table("put"), tasks),
        work=_work(table.table("work"), tasks),
        add=_ticks(table.table("add"), tasks),
        drop=_ticks(table.table("drop"), tasks),
        tick_all=tuple(_ticked(table, "tick_all", name, tasks).id for name in table.texts("tick_all", ())),
        unanswered=tuple(_task(table, "unanswered", name, tasks).id for name in table.texts("unanswered", ())),
    )
    table.finish()
    if made.safest and "critical_fail" in made.outcomes:
        raise table.refusal("outcomes", "the safest answer never fails on a critical rule.")
    return made


def _outcomes(table: Table) -> tuple[str, ...]:
    named = table.texts("outcomes")
    if not named:
        raise table.refusal("outcomes", "name at least one.")
    for outcome in named:
        if outcome not in OUTCOMES:
            raise table.refusal("outcomes", f"'{outcome}' isn't an outcome; {offer(outcome, OUTCOMES)}")
    return named


def _put(table: Table, tasks: Tasks) -> MappingProxyType[str, object]:
    return MappingProxyType({_task(table, name, name, tasks).id: table.anything(name) for name in table.names()})


def _work(table: Table, tasks: Tasks) -> MappingProxyType[str, str]:
    return MappingProxyType({_task(table, name, name, tasks).id: table.text(name) for name in table.names()})


def _ticks(table: Table, tasks: Tasks) -> MappingProxyType[str, tuple[str, ...]]:
    return MappingProxyType({name: _ticks_of(table, name, tasks) for name in table.names()})


def _ticks_of(table: Table, name: str, tasks: Tasks) -> tuple[str, ...]:
    task, options = _ticked(table, name, name, tasks), table.texts(name)
    for option in options:
        if option not in task.option_ids:
            raise table.refusal(name, f"'{option}' isn't an option of '{name}'; {offer(option, task.option_ids)}")
    return options


def _ticked(table: Table, key: str, name: str, tasks: Tasks) -> Task:
    task = _task(table, key, name, tasks)
    if task.kind != "many":
        raise table.refusal(key, f"'{name}' has no options to tick.")
    return task


def _task(table: Table, key: str, name: str, tasks: Tasks) -> Task:
    for task in tasks:
        if task.id == name:
            return task
    raise table.refusal(key, f"no task is called '{name}'; {offer(name, [task.id for task in tasks])}")
