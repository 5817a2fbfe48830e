"""Invented panels to try a plan on: a kind and a whole number give a surface, always the same."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Final

from courses.trade.defects import LIGHTS
from courses.trade.sources import MARKS
from courses.trade.surfaces import Catalogue
from courses.trade.tables import Entry, tables_in

__all__ = ["HIGHEST", "PanelKind", "Steps", "Worn", "read_panels"]

HIGHEST: Final = 9999
"""The highest number a panel is drawn from; the lowest is 1."""
_FIELDS: Final = (
    *("called", "about", "substrate", "colours", "film_um", "oxidation_um", "edge", "may_stay", "light"),
    *("defects", "mark", "source"),
)
_MASK: Final = 2**64 - 1


@dataclass(frozen=True, slots=True)
class Steps:
    """A range in equal steps: ``low``, ``low + step`` … ``high``, both ends included."""

    low: float
    high: float
    step: float

    def at(self, share: float) -> float:
        """The step that lies at a ``share`` from 0 to below 1 of the range, without binary dust.

        >>> Steps(0.6, 1.0, 0.1).at(0.5), Steps(0.6, 1.0, 0.1).at(0.99)
        (0.8, 1.0)
        """
        count = round((self.high - self.low) / self.step) + 1
        return round(self.low + int(share * count) * self.step, 6)


@dataclass(frozen=True, slots=True)
class Worn:
    """One population of marks of a panel: its ``kind``, its depth unless it goes through, the share it covers."""

    kind: str
    depth_um: Steps | None
    cover: float


@dataclass(frozen=True, slots=True)
class PanelKind:
    """One kind of panel, as ``fixtures/trade/panels.toml`` tells it; `drawn` gives one of them."""

    code: str
    called: str
    about: str
    substrate: str
    colours: tuple[str, ...]
    film_um: Steps
    oxidation_um: Steps | None
    edge: Steps | None
    may_stay: tuple[str, ...]
    light: str
    defects: tuple[Worn, ...]

    def drawn(self, number: int) -> dict[str, object]:
        """The surface of panel ``number`` of this kind, as the door ``simulate`` takes it; lengths in micrometres.

        Film at the edge is rounded to whole micrometres. Source: invented, round the examples of the training model.
        """
        share = _shares(f"{self.code} {number}")
        colour, film = self.colours[int(next(share) * len(self.colours))], self.film_um.at(next(share))
        surface: dict[str, object] = {"substrate": self.substrate, "colour": colour, "film_um": film}
        if self.edge:
            surface["edge_film_um"] = float(round(film * self.edge.at(next(share))))
        if self.oxidation_um:
            surface["oxidation_um"] = self.oxidation_um.at(next(share))
        if self.defects:
            surface["defects"] = [_defect(one, share) for one in self.defects]
        if self.may_stay:
            surface["agreed"] = {"may_stay": list(self.may_stay)}
        return surface


def _defect(one: Worn, share: Iterator[float]) -> dict[str, object]:
    depth = {"depth_um": one.depth_um.at(next(share))} if one.depth_um else {}
    return {"kind": one.kind, **depth, "cover": one.cover}


def _shares(seed: str) -> Iterator[float]:
    """Yield numbers from 0 to below 1 that follow from the ``seed`` alone (the mixer known as SplitMix64)."""
    state = int.from_bytes(seed.encode()) * 0xD1342543DE82EF95 & _MASK
    while True:
        state = state + 0x9E3779B97F4A7C15 & _MASK
        mixed = (state ^ state >> 30) * 0xBF58476D1CE4E5B9 & _MASK
        mixed = (mixed ^ mixed >> 27) * 0x94D049BB133111EB & _MASK
        yield ((mixed ^ mixed >> 31) >> 11) / 2**53


def read_panels(text: str, file: str, catalogue: Catalogue, sources: Collection[str]) -> Mapping[str, PanelKind]:
    """Every kind of panel of a TOML ``text`` by code, in its order; `TableRefused` names ``file``, line and kind."""
    tables = tables_in(text, file)
    return MappingProxyType(
        {
            code: _kind(code, Entry.at(code, value, text, file), catalogue, tuple(sources))
            for code, value in tables.items()
        }
    )


def _kind(code: str, entry: Entry, catalogue: Catalogue, sources: tuple[str, ...]) -> PanelKind:
    entry.only(*_FIELDS)
    entry.text("mark", tuple(MARKS))
    entry.text("source", sources)
    return PanelKind(
        code=code,
        called=entry.text("called"),
        about=entry.text("about"),
        substrate=entry.text("substrate", tuple(catalogue.surfaces)),
        colours=entry.texts("colours", tuple(catalogue.palette)),
        film_um=_steps(entry, "film_um"),
        oxidation_um=_steps(entry, "oxidation_um") if "oxidation_um" in entry.values else None,
        edge=_steps(entry, "edge") if "edge" in entry.values else None,
        may_stay=entry.texts("may_stay", tuple(catalogue.kinds)) if "may_stay" in entry.values else (),
        light=entry.text("light", LIGHTS),
        defects=tuple(_worn(one, catalogue) for one in _listed(entry)),
    )


def _listed(entry: Entry) -> Iterator[Entry]:
    listed = entry.values.get("defects", [])
    if not isinstance(listed, list):
        raise entry.refused("defects is no list; open each with two brackets.")
    for number, one in enumerate(listed, start=1):
        yield Entry(one if isinstance(one, dict) else {}, f"{entry.where}.defects, number {number}")


def _worn(entry: Entry, catalogue: Catalogue) -> Worn:
    entry.only("kind", "depth_um", "cover")
    kind = catalogue.kind(entry.text("kind", tuple(catalogue.kinds)))
    depth = None if kind.through else _steps(entry, "depth_um")
    for end in (depth.low, depth.high) if depth else ():
        if not kind.depths_um[0] <= end <= kind.depths_um[2]:
            raise entry.refused(
                f"{kind.code} is never {end:g} µm deep; give {kind.depths_um[0]:g} to {kind.depths_um[2]:g}."
            )
    return Worn(kind.code, depth, entry.number("cover"))


def _steps(entry: Entry, key: str) -> Steps:
    low, high, step = entry.numbers(key, 3)
    if not (low <= high and step > 0 and abs((high - low) / step - round((high - low) / step)) < 1e-6):
        raise entry.refused(
            f"{key} is {low:g} to {high:g} by {step:g}; write [from, to, step], the steps ending on to."
        )
    return Steps(low, high, step)
