"""The kinds of value a rule may read, and the schema that declares them."""

from __future__ import annotations

import keyword
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from functools import cache
from types import MappingProxyType

from assessments.rules.faults import SchemaRefused, listed, nearest, offered

NUMBERS = ("num", "int")
SINGLE = ("num", "int", "bool", "str", "enum")
NAMES = (*SINGLE, "list", "rec")
LIST_MAX = 20
TEXT_MAX = 2000
_DEEPEST = 12
_LONGEST = 100
_ALLOWED = {
    "num": {"unit", "step"},
    "int": {"unit", "step"},
    "bool": set(),
    "str": {"max"},
    "enum": {"vals"},
    "list": {"item", "max"},
    "rec": {"fields"},
}
_NO_FIELDS: Mapping[str, Kind] = MappingProxyType({})


@dataclass(frozen=True, slots=True)
class Kind:
    """What a value may be: `num int bool str enum list rec`, and whether it may be missing.

    `unit` and `step` (the resolution it is rounded to at bind) belong to numbers, `vals` to a choice, `item` and
    `max` to a list, `max` to a text (characters), `fields` to a record.

    >>> Kind("num", unit="um").spoken
    'a number'
    """

    name: str
    unit: str | None = None
    step: float | None = None
    vals: tuple[str, ...] = ()
    item: Kind | None = None
    max: int = LIST_MAX
    fields: Mapping[str, Kind] = field(default_factory=lambda: _NO_FIELDS, hash=False)
    opt: bool = False

    @property
    def spoken(self) -> str:
        """The kind in plain words, with its article."""
        return _SPOKEN[self.name]

    @property
    def is_number(self) -> bool:
        """Whether it counts as a number. Yes/no does not."""
        return self.name in NUMBERS


_SPOKEN = {
    "num": "a number",
    "int": "a whole number",
    "bool": "yes/no",
    "str": "a text",
    "enum": "a choice",
    "list": "a list",
    "rec": "a record",
}


@cache
def num(unit: str | None = None, *, opt: bool = False, step: float | None = None) -> Kind:
    """Return the kind of a number in a unit.

    >>> num("degc").unit
    'degc'
    """
    return Kind("num", unit=unit, step=step, opt=opt)


@cache
def integer(unit: str | None = None, *, opt: bool = False) -> Kind:
    """Return the kind of a whole number."""
    return Kind("int", unit=unit, opt=opt)


@cache
def truth(*, opt: bool = False) -> Kind:
    """Return the kind of a yes/no."""
    return Kind("bool", opt=opt)


@cache
def text(most: int = TEXT_MAX, *, opt: bool = False) -> Kind:
    """Return the kind of a free text of at most so many characters."""
    return Kind("str", max=most, opt=opt)


def choice(vals: Sequence[str], *, opt: bool = False) -> Kind:
    """Return the kind of a choice from a list of words."""
    return Kind("enum", vals=tuple(vals), opt=opt)


def many(item: Kind, most: int = LIST_MAX, *, opt: bool = False) -> Kind:
    """Return the kind of a list of at most so many items."""
    return Kind("list", item=item, max=most, opt=opt)


def record(fields: Mapping[str, Kind], *, opt: bool = False) -> Kind:
    """Return the kind of a record."""
    return Kind("rec", fields=MappingProxyType(dict(fields)), opt=opt)


@dataclass(frozen=True, slots=True)
class Schema:
    """The names a rule may use, each with its kind.

    >>> Schema.of({"t": "rec", "fields": {"rh": {"t": "num", "unit": "rh"}}}).names["rh"].unit
    'rh'
    """

    names: Mapping[str, Kind] = field(hash=False)

    @classmethod
    def of(cls, mapping: object) -> Schema:
        """Return the schema of a JSON object `{"t": "rec", "fields": {…}}`.

        Raises SchemaRefused with the path and what would be right.
        """
        kind = _kind(mapping, "schema", 0)
        if kind.name != "rec":
            raise SchemaRefused(f"schema: the outermost kind is '{kind.name}', it has to be 'rec'.")
        return cls(kind.fields)

    def kind(self, path: Sequence[str]) -> Kind | None:
        """Return the kind at a path such as `("answer", "steps", "[]", "op")`, or None.

        >>> Schema({"answer": record({"te": num("h")})}).kind(("answer", "te")).unit
        'h'
        """
        here: Kind | None = record(self.names)
        for part in path:
            if here is None:
                return None
            here = here.item if part == "[]" else here.fields.get(part)
        return here

    def with_missing(self, path: Sequence[str]) -> Schema:
        """Return the schema in which the value at a path may be missing.

        >>> Schema({"model": record({})}).with_missing(("model",)).names["model"].opt
        True
        """
        return Schema(_loosened(record(self.names), path).fields)


