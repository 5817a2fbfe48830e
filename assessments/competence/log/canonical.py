"""Canonical JSON (RFC 8785), of the few kinds of value that an entry may hold."""

import json
import re
from collections.abc import Mapping

import rfc8785

from assessments.competence.log.errors import LogFault

GREATEST = 2**53 - 1
"""The greatest whole number that every reader of JSON takes exactly (RFC 8785 §3.2.2.3, RFC 7493 §2.2)."""
LONE = re.compile("[\ud800-\udfff]")


def canonical(value: Mapping[str, object]) -> str:
    """Return the one text that stands for `value`: keys in order of their UTF-16 code units, no blanks.

    A value is text, a whole number of at most `GREATEST` either way, a list of texts, or a mapping of these by text.
    Raises `LogFault` for anything else; fractions are kept as text.

    >>> canonical({"seq": 1, "kind": "signed", "elements": ["COA2"]})
    '{"elements":["COA2"],"kind":"signed","seq":1}'
    """
    _refuse_mapping("the entry", value)
    return rfc8785.dumps(_plain(value)).decode("utf-8")


def read(text: str) -> dict[str, object]:
    """Return what a canonical text says; raises `LogFault` if it is no JSON object or not in its canonical form.

    >>> read('{"seq":1}')
    {'seq': 1}
    """
    try:
        value = json.loads(text)
    except (ValueError, RecursionError) as wrong:
        raise LogFault(f"It can't be read: {wrong}.") from wrong
    if not isinstance(value, dict):
        raise LogFault("It can't be read: a JSON object stands there in every entry.")
    if canonical(value) != text:
        raise LogFault("It is not in canonical form (RFC 8785).")
    return value


def _plain(value: object) -> "rfc8785._impl._Value":
    if isinstance(value, Mapping):
        return {key: _plain(one) for key, one in value.items()}
    return list(value) if isinstance(value, list | tuple) else value  # type: ignore[return-value]


def _refuse_mapping(place: str, value: Mapping[str, object]) -> None:
    for key, one in value.items():
        _refuse_text(f"a key of {place}", key)
        _refuse(key, one)


def _refuse(place: str, value: object) -> None:
    if isinstance(value, Mapping):
        _refuse_mapping(place, value)
    elif isinstance(value, list | tuple):
        for one in value:
            _refuse_text(place, one)
    elif isinstance(value, int) and not isinstance(value, bool):
        _refuse_size(place, value)
    else:
        _refuse_text(place, value)


def _refuse_size(place: str, value: int) -> None:
    if abs(value) > GREATEST:
        raise LogFault(f"{place} is {value}. A whole number in the log is at most {GREATEST} either way.")


def _refuse_text(place: str, value: object) -> None:
    if not isinstance(value, str):
        raise LogFault(f"{place} is {value!r}. The log holds text, whole numbers and lists of texts; write it as text.")
    if LONE.search(value):
        raise LogFault(f"{place} holds half a character (a lone surrogate). Write whole characters.")
