"""A scenario file from text to a frozen :class:`Scenario`, refused with file, line and key, near misses offered."""

import re
from types import MappingProxyType
from typing import Final

from assessments.scenarios.chance import Span
from assessments.scenarios.fields import Field
from assessments.scenarios.located import Table
from assessments.scenarios.read_exemplars import read_exemplar
from assessments.scenarios.read_fields import read_fields, read_task
from assessments.scenarios.read_words import read_paragraph, refuse_unknown_slots
from assessments.scenarios.spec import ClearOf, Drawable, GaugeLine, Kind, Scenario, Sentence, Task
from courses.trade.errors import offer

LEVELS: Final = ("foundation", "working", "lead")
JURISDICTIONS: Final = ("us", "uk", "eu")
SENSES: Final = ("at_least", "at_most")
_CODE = re.compile(r"[A-Z]{3}-\d{2}")


def read_scenario(text: str, file: str) -> Scenario:
    """Return the scenario written in ``text``; raise SpecRefused naming ``file``, line and key.

    >>> read_scenario('code = "coa"', "x.toml")
    Traceback (most recent call last):
    assessments.scenarios.errors.SpecRefused: x.toml, line 1, code: 'coa' isn't a scenario code such as COA-01.
    """
    whole = Table.of(text, file)
    code = whole.text("code")
    if not _CODE.fullmatch(code):
        raise whole.refusal("code", f"'{code}' isn't a scenario code such as COA-01.")
    facts = read_fields(whole, "facts")
    tasks = tuple(read_task(table) for table in whole.some("tasks"))
    beside = read_fields(whole, "beside")
    scenario = Scenario(
        code=code,
        version=whole.whole("version", least=1),
        title=whole.text("title"),
        about=whole.text("about"),
        level=whole.one_of("level", LEVELS),
        elements=whole.texts("elements"),
        lessons=whole.texts("lessons"),
        minutes=whole.whole("minutes", least=1),
        jurisdictions=_jurisdictions(whole),
        story=tuple(read_paragraph(table) for table in whole.some("story")),
        facts=facts,
        tasks=tasks,
        beside=beside,
        kinds=_kinds(whole.table("draw")),
        clear_of=tuple(_clear_of(table) for table in whole.tables("clear_of")),
        exemplars=tuple(read_exemplar(table, tasks) for table in whole.some("exemplars")),
        gauges=tuple(_gauge(table, tasks, beside) for table in whole.tables("gauges")),
    )
    whole.finish()
    _refuse_doubles(whole, scenario)
    _refuse_unknown_slots(whole, scenario)
    return scenario


def _jurisdictions(whole: Table) -> tuple[str, ...]:
    named = whole.texts("jurisdictions", JURISDICTIONS)
    for name in named:
        if name not in JURISDICTIONS:
            raise whole.refusal("jurisdictions", f"'{name}' isn't one; {offer(name, JURISDICTIONS)}")
    return named


def _kinds(draw: Table) -> tuple[Kind, ...]:
    common = _values(draw.table("common"))
    kinds = []
    tables = draw.table("kinds")
    for name in tables.names():
        table = tables.table(name)
        weight = table.number("weight")
        if weight <= 0:
            raise table.refusal("weight", f"should be above 0, not {weight}.")
        kinds.append(Kind(name, weight, MappingProxyType({**common, **_values(table, but="weight")})))
    if not kinds:
        raise draw.refusal("kinds", "at least one kind of draw is needed.")
    draw.finish()
    return tuple(kinds)


def _values(table: Table, but: str = "") -> dict[str, Drawable]:
    return {name: _drawable(table, name) for name in table.names() if name != but}


def _drawable(table: Table, name: str) -> Drawable:
    value = table.anything(name)
    if isinstance(value, list):
        return table.texts(name)
    if not isinstance(value, dict):
        return table.number(name)
    span = table.table(name)
    ends = span.number("from"), span.number("to"), span.number("step")
    try:
        made = Span(*ends)
    except ValueError as wrong:
        raise table.refusal(name, f"{wrong}.") from wrong
    span.finish()
    return made


def _gauge(table: Table, tasks: tuple[Task, ...], beside: tuple[Field, ...]) -> GaugeLine:
    numbers = tuple(field.name for field in (*(task.as_field() for task in tasks), *beside) if field.kind == "quantity")
    made = GaugeLine(
        value=table.one_of("value", numbers),
        limit=table.number("limit"),
        low=table.number("low", default=0.0),
        high=table.number("high"),
        sense=table.one_of("sense", SENSES),
        caption=table.text("caption"),
        given=table.text("given", default=""),
    )
    if not made.low <= made.limit <= made.high:
        raise table.refusal(
            "limit", f"should lie between low ({made.low:g}) and high ({made.high:g}), not {made.limit:g}."
        )
    table.finish()
    return made


def _clear_of(table: Table) -> ClearOf:
    made = ClearOf(table.text("limit"), table.text("holds"))
    table.finish()
    return made


def _refuse_doubles(whole: Table, scenario: Scenario) -> None:
    whole.once("facts", (field.name for field in scenario.facts))
    whole.once("tasks", (field.name for field in scenario.key_fields))
    whole.once("exemplars", (exemplar.name for exemplar in scenario.exemplars))
    if not any(exemplar.safest for exemplar in scenario.exemplars):
        raise whole.refusal("exemplars", "at least one exemplar has to be 'safest'.")


def _refuse_unknown_slots(whole: Table, scenario: Scenario) -> None:
    facts = {field.name for field in scenario.facts}
    for n, paragraph in enumerate(scenario.story):
        refuse_unknown_slots(paragraph, facts, whole, ("story", n, "sentence"))
    known = facts | {field.name for field in scenario.key_fields}
    for n, task in enumerate(scenario.tasks):
        refuse_unknown_slots(task.model, known, whole, ("tasks", n, "model"))
        fixed = tuple(Sentence(text) for text in (task.ask, task.hint, *(option.words for option in task.options)))
        refuse_unknown_slots(fixed, set(), whole, ("tasks", n))
