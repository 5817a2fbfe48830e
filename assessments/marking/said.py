"""The values of a finding in words: what each is called, and how it reads in the reader's units."""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import chain
from typing import Final

from assessments.marking.bound import DERIVED_NAMES
from assessments.rules import Compared
from assessments.scenarios.fields import Field
from assessments.scenarios.spec import Scenario
from assessments.scenarios.story import Show, with_units, worded

_OF_THE_RULE: Final = ("limit", "within")
_ROOTS: Final = ("answer", "key", "facts", "model")
_PERCENT: Final = "percent"
_PLACE: Final = re.compile(r"(?P<name>\w+)\[(?P<place>\d+)\](?:\.(?P<column>\w+))?")


@dataclass(frozen=True, slots=True)
class Said:
    """One compared value for people.

    ``root`` says whose it is: ``answer``, ``key``, ``facts``, ``model``; ``limit`` or ``within`` for what the rule
    itself says; nothing for what was worked out on the way. ``text`` is empty where nothing was answered.
    """

    root: str
    label: str
    text: str


def said(scenario: Scenario, compared: Compared, show: Show) -> Said:
    """Return a compared value in words; what is no field of the scenario keeps its own name."""
    root, _dot, name = compared.name.partition(".")
    if root not in _ROOTS:
        root, name = (compared.name if compared.name in _OF_THE_RULE else ""), compared.name
    field, label = _named(scenario, root, name)
    if compared.value is None:
        return Said(root, label, "")
    if field is None or _counts(field, compared.value):
        text = _loose(scenario, compared, show)
    else:
        text = worded(field, compared.value, show)
    return Said(root, label, with_units(text, show))


def _counts(field: Field, value: object) -> bool:
    """Whether a list was compared by how many stand in it."""
    return field.kind in ("list", "rows") and isinstance(value, int | float)


def _named(scenario: Scenario, root: str, name: str) -> tuple[Field | None, str]:
    """Return the field of a name and what it is called; of a place in a list such as ``steps[1].op``, a column."""
    place = _PLACE.fullmatch(name)
    whole = place["name"] if place else name
    field = next((one for one in _fields(scenario, root) if one.name == whole), None)
    called = (field.label if field else "") or DERIVED_NAMES.get(whole) or whole.replace("_", " ")
    if place is None or field is None:
        return field, called
    column = next((one for one in field.columns if one.name == place["column"]), None)
    number = f"{called} {place['place']}"
    return column or field.items, f"{number}, {column.label.lower()}" if column and column.label else number


def _fields(scenario: Scenario, root: str) -> tuple[Field, ...]:
    if root == "facts":
        return scenario.facts
    if root == "model":
        return scenario.model_fields
    return scenario.key_fields if root in ("answer", "key") else ()


def _loose(scenario: Scenario, compared: Compared, show: Show) -> str:
    """Return a limit, a tolerance or a figure on the way: options by their words, numbers with their own decimals."""
    value = compared.value
    if isinstance(value, str):
        words = (field.words_of(value) for field in _choices(scenario) if value in field.option_ids)
        return next(words, value)
    if isinstance(value, list | tuple):
        value = _options_in(scenario, value)
    if isinstance(value, bool) or not isinstance(value, int | float):
        return worded(Field(compared.name, "text"), value, show)
    decimals = len(f"{value:.4f}".rstrip("0").partition(".")[2])
    unit = _PERCENT if compared.unit == "%" else compared.unit or "ratio"
    return show(value, unit, decimals)


def _options_in(scenario: Scenario, listed: Sequence[object]) -> list[object]:
    """Return what a rule lists by the words of the field that has them all as options; other words as they stand."""
    field = next((one for one in _choices(scenario) if {str(each) for each in listed} <= set(one.option_ids)), None)
    return [field.words_of(str(each)) for each in listed] if field else list(listed)


def _choices(scenario: Scenario) -> Iterator[Field]:
    """Walk every field that has options, those of the answer first."""
    for field in chain(scenario.key_fields, scenario.facts):
        yield from field.columns or (field.items or field,)
