"""Checks a case against its schema and returns a clean copy: plain values only, what is absent as None."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from typing import Any

from assessments.rules.faults import CaseRefused, listed, nearest, offered
from assessments.rules.kinds import Kind, Schema

MAX_VALUE = 1e12
MAX_INT = 10**9


def bind(schema: Schema, case: object) -> dict[str, Any]:
    """Return the case as rules may read it.

    Numbers are finite, at most 1e12 and rounded to the `step` of their kind; pick-lists lose their doubles; a number
    is never a yes/no. Raises CaseRefused with the path and what would be right.

    >>> bind(Schema.of({"t": "rec", "fields": {"te": {"t": "num", "opt": True}}}), {})
    {'te': None}
    """
    if not isinstance(case, Mapping):
        raise CaseRefused(f"A case is an object of name and value, not {_shown(case)}.")
    return _fields(schema.names, case, "")


def rounded(value: float, step: float) -> float:
    """Return the value at a resolution, so that what is shown is what is compared.

    >>> rounded(41.26, 0.1), rounded(41.26, 0.5)
    (41.3, 41.5)
    """
    decimals = -math.floor(math.log10(step))
    if math.isclose(step, 10.0**-decimals):
        return round(value, decimals)
    return round(round(value / step) * step, 12)


def _fields(fields: Mapping[str, Kind], values: Mapping[Any, Any], where: str) -> dict[str, Any]:
    for name in values:
        if name not in fields:
            near = nearest(str(name), fields)
            raise CaseRefused(offered(f"{where}{name!s:.60}: there is no such field", near))
    return {name: _bound(kind, values.get(name), f"{where}{name}") for name, kind in fields.items()}


def _bound(kind: Kind, value: object, where: str) -> Any:
    if value is None:
        if kind.opt:
            return None
        raise CaseRefused(f"{where}: nothing is there; it has to be {kind.spoken}.")
    return _BINDERS[kind.name](kind, value, where)


def _number(kind: Kind, value: object, where: str) -> float:
    if isinstance(value, bool) or not isinstance(value, int | float):
        raise _unfit(kind, value, where)
    if not abs(value) <= MAX_VALUE:
        raise CaseRefused(f"{where}: {value!r:.40} is not a finite number of at most {MAX_VALUE:.0e}.")
    return rounded(float(value), kind.step) if kind.step else float(value)


def _whole(kind: Kind, value: object, where: str) -> int:
    if isinstance(value, float) and value.is_integer() and abs(value) <= MAX_INT:
        return int(value)
    if isinstance(value, bool) or not isinstance(value, int):
        raise _unfit(kind, value, where)
    if abs(value) > MAX_INT:
        raise CaseRefused(f"{where}: {value!r:.40} is more than {MAX_INT}.")
    return int(value)


def _truth(kind: Kind, value: object, where: str) -> bool:
    if isinstance(value, bool):
        return value
    raise _unfit(kind, value, where)


def _text(kind: Kind, value: object, where: str) -> str:
    if not isinstance(value, str):
        raise _unfit(kind, value, where)
    if len(value) > kind.max:
        raise CaseRefused(f"{where}: the text has {len(value)} characters, at most {kind.max} are kept.")
    return str(value)


def _choice(kind: Kind, value: object, where: str) -> str:
    if not isinstance(value, str):
        raise _unfit(kind, value, where)
    if value not in kind.vals:
        said = f"{where}: {_shown(value)} is none of the choices {listed(kind.vals)}"
        raise CaseRefused(offered(said, nearest(value, kind.vals)))
    return str(value)


def _list(kind: Kind, value: object, where: str) -> list[Any]:
    if not isinstance(value, list | tuple) or kind.item is None:
        raise _unfit(kind, value, where)
    item = kind.item
    given = list(dict.fromkeys(value)) if item.name == "enum" and _all_texts(value) else value
    if len(given) > kind.max:
        raise CaseRefused(f"{where}: the list has {len(given)} items, at most {kind.max} are read.")
    return [_bound(item, each, f"{where}[{place}]") for place, each in enumerate(given)]


def _all_texts(values: list[Any] | tuple[Any, ...]) -> bool:
    return all(isinstance(each, str) for each in values)


def _record(kind: Kind, value: object, where: str) -> dict[str, Any]:
    if not isinstance(value, Mapping):
        raise _unfit(kind, value, where)
    return _fields(kind.fields, value, f"{where}.")


def _unfit(kind: Kind, value: object, where: str) -> CaseRefused:
    return CaseRefused(f"{where}: {_shown(value)} is not {kind.spoken}.")


def _shown(value: object) -> str:
    said = repr(value)
    return said if len(said) <= 40 else f"{said[:39]}…"


_BINDERS: dict[str, Callable[[Kind, object, str], Any]] = {
    "num": _number,
    "int": _whole,
    "bool": _truth,
    "str": _text,
    "enum": _choice,
    "list": _list,
    "rec": _record,
}
