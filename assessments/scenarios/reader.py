"""A scenario file from text to a frozen :class:`Scenario`, refused with file, line and key, near misses offered."""

import re
from dataclasses import fields
from types import MappingProxyType
from typing import Final

from assessments.scenarios.chance import Span
from assessments.scenarios.fields import Field
from assessments.scenarios.read_exemplars import read_exemplar
from assessments.scenarios.read_fields import read_fields
from assessments.scenarios.read_pictures import read_model_field, read_picture, refuse_odd_pictures
from assessments.scenarios.read_tasks import read_task
from assessments.scenarios.read_words import read_paragraph
from assessments.scenarios.shown import Shop
from assessments.scenarios.spec import ClearOf, Drawable, GaugeLine, Kind, Scenario
from assessments.scenarios.tasks import Task
from courses.content.tables import Table, read_table

LEVELS: Final = ("foundation", "working", "lead")
JURISDICTIONS: Final = ("us", "uk", "eu")
SENSES: Final = ("at_least", "at_most")
KEYS: Final = (*(field.name for field in fields(Scenario) if field.name not in ("kinds", "shop")), "draw")
"""What a scenario file may hold: the fields of a scenario, its kinds under ``draw``."""

_CODE = re.compile(r"[A-Z]{3}-\d{2}")


def read_scenario(text: str, file: str, shop: Shop | None = None) -> Scenario:
    """Return the scenario written in ``text``; raise FileRefused naming ``file``, line and key.

    ``shop`` is what is known of pictures; a scenario that shows none can do without.

    >>> read_scenario('code = "coa"', "x.toml")
    Traceback (most recent call last):
    courses.content.errors.FileRefused: x.toml, line 1, code: 'coa' isn't a scenario code such as COA-01.
    """
    whole = read_table(text, file).only(*KEYS)
    code = whole.text("code")
    if not _CODE.fullmatch(code):
        raise whole.refuse("code", f"'{code}' isn't a scenario code such as COA-01.")
    _refuse_doubles(whole)
    facts, beside = read_fields(whole, "facts"), read_fields(whole, "beside")
    told = [field.name for field in facts]
    known = [*told, *(task.text("id") for task in whole.some("tasks")), *(field.name for field in beside)]
    tasks = tuple(read_task(table, known) for table in whole.some("tasks"))
    scenario = Scenario(
        code=code,
        version=whole.whole("version", 1, 999),
        title=whole.text("title"),
        about=whole.text("about"),
        level=whole.one_of("level", LEVELS),
        elements=whole.texts("elements"),
        lessons=whole.texts("lessons"),
        minutes=whole.whole("minutes", 1, 480),
        jurisdictions=whole.some_of("jurisdictions", JURISDICTIONS, JURISDICTIONS),
        story=tuple(read_paragraph(table, told) for table in whole.some("story")),
        facts=facts,
        tasks=tasks,
        beside=beside,
        kinds=_kinds(whole.table("draw")),
        clear_of=tuple(_clear_of(table) for table in whole.tables("clear_of")),
        exemplars=tuple(read_exemplar(table, tasks) for table in whole.some("exemplars")),
        gauges=tuple(_gauge(table, tasks, beside) for table in whole.tables("gauges")),
        pictures=tuple(read_picture(table, tasks) for table in whole.tables("pictures")),
        model=tuple(read_model_field(table, tasks) for table in whole.tables("model")),
        shop=shop,
    )
    refuse_odd_pictures(whole, tasks, [one.name for one in scenario.pictures])
    if not any(exemplar.safest for exemplar in scenario.exemplars):
        raise whole.refuse("exemplars", "at least one exemplar has to be 'safest'.")
    return scenario


def _kinds(draw: Table) -> tuple[Kind, ...]:
    common = _values(draw.only("common", "kinds").table("common"))
    kinds = []
    tables = draw.table("kinds")
    for name in tables.values:
        table = tables.table(name)
        weight = table.number("weight")
        if weight <= 0:
            raise table.refuse("weight", f"should be above 0, not {weight}.")
        kinds.append(Kind(name, weight, MappingProxyType({**common, **_values(table, but="weight")})))
    if not kinds:
        raise draw.refuse("kinds", "at least one kind of draw is needed.")
    return tuple(kinds)


def _values(table: Table, but: str = "") -> dict[str, Drawable]:
    return {name: _drawable(table, name) for name in table.values if name != but}


def _drawable(table: Table, name: str) -> Drawable:
    value = table.values[name]
    if isinstance(value, list):
        return table.texts(name)
    if not isinstance(value, dict):
        return table.number(name)
    span = table.table(name).only("from", "to", "step")
    ends = span.number("from"), span.number("to"), span.number("step")
    try:
        return Span(*ends)
    except ValueError as wrong:
        raise table.refuse(name, f"{wrong}.") from wrong


def _gauge(table: Table, tasks: tuple[Task, ...], beside: tuple[Field, ...]) -> GaugeLine:
    table.only_fields_of(GaugeLine)
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
        raise table.refuse(
            "limit", f"should lie between low ({made.low:g}) and high ({made.high:g}), not {made.limit:g}."
        )
    return made


def _clear_of(table: Table) -> ClearOf:
    table.only_fields_of(ClearOf)
    return ClearOf(table.text("limit"), table.text("holds"))


def _refuse_doubles(whole: Table) -> None:
    whole.once("facts", "name")
    whole.once("tasks", "id")
    whole.once("beside", "name", taken=[task.text("id") for task in whole.tables("tasks")])
    whole.once("exemplars", "name")
    whole.once("pictures", "name")
