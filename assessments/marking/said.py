"""The values of a finding in words: what each is called, and how it reads in the reader's units."""

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import chain
from typing import Final

from assessments.marking.bound import DERIVED_NAMES
from assessments.rules import Compared
from assessments.scenarios.fields import Field, Option
from assessments.scenarios.spec import Scenario
from assessments.scenarios.story import Show, with_units, worded

_OF_THE_RULE: Final = ("limit", "within")
_ROOTS: Final = ("answer", "key", "facts", "model")
_PERCENT: Final = "percent"
_LISTED: Final = re.compile(r"\(([\w ]+(?:, [\w ]+)*)\)")
_OWN_NAME: Final = re.compile(r"\b[a-z]+(?:_[a-z0-9]+)+\b")
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


def in_words(scenario: Scenario, sentence: str) -> str:
    """Return what is said of a rule with the scenario's words in it: options for ids, a fact as it is labelled."""
    words = {
        spelt: one.words for one in reversed(list(_options(scenario))) for spelt in (one.id, one.id.replace("_", " "))
    }
    shared = sentence.replace("overlap of ", "in both ")
    listed = _LISTED.sub(lambda found: _list_in_words(found[1], words) or found[0], shared)
    listed = _OWN_NAME.sub(lambda found: f"“{words[found[0]]}”" if found[0] in words else found[0], listed)
    for field in scenario.facts:
        if field.label and field.hidden:
            name = re.escape(field.name.replace("_", " "))
            listed = re.sub(rf"\b{name}\b", field.label[:1].lower() + field.label[1:], listed)
    return listed


def option_in_words(scenario: Scenario, value: str) -> str:
    """Return an option by its words; the value itself where no field has it."""
    words = (field.words_of(value) for field in _choices(scenario) if value in field.option_ids)
    return next(words, value)


def _list_in_words(listed: str, words: Mapping[str, str]) -> str:
    """Return a list of ids as words; nothing where one of them is no option."""
    ids = listed.split(", ")
    return f"({', '.join(f'“{words[one]}”' for one in ids)})" if all(one in words for one in ids) else ""


def _options(scenario: Scenario) -> Iterator[Option]:
    return (option for field in _choices(scenario) for option in field.options)


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
        return field, called if root or field else in_words(scenario, called)
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
        return option_in_words(scenario, value)
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
