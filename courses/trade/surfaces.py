"""Surfaces and colours of panels, and the catalogue that joins them with the kinds of defects."""

from __future__ import annotations

import re
from collections.abc import Collection, Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import TypeVar

from courses.trade.defects import Kind, read_kinds
from courses.trade.errors import ImpossibleChoice, OutOfRange, offer
from courses.trade.sources import MARKS
from courses.trade.tables import Entry, tables_in

T = TypeVar("T")

PALETTE = "palette"
_FIGURES = ("hardness", "index", "rq_um", "corr_um", "film_um", "reserve_um", "budget_um")
_HEX = re.compile(r"#[0-9a-fA-F]{6}")


@dataclass(frozen=True, slots=True)
class Surface:
    """One substrate: what it is ``called``, and the figures it brings along where a scenario gives none.

    ``hardness`` 1 is usual; ``index`` of refraction; ``rq_um`` and ``corr_um`` are the rms roughness and correlation
    length of the sound film; ``film_um``, ``reserve_um``, ``budget_um`` micrometres; ``gloss60`` and ``gloss20`` what
    counts as finished. ``marks`` has mark and source key of each figure by its name in the file.
    """

    code: str
    called: str
    hardness: float
    index: float
    rq_um: float
    corr_um: float
    film_um: float
    reserve_um: float
    budget_um: float
    gloss60: float
    gloss20: float
    marks: Mapping[str, tuple[str, str]]


@dataclass(frozen=True, slots=True)
class Catalogue:
    """All kinds of defects, substrates and colours by their codes: what a scene is read with."""

    kinds: Mapping[str, Kind]
    surfaces: Mapping[str, Surface]
    palette: Mapping[str, str]

    def kind(self, code: str) -> Kind:
        """The kind called ``code``; `ImpossibleChoice` offers the nearest."""
        return _found(self.kinds, code, "kind of defect", "kind")

    def surface(self, code: str) -> Surface:
        """The substrate called ``code``; `ImpossibleChoice` offers the nearest."""
        return _found(self.surfaces, code, "substrate", "substrate")

    def depth_um(self, kind: str, severity: float, substrate: str = "gel_coat") -> float:
        """Depth of a ``kind`` in micrometres at a ``severity`` from 0 to 1; of one that goes through, the film's.

        `ImpossibleChoice` for an unknown kind or substrate, `OutOfRange` for a severity beyond. Sources: each kind's.
        """
        return self.kind(kind).depth_um(severity, self.surface(substrate).film_um)

    def severity(self, kind: str, depth_um: float) -> float:
        """The severity at which a ``kind`` is ``depth_um`` deep: never falls as the depth rises.

        `OutOfRange` where the kind is never so deep; it says what is possible and which kinds are.
        """
        asked = self.kind(kind)
        try:
            return asked.severity(depth_um)
        except OutOfRange as wrong:
            others = [other.code for other in self.kinds.values() if asked.graded and _fits(other, asked, depth_um)]
            near = f" As deep as that are {', '.join(others)}." if others else ""
            raise OutOfRange(wrong.sentence + near, "depth_um") from None

    def rgb(self, colour: str) -> tuple[int, int, int]:
        """Red, green and blue, 0 to 255 (sRGB), of a colour of the palette or of ``#rrggbb``.

        `ImpossibleChoice` for anything else. Source: our own choice, and the colour itself.
        """
        value = self.palette.get(colour, colour)
        if not _HEX.fullmatch(value):
            near = offer(colour[:40], self.palette)
            raise ImpossibleChoice(f"There is no colour {colour[:40]!r}; write #rrggbb, or {near}", "colour")
        red, green, blue = (int(value[start : start + 2], 16) for start in (1, 3, 5))
        return red, green, blue


def _found(known: Mapping[str, T], code: str, noun: str, name: str) -> T:
    if code in known:
        return known[code]
    raise ImpossibleChoice(f"There is no {noun} {code[:40]!r}; {offer(code[:40], known)}", name)


def _fits(other: Kind, asked: Kind, depth_um: float) -> bool:
    return other.graded and other.stands == asked.stands and other.depths_um[0] <= depth_um <= other.depths_um[2]


def read_catalogue(defects: tuple[str, str], surfaces: tuple[str, str], sources: Collection[str]) -> Catalogue:
    """The catalogue of two files, each as (text, name): defects, then surfaces and palette.

    ``sources``: the keys they may cite. Raises `TableRefused` with file, line and key.
    """
    text, file = surfaces
    tables = {key: Entry.at(key, value, text, file) for key, value in tables_in(text, file).items()}
    found = {code: _surface(code, entry, tuple(sources)) for code, entry in tables.items() if code != PALETTE}
    return Catalogue(
        read_kinds(*defects, sources),
        MappingProxyType(found),
        _palette(tables.get(PALETTE, Entry({}, f"{file}, {PALETTE}"))),
    )


def _surface(code: str, entry: Entry, sources: tuple[str, ...]) -> Surface:
    entry.only("called", *_FIGURES, "agreed", "from")
    agreed = entry.table("agreed").only("gloss60", "gloss20")
    origin = entry.table("from").only(*_FIGURES, "agreed")
    marks = {name: _mark(origin.table(name), sources) for name in (*_FIGURES, "agreed")}
    figures = {name: entry.number(name) for name in _FIGURES}
    gloss = {name: agreed.number(name) for name in ("gloss60", "gloss20")}
    return Surface(code=code, called=entry.text("called"), marks=MappingProxyType(marks), **figures, **gloss)


def _mark(entry: Entry, sources: tuple[str, ...]) -> tuple[str, str]:
    entry.only("mark", "source")
    return entry.text("mark", tuple(MARKS)), entry.text("source", sources)


def _palette(entry: Entry) -> Mapping[str, str]:
    for name in entry.values:
        if not _HEX.fullmatch(entry.text(name)):
            raise entry.refused(f"{name} is {entry.text(name)!r}; write it as #rrggbb.")
    return MappingProxyType({name: entry.text(name) for name in entry.values})