def _loosened(kind: Kind, path: Sequence[str]) -> Kind:
    if not path:
        return replace(kind, opt=True)
    if path[0] not in kind.fields:
        return kind
    inner = {**kind.fields, path[0]: _loosened(kind.fields[path[0]], path[1:])}
    return replace(kind, fields=MappingProxyType(inner))


def _kind(mapping: object, where: str, depth: int) -> Kind:
    if depth > _DEEPEST:
        raise SchemaRefused(f"{where}: kinds are nested more than {_DEEPEST} deep.")
    if not isinstance(mapping, Mapping):
        raise SchemaRefused(f'{where}: a kind is an object such as {{"t": "num", "unit": "um"}}, not {mapping!r:.60}.')
    name = mapping.get("t")
    if not isinstance(name, str) or name not in NAMES:
        near = nearest(name, NAMES) if isinstance(name, str) else None
        raise SchemaRefused(offered(f"{where}: 't' is {name!r:.60}, it has to be one of {listed(NAMES)}", near))
    _refuse_strangers(mapping, name, where)
    return Kind(
        name,
        unit=_unit(mapping, where),
        step=_step(mapping, where),
        vals=_vals(mapping, where) if name == "enum" else (),
        item=_kind(mapping.get("item"), f"{where}.item", depth + 1) if name == "list" else None,
        max=_max(mapping, where, TEXT_MAX if name == "str" else LIST_MAX),
        fields=_fields(mapping, where, depth) if name == "rec" else _NO_FIELDS,
        opt=_opt(mapping, where),
    )


def _refuse_strangers(mapping: Mapping[str, object], name: str, where: str) -> None:
    allowed = {"t", "opt", *_ALLOWED[name]}
    for key in mapping:
        if key not in allowed:
            near = nearest(str(key), allowed)
            raise SchemaRefused(offered(f"{where}: '{key!s:.60}' says nothing about kind '{name}'", near))


def _unit(mapping: Mapping[str, object], where: str) -> str | None:
    unit = mapping.get("unit")
    if unit is not None and not (isinstance(unit, str) and len(unit) <= _LONGEST):
        raise SchemaRefused(f"{where}: 'unit' is {unit!r:.60}, it has to be a text such as 'um'.")
    return unit or None


def _step(mapping: Mapping[str, object], where: str) -> float | None:
    step = mapping.get("step")
    if step is None:
        return None
    if isinstance(step, bool) or not isinstance(step, int | float) or not 0 < step <= 1e9:
        raise SchemaRefused(f"{where}: 'step' is {step!r:.60}, it has to be a number above 0 such as 0.1.")
    return step


def _vals(mapping: Mapping[str, object], where: str) -> tuple[str, ...]:
    vals = mapping.get("vals")
    if not isinstance(vals, list | tuple) or not vals or not all(isinstance(each, str) for each in vals):
        raise SchemaRefused(f"{where}: a choice needs 'vals', a list of at least one word, not {vals!r:.60}.")
    if len(set(vals)) != len(vals):
        raise SchemaRefused(f"{where}: 'vals' names a word twice: {listed(vals)}.")
    return tuple(vals)


def _max(mapping: Mapping[str, object], where: str, default: int) -> int:
    most = mapping.get("max", default)
    if isinstance(most, bool) or not isinstance(most, int) or not 0 < most <= 100_000:
        raise SchemaRefused(f"{where}: 'max' is {most!r:.60}, it has to be a whole number from 1 to 100000.")
    return most


def _fields(mapping: Mapping[str, object], where: str, depth: int) -> Mapping[str, Kind]:
    fields = mapping.get("fields")
    if not isinstance(fields, Mapping):
        raise SchemaRefused(f"{where}: a record needs 'fields', an object of name and kind, not {fields!r:.60}.")
    return MappingProxyType(dict(_named(fields, where, depth)))


def _named(fields: Mapping[object, object], where: str, depth: int) -> Iterator[tuple[str, Kind]]:
    for name, kind in fields.items():
        if not _is_name(name):
            said = f"a name is plain letters, digits and _, at most {_LONGEST} of them"
            raise SchemaRefused(f"{where}: {name!r:.60} is no name; {said}.")
        yield str(name), _kind(kind, f"{where}.{name}", depth + 1)


def _is_name(name: object) -> bool:
    """Whether a rule could write this name: plain ASCII, no word of the language's grammar, no leading underscore."""
    if not isinstance(name, str) or len(name) > _LONGEST:
        return False
    return name.isascii() and name.isidentifier() and not name.startswith("_") and not keyword.iskeyword(name)


def _opt(mapping: Mapping[str, object], where: str) -> bool:
    opt = mapping.get("opt", False)
    if not isinstance(opt, bool):
        raise SchemaRefused(f"{where}: 'opt' is {opt!r:.60}, it has to be true or false.")
    return opt
