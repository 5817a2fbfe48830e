"""Units of competency, their elements and criteria, and what each element requires as evidence."""

from collections.abc import Iterator, Mapping
from dataclasses import asdict, dataclass
from datetime import datetime
from functools import cached_property
from hashlib import sha256

import rfc8785

from assessments.competence.months import months_after
from courses.trade.errors import offer

DUE_DAYS = 60
"""Days before the end of a signature from which on it is due again. Common practice, no source."""


class UnknownCode(ValueError):
    """A code that is no unit, no element, or has no such requirement; the message offers the nearest."""


@dataclass(frozen=True, slots=True)
class Criterion:
    """What is looked for: its letter within the element, its words, whether missing it can't be made up for."""

    letter: str
    text: str
    critical: bool


@dataclass(frozen=True, slots=True)
class Ask:
    """One thing an element asks for; `words` is the sentence shown.

    `count` pieces of `kind` (and `mode`, where it isn't empty) of one of the `scenarios` (any, if none is named), each
    with all `tags`, seen by one of `witness` ("X", "WX" for both; anybody if empty), naming one of `elements`, at most
    `window_months` old; together on at least `days` days and on each of `substrates` (no other), or, if that is a
    number, on so many different ones.
    """

    code: str
    words: str
    kind: str
    mode: str
    scenarios: tuple[str, ...]
    count: int
    window_months: int
    witness: tuple[str, ...]
    days: int
    substrates: tuple[str, ...] | int
    tags: tuple[str, ...]
    elements: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Requirement:
    """What an element requires; a signature lives `recertify_months` and is due `due_days` before its end."""

    element: str
    version: int
    asks: tuple[Ask, ...]
    recertify_months: int
    due_days: int = DUE_DAYS

    @property
    def digest(self) -> str:
        """Return the SHA-256, in hex, of the whole requirement in canonical JSON (RFC 8785)."""
        return sha256(rfc8785.dumps(asdict(self))).hexdigest()

    def until(self, signed_at: datetime) -> datetime:
        """Return when a signature made at `signed_at` ends."""
        return months_after(signed_at, self.recertify_months)


@dataclass(frozen=True, slots=True)
class Element:
    """An element: code, title, criteria in order."""

    code: str
    title: str
    criteria: tuple[Criterion, ...]


@dataclass(frozen=True, slots=True)
class Unit:
    """A unit: code, title, purpose, the units or elements that come before it, its elements in order."""

    code: str
    title: str
    about: str
    prerequisites: tuple[str, ...]
    elements: tuple[Element, ...]


@dataclass(frozen=True)
class Framework:
    """All units by code; every requirement by element and version; which version of each is in force."""

    units: Mapping[str, Unit]
    requirements: Mapping[tuple[str, int], Requirement]
    in_force: Mapping[str, int]

    def requirement(self, element: str, version: int | None = None) -> Requirement:
        """Return the requirement of an element in force, or of a `version`; raises `UnknownCode`."""
        self.element(element)
        wanted = self.in_force[element] if version is None else version
        if (element, wanted) not in self.requirements:
            versions = sorted(number for code, number in self.requirements if code == element)
            raise UnknownCode(f"{element} has no requirement {wanted}; there are {', '.join(map(str, versions))}.")
        return self.requirements[element, wanted]

    def element(self, code: str) -> Element:
        """Return an element; raises `UnknownCode`."""
        if code not in self._elements:
            raise UnknownCode(f"No element is called {code!r}; {offer(code, self._elements)}")
        return self._elements[code][1]

    def unit_of(self, code: str) -> Unit:
        """Return the unit of an element, or the unit of that code itself; raises `UnknownCode`."""
        if code in self.units:
            return self.units[code]
        self.element(code)
        return self._elements[code][0]

    @property
    def codes(self) -> tuple[str, ...]:
        """Return the code of every unit, each followed by its elements."""
        return tuple(self._codes())

    def covers(self, code: str, element: str) -> bool:
        """Say whether `code`, a unit or an element, takes in `element`; an unknown code takes in nothing."""
        unit = self.units.get(code)
        return (code == element and code in self.codes) or bool(
            unit and any(element == one.code for one in unit.elements)
        )

    @cached_property
    def _elements(self) -> Mapping[str, tuple[Unit, Element]]:
        return {one.code: (unit, one) for unit in self.units.values() for one in unit.elements}

    def _codes(self) -> Iterator[str]:
        for unit in self.units.values():
            yield unit.code
            yield from (one.code for one in unit.elements)
