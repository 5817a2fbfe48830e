"""The few functions that generated code may call, and the wrap round those a caller lends."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from operator import itemgetter
from typing import Any

from assessments.rules import vocabulary
from assessments.rules.faults import FunctionFailed
from assessments.rules.frame import LARGEST
from assessments.rules.functions import Function
from assessments.rules.trace import DIGITS, small

Row = Mapping[str, Any]
Places = tuple[dict[str, int] | None, dict[str, int] | None]


def places(steps: Sequence[Row | None]) -> Places:
    """Return the first and the last place of each act; None twice where a step has none.

    >>> places([{"op": "wash"}, {"op": "wash"}])
    ({'wash': 0}, {'wash': 1})
    """
    ops = vocabulary.ops_of(steps)
    if ops is None:
        return None, None
    first: dict[str, int] = {}
    for place, op in enumerate(ops):
        if op not in first:
            first[op] = place
    return first, {op: place for place, op in enumerate(ops)}


def grouped(rows: Sequence[Row], field: str) -> dict[str, list[Row]]:
    """Return rows by the word a field of theirs holds.

    >>> grouped([{"op": "wash"}, {"op": "sand"}], "op")["sand"]
    [{'op': 'sand'}]
    """
    found: dict[str, list[Row]] = {}
    for row in rows:
        word = row[field]
        if word in found:
            found[word].append(row)
        else:
            found[word] = [row]
    return found


def placed(rows: Sequence[Row], field: str) -> dict[str, list[tuple[int, Row]]]:
    """Return rows with their places by the word a field of theirs holds.

    >>> placed([{"op": "wash"}, {"op": "sand"}], "op")["sand"]
    [(1, {'op': 'sand'})]
    """
    found: dict[str, list[tuple[int, Row]]] = {}
    for pair in enumerate(rows):
        word = pair[1][field]
        if word in found:
            found[word].append(pair)
        else:
            found[word] = [pair]
    return found


def six(value: float) -> float:
    """Return a number to six decimals; most have fewer, and are told from the rest at a third of what `round` takes.

    A number of at most six decimals is the one nearest to a whole number of millionths: rounding would give it back.
    Adding one and a half times two to the fifty-second and taking it away again leaves a whole number; of numbers
    below -10⁹ it may leave a half.

    >>> six(2.5), six(1 / 3)
    (2.5, 0.333333)
    """
    short = (value * 1e6 + 6755399441055744.0 - 6755399441055744.0) / 1e6 == value > -1e9
    return value if short else round(value, DIGITS)


def sixes(values: Sequence[float]) -> list[float]:
    """Return numbers to six decimals, as `six` does, without a call for each.

    >>> sixes([2.5, 1 / 3])
    [2.5, 0.333333]
    """
    return [
        value if (value * 1e6 + 6755399441055744.0 - 6755399441055744.0) / 1e6 == value > -1e9 else round(value, DIGITS)
        for value in values
    ]


def sixes_or_none(values: Sequence[float | None]) -> list[float | None]:
    """Return numbers to six decimals, those that are there.

    >>> sixes_or_none([2.5, None])
    [2.5, None]
    """
    return [
        value
        if value is None or (value * 1e6 + 6755399441055744.0 - 6755399441055744.0) / 1e6 == value > -1e9
        else round(value, DIGITS)
        for value in values
    ]


def lent(function: Function) -> Callable[..., Any]:
    """Return a lent function whose every exception carries its name and whose values are of the kind it promised."""
    promised, call = _PROMISED[function.returns.name], function.call

    def run(*values: Any) -> Any:
        try:
            result = call(*values)
            if result is not None and type(result) not in promised:
                raise TypeError(f"it gave {result!r:.40} where {function.returns.spoken} was promised")
        except Exception as error:
            raise FunctionFailed(function.name, error) from error
        return result if type(result) is not float or -LARGEST <= result <= LARGEST else None

    return run


_PROMISED: dict[str, tuple[type, ...]] = {
    "num": (float, int),
    "int": (int,),
    "bool": (bool,),
    "str": (str,),
    "enum": (str,),
}
RUNTIME: Mapping[str, Callable[..., Any]] = {
    "abs": abs,
    "len": len,
    "max": max,
    "round": round,
    "enumerate": enumerate,
    "near_rel": vocabulary.near_rel,
    "before": vocabulary.before,
    "starts_before": vocabulary.starts_before,
    "after_each": vocabulary.after_each,
    "overlap": vocabulary.overlap,
    "norm": vocabulary.norm,
    "mentions": vocabulary.mentions,
    "cut": small,
    "places": places,
    "grouped": grouped,
    "placed": placed,
    "sixes": sixes,
    "sixes_or_none": sixes_or_none,
    "six": six,
    "fields": itemgetter,
}
"""What generated code finds under its name; nothing else is there, not even Python's own."""
