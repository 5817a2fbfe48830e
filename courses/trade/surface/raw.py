"""What somebody wrote, value by value: returned with its type, or refused in a sentence that says where."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass
from math import isfinite
from typing import Any, Final

from courses.trade.abrasives import d50_um
from courses.trade.errors import PlanRefused, TradeError, offer
from courses.trade.units import parse_quantity

__all__ = ["Raw"]

_UNITS: Final = {
    "_um": "um", "_degc": "degc", "_n": "n", "_m_s": "mps", "_rpm": "rpm", "_m2": "m2", "_h": "h", "hours": "h"
}  # fmt: skip
LONGEST: Final = 200
"""Characters of a text."""


@dataclass(frozen=True, slots=True)
class Raw:
    """An object out of JSON: its ``values`` and ``where`` it stands; every method raises `PlanRefused` there."""

    values: Mapping[str, Any]
    where: str

    @classmethod
    def of(cls, value: object, where: str, wrong: str) -> Raw:
        """The object ``value``; ``wrong`` is the sentence where it is none.

        >>> Raw.of({"op": "wash"}, "plan 1", "No step.").text("op", "")
        'wash'
        """
        if isinstance(value, Mapping) and all(isinstance(key, str) for key in value):
            return cls(value, where)
        raise PlanRefused(wrong, where)

    def refused(self, sentence: str, key: str = "") -> PlanRefused:
        """The refusal that says ``sentence`` of ``key``, ready to raise."""
        said = sentence[0].upper() + sentence[1:]
        return PlanRefused(said if said[-1] in ".?" else f"{said}.", f"{self.where} {key}".strip())

    def only(self, known: Collection[str]) -> Raw:
        """This object, after refusing every key that is not ``known``."""
        for key in self.values:
            if key not in known:
                raise self.refused(f"there is no {key[:40]!r} here; {offer(key[:40], known)}", key[:40])
        return self

    def word(self, key: str, known: Collection[str]) -> str:
        """The word under ``key``, one of the ``known``."""
        value = self.values.get(key)
        if isinstance(value, str) and value in known:
            return value
        said = repr(value)[:44] if key in self.values else "left out"
        near = offer(value[:40] if isinstance(value, str) else "", known)
        raise self.refused(f"{key} is {said}; {near}", key)

    def text(self, key: str, default: str) -> str:
        """The text under ``key``, at most 200 characters."""
        value = self.values.get(key, default)
        if isinstance(value, str) and len(value) <= LONGEST:
            return value
        raise self.refused(f"{key} is no text of at most {LONGEST} characters", key)

    def number(self, key: str, low: float, high: float) -> float:
        """The number under ``key``, from ``low`` to ``high``; a quantity may be text with a unit: ``"20 mil"``."""
        value = self.values.get(key)
        if isinstance(value, str) and (unit := _unit_of(key)):
            value = self._quantity(key, value, unit)
        if isinstance(value, bool) or not isinstance(value, int | float) or not isfinite(value):
            raise self.refused(f"{key} is {repr(value)[:44]}; write a number from {low:g} to {high:g}", key)
        if low <= value <= high:
            return float(value)
        raise self.refused(f"{key} is {value:g}; write a number from {low:g} to {high:g}", key)

    def _quantity(self, key: str, text: str, unit: str) -> float:
        try:
            return parse_quantity(text, unit)
        except TradeError as wrong:
            raise self.refused(wrong.sentence, key) from None

    def whole(self, key: str, low: float, high: float) -> int:
        """The whole number under ``key``, from ``low`` to ``high``."""
        value = self.number(key, low, high)
        if value == int(value):
            return int(value)
        raise self.refused(f"{key} is {value:g}; write a whole number", key)

    def numbers(self, key: str, low: float, high: float, most: int) -> tuple[float, ...]:
        """The numbers listed under ``key``, at least one and at most ``most``."""
        found = self.values.get(key)
        if isinstance(found, str | bytes) or not isinstance(found, Sequence) or not 1 <= len(found) <= most:
            raise self.refused(f"{key} is {repr(found)[:44]}; write a list of 1 to {most} numbers", key)
        return tuple(Raw({key: one}, self.where).number(key, low, high) for one in found)

    def flag(self, key: str, default: bool) -> bool:
        """The true or false under ``key``."""
        value = self.values.get(key, default)
        if isinstance(value, bool):
            return value
        raise self.refused(f"{key} is {repr(value)[:44]}; write true or false", key)

    def grade(self, key: str, default: str) -> str:
        """The P grade under ``key``."""
        value = self.values.get(key, default)
        grade = value if isinstance(value, str) else repr(value)
        try:
            d50_um(grade)
        except TradeError as wrong:
            raise self.refused(wrong.sentence, key) from None
        return grade

    def objects(self, key: str, most: int) -> tuple[Raw, ...]:
        """The objects listed under ``key``, at most ``most``; none where it is left out."""
        found = self.values.get(key, [])
        if isinstance(found, str | bytes) or not isinstance(found, Sequence) or len(found) > most:
            raise self.refused(f"{key} is no list of at most {most}", key)
        return tuple(
            Raw.of(one, f"{self.where} {key} {n}".strip(), f"Number {n} of {key} is no object.")
            for n, one in enumerate(found, start=1)
        )


def _unit_of(key: str) -> str:
    """The base unit that the name of a quantity ends in; empty where it is a plain number."""
    return next((unit for ending, unit in _UNITS.items() if key.endswith(ending)), "")
