"""What a value may be: fields with kind, unit, decimals and choices, and records frozen against them.

Facts, the key and whatever a later chapter computes are all records: a mapping that can't change, was checked
once, and goes to JSON and back without loss.
"""

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from types import MappingProxyType
from typing import Literal, TypeVar

from assessments.scenarios.errors import ValueRefused
from courses.trade.errors import offer

FieldKind = Literal["quantity", "whole", "choice", "yes_no", "text", "mixed", "list", "rows"]
T = TypeVar("T", bool, str)
Frozen = float | bool | str | tuple["Frozen", ...] | Mapping[str, "Frozen"]


@dataclass(frozen=True, slots=True)
class Option:
    """One choice: the id that rules read and the words that people read."""

    id: str
    words: str


@dataclass(frozen=True, slots=True)
class Field:
    """One named value: what it may be, how it is shown, and whether it may be missing.

    ``unit`` and ``decimals`` belong to a quantity; a ``whole`` number, such as a count, has neither; ``mixed`` is a
    number or a text. ``options`` belong to a choice, ``items`` (one field) to a list, ``columns`` to rows. ``label`` is
    shown beside the value; a field without one is told by the story alone. ``hidden`` keeps a value from a trainee
    until it is asked for. ``clock`` shows hours as 08:15.
    """

    name: str
    kind: FieldKind
    label: str = ""
    unit: str = ""
    decimals: int = 0
    options: tuple[Option, ...] = ()
    columns: tuple["Field", ...] = ()
    items: "Field | None" = None
    most: int = 20
    optional: bool = False
    hidden: bool = False
    clock: bool = False

    @property
    def option_ids(self) -> tuple[str, ...]:
        """The ids a choice may take, in the order written."""
        return tuple(option.id for option in self.options)

    def words_of(self, option_id: str) -> str:
        """Return the words of an option; the id itself where the option has none."""
        return next((option.words for option in self.options if option.id == option_id), option_id)


class Record(Mapping[str, Frozen]):
    """A frozen mapping that fits its fields; absent optional values are left out.

    >>> fields = (Field("air_degc", "quantity", unit="degc", decimals=1), Field("note", "text", optional=True))
    >>> Record.of(fields, {"air_degc": 18.4, "note": None})
    Record({'air_degc': 18.4})
    """

    __slots__ = ("_values",)

    def __init__(self, values: Mapping[str, Frozen]) -> None:
        """Hold values that were already checked; use :meth:`of` for anything else."""
        self._values: Mapping[str, Frozen] = MappingProxyType(dict(values))

    @classmethod
    def of(cls, fields: Sequence[Field], raw: Mapping[str, object], where: str = "facts") -> "Record":
        """Return the record of ``raw`` checked against ``fields``; raise ValueRefused with place and value."""
        return cls(_checked_record(fields, raw, where))

    def __getitem__(self, name: str) -> Frozen:
        """Return the value of a name; KeyError where it is absent."""
        return self._values[name]

    def __iter__(self) -> Iterator[str]:
        """Walk the names in the order of the fields."""
        return iter(self._values)

    def __len__(self) -> int:
        """How many values are there."""
        return len(self._values)

    def __hash__(self) -> int:
        """Agree with equality: the names are enough to spread records."""
        return hash(frozenset(self._values))

    def __repr__(self) -> str:
        """Show the values as JSON would hold them."""
        return f"Record({self.as_json()!r})"

    def number(self, name: str) -> float:
        """Return a value known to be a number; raise ValueRefused where it is absent or something else."""
        value = self._values.get(name)
        if isinstance(value, bool) or not isinstance(value, int | float):
            raise ValueRefused(f"'{name}' isn't a number here but {value!r}.")
        return float(value)

    def as_json(self) -> dict[str, object]:
        """Return plain dictionaries, lists, numbers and strings, equal after a trip through JSON."""
        return {name: thawed(value) for name, value in self._values.items()}


def thawed(value: Frozen) -> object:
    """Return a frozen value as JSON would hold it."""
    if isinstance(value, Mapping):
        return {name: thawed(inner) for name, inner in value.items()}
    if isinstance(value, tuple):
        return [thawed(inner) for inner in value]
    return value


def checked(field: Field, value: object, where: str) -> Frozen:
    """Return the frozen value if it fits its field; raise ValueRefused naming ``where`` and the value."""
    match field.kind:
        case "quantity":
            return _checked_number(field, value, where)
        case "whole":
            return _checked_whole(value, where)
        case "choice":
            return _checked_choice(field, value, where)
        case "yes_no":
            return _checked_type(value, bool, "true or false", where)
        case "text":
            return _checked_type(value, str, "text", where)
        case "mixed":
            return value if isinstance(value, str) else _checked_finite(value, where)
        case _:
            return _checked_list(field, value, where)


def _checked_record(fields: Sequence[Field], raw: Mapping[str, object], where: str) -> dict[str, Frozen]:
    known = [field.name for field in fields]
    unknown = next((name for name in raw if name not in known), None)
    if unknown is not None:
        raise ValueRefused(f"{where} has no '{unknown}'; {offer(unknown, known)}")
    missing = next((one.name for one in fields if not one.optional and raw.get(one.name) is None), None)
    if missing is not None:
        raise ValueRefused(f"{where}.{missing} is missing, and it isn't optional.")
    there = ((field, raw[field.name]) for field in fields if raw.get(field.name) is not None)
    return {field.name: checked(field, value, f"{where}.{field.name}") for field, value in there}


def _checked_finite(value: object, where: str) -> float:
    if isinstance(value, bool) or not isinstance(value, int | float) or not math.isfinite(value):
        raise ValueRefused(f"{where} is {value!r}, not a finite number.")
    return value


def _checked_number(field: Field, value: object, where: str) -> float:
    value = _checked_finite(value, where)
    shown = round(value, field.decimals)
    if abs(shown - value) > 1e-9:
        raise ValueRefused(f"{where} is {value!r} but is shown to {field.decimals} decimals; round it first.")
    return int(shown) if field.decimals == 0 else float(shown)


def _checked_whole(value: object, where: str) -> int:
    if isinstance(value, bool) or not isinstance(value, int):
        raise ValueRefused(f"{where} is {value!r}, not a whole number.")
    return value


def _checked_choice(field: Field, value: object, where: str) -> str:
    if value not in field.option_ids:
        raise ValueRefused(f"{where} is {value!r}; {offer(str(value), field.option_ids)}")
    return str(value)


def _checked_type(value: object, wanted: type[T], words: str, where: str) -> T:
    if not isinstance(value, wanted):
        raise ValueRefused(f"{where} is {value!r}, not {words}.")
    return value


def _checked_list(field: Field, value: object, where: str) -> tuple[Frozen, ...]:
    if not isinstance(value, list | tuple):
        raise ValueRefused(f"{where} is {value!r}, not a list.")
    if len(value) > field.most:
        raise ValueRefused(f"{where} has {len(value)} items; at most {field.most} fit.")
    if field.items is not None:
        return tuple(checked(field.items, item, f"{where}[{n}]") for n, item in enumerate(value))
    return tuple(_checked_row(field, row, f"{where}[{n}]") for n, row in enumerate(value))


def _checked_row(field: Field, row: object, where: str) -> Record:
    if not isinstance(row, Mapping):
        raise ValueRefused(f"{where} is {row!r}, not a row with named columns.")
    return Record.of(field.columns, row, where)
