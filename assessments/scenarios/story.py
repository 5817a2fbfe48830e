"""The story of one draw in words: sentences chosen by the facts, numbers shown in the reader's own units.

``show`` is the reader's way to see a quantity: ``show(value, unit, decimals)`` returns text such as "18.4 °C".
"""

import re
from collections.abc import Callable, Collection, Iterable, Mapping
from dataclasses import dataclass

from assessments.scenarios.fields import Field, Record
from assessments.scenarios.spec import Scenario
from assessments.scenarios.tasks import Task
from assessments.scenarios.wording import Paragraph, Sentence
from courses.trade.units import UNITS, Preferences, shown

Show = Callable[[float, str, int], str]
_SLOT = re.compile(r"\{([^{}]+)\}")
_FIXED = re.compile(r"(-?\d+(?:\.(\d+))?) ([A-Za-z0-9]+)")


@dataclass(frozen=True, slots=True)
class ShownTable:
    """A list of readings as a table: its caption, the heads of its columns, and rows of text with units."""

    name: str
    caption: str
    heads: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]


def metric(value: float, unit: str, decimals: int) -> str:
    """Show a quantity in base units; what the doors and the stored model answer use."""
    return shown(value, unit, Preferences.metric(), decimals)


def clock(hours: float) -> str:
    """Return hours of the day as a clock shows them; past midnight the clock starts again.

    >>> clock(8.25), clock(25.5)
    ('08:15', '01:30')
    """
    minutes = round(hours * 60) % (24 * 60)
    return f"{minutes // 60:02d}:{minutes % 60:02d}"


def slots(text: str) -> tuple[str, ...]:
    """Return the names a text asks for, fixed quantities left out.

    >>> slots("At {now_h} the boat of {6.40 m} reads {air_degc}.")
    ('now_h', 'air_degc')
    """
    return tuple(slot for slot in _SLOT.findall(text) if not _fixed(slot, metric))


def with_units(text: str, show: Show) -> str:
    """Return a text of the file, such as an option's words, with its fixed quantities in the reader's units.

    >>> with_units("until it reads {4.2 K} more", lambda value, unit, decimals: f"{value:.{decimals}f} {unit}")
    'until it reads 4.2 K more'
    """
    return _SLOT.sub(lambda slot: _fixed(slot[1], show) or slot[0], text)


def story(scenario: Scenario, facts: Record, show: Show) -> list[str]:
    """Return the paragraphs of the story, in plain text, for these facts."""
    said = [told(paragraph, facts, scenario.facts, show) for paragraph in scenario.story]
    return [paragraph for paragraph in said if paragraph]


def model_text(scenario: Scenario, task: Task, facts: Record, key: Mapping[str, object], show: Show) -> str:
    """Return the model answer of a text task, with the numbers of these facts and this key."""
    return told(task.model, {**key, **facts}, (*scenario.key_fields, *scenario.facts), show)


def facts_shown(scenario: Scenario, facts: Record, show: Show) -> list[tuple[str, str]]:
    """Return label and text of every single reading that stands beside the story; hidden ones are left out."""
    return [
        (field.label, worded(field, facts[field.name], show))
        for field in _open_fields(scenario, facts)
        if field.kind not in ("rows", "list")
    ]


def tables_shown(scenario: Scenario, facts: Record, show: Show) -> list[ShownTable]:
    """Return every list of readings that stands beside the story as a table; hidden ones are left out."""
    return [_table(field, facts, show) for field in _open_fields(scenario, facts) if field.kind == "rows"]


def is_model_um(field: Field) -> bool:
    """Whether a length comes out of the film model: such a one is micrometres to every reader."""
    return field.unit == "um" and field.label.endswith("model µm")


def worded(field: Field, value: object, show: Show) -> str:
    """Return one value in words: a quantity with its unit, an option by its words, yes or no, a list with commas,
    rows with semicolons between them."""
    if isinstance(value, bool):
        return "yes" if value else "no"
    if field.kind == "whole":
        return str(value)
    if isinstance(value, int | float) and is_model_um(field):
        return shown(value, field.unit, Preferences.metric(), field.decimals)
    if isinstance(value, int | float):
        return clock(value) if field.clock else show(value, field.unit, field.decimals)
    if isinstance(value, Mapping):
        return ", ".join(worded(one, value[one.name], show) for one in field.columns if one.name in value)
    if isinstance(value, tuple | list) and field.kind == "rows":
        return "; ".join(worded(field, row, show) for row in value) or "none"
    if isinstance(value, tuple | list):
        one = field.items or field
        return ", ".join(worded(one, item, show) for item in value) or "none"
    return field.words_of(str(value))


def told(
    sentences: Paragraph,
    values: Mapping[str, object],
    fields: Iterable[Field],
    show: Show,
    asked: Collection[str] = (),
) -> str:
    """Return the sentences that hold for these values, their slots filled in as the reader sees them.

    ``asked`` are all the readings asked for: what one of them tells may rest on another.
    """
    by_name = {field.name: field for field in fields}

    def filled(slot: re.Match[str]) -> str:
        return _fixed(slot[1], show) or worded(by_name[slot[1]], values[slot[1]], show)

    return " ".join(_SLOT.sub(filled, one.text) for one in sentences if _holds(one, values, asked))


def _open_fields(scenario: Scenario, facts: Record) -> Iterable[Field]:
    return (field for field in scenario.facts if field.label and not field.hidden and field.name in facts)


def _table(field: Field, facts: Record, show: Show) -> ShownTable:
    rows = facts[field.name]
    cells = [
        tuple(worded(column, row[column.name], show) for column in field.columns)
        for row in (rows if isinstance(rows, tuple) else ())
        if isinstance(row, Mapping)
    ]
    return ShownTable(field.name, field.label, tuple(column.label for column in field.columns), tuple(cells))


def _fixed(slot: str, show: Show) -> str:
    """Return a fixed quantity as shown, or nothing where the slot is a name."""
    quantity = _FIXED.fullmatch(slot)
    if quantity is None or quantity[3] not in UNITS:
        return ""
    return show(float(quantity[1]), quantity[3], len(quantity[2] or ""))


def _holds(sentence: Sentence, values: Mapping[str, object], asked: Collection[str]) -> bool:
    if not set(sentence.asked) <= set(asked) or set(sentence.not_asked) & set(asked):
        return False
    if sentence.given and sentence.given not in values:
        return False
    if sentence.missing and sentence.missing in values:
        return False
    return all(_as_written(values.get(name)) in wanted for name, wanted in sentence.where.items())


def _as_written(value: object) -> str:
    return ("yes" if value else "no") if isinstance(value, bool) else str(value)
