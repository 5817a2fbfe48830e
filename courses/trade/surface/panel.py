"""The panel a plan is worked on: read from JSON with everything resolved, zone by zone, or refused in a sentence."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from courses.trade.constants import Constants
from courses.trade.errors import PlanRefused, TradeError
from courses.trade.surface.raw import Raw
from courses.trade.surface.zone import ZONE_KEYS, ZONE_OWN, Zone, marks_of, zone_of
from courses.trade.surfaces import Catalogue

__all__ = ["PanelSurface"]

MOST_ZONES: Final = 12
SURFACE_KEYS: Final = ("substrate", "colour", "hardness", "panel_degc", *ZONE_KEYS, "rest", "defects", "zones")
ZONE_FIELDS: Final = (*ZONE_OWN, *ZONE_KEYS, "defects")
HARDNESS: Final = (0.5, 2.0)
DEGC: Final = (-20.0, 100.0)
MAIN: Final = "main"
REST: Final = ("main", "rest")
"""Names under which a listed zone is the rest of the panel."""
EDGE: Final = "edge"


@dataclass(frozen=True, slots=True)
class PanelSurface:
    """A panel before any work. ``parts`` are its zones, first the rest, then those that were listed, then the edges.

    ``hardness`` multiplies every cut: 1.3 is a soft film, 0.7 a hard one. ``index`` is its refractive index.
    """

    substrate: str
    colour: str
    hardness: float
    index: float
    soft_degc: float
    panel_degc: float
    parts: tuple[Zone, ...]

    @classmethod
    def of(cls, raw: object, catalogue: Catalogue, constants: Constants) -> PanelSurface:
        """The panel that ``raw`` describes as the door ``simulate`` takes it; `PlanRefused` says what is wrong, where.

        Depths a kind can't have are refused by the ``catalogue``; the defaults are those of the substrate.
        """
        given = Raw.of(raw, "surface", 'A surface is an object; write {"substrate": …, "film_um": …}.')
        given.only(SURFACE_KEYS)
        substrate = given.word("substrate", catalogue.surfaces)
        base = catalogue.surface(substrate)
        colour = given.text("colour", "white")
        try:
            catalogue.rgb(colour)
        except TradeError as wrong:
            raise given.refused(wrong.sentence, "colour") from None
        hardness = given.number("hardness", *HARDNESS) if "hardness" in given.values else base.hardness
        parts = _parts(given, catalogue, substrate, constants)
        return cls(
            substrate=substrate,
            colour=colour,
            hardness=hardness,
            index=base.index,
            soft_degc=_soft_degc(substrate, hardness, constants),
            panel_degc=given.number("panel_degc", *DEGC) if "panel_degc" in given.values else constants.heat.air_degc,
            parts=parts,
        )

    @property
    def zones(self) -> tuple[str, ...]:
        """The names of its zones."""
        return tuple(part.name for part in self.parts)

    def zone(self, name: str) -> Zone:
        """The zone called ``name``; `PlanRefused` where there is none."""
        for part in self.parts:
            if part.name == name:
                return part
        raise PlanRefused(f"There is no zone {name[:40]!r}; there are {', '.join(self.zones)}.", "zone")

    def as_json(self) -> dict[str, object]:
        """The panel as the door takes it, with every default filled in; read again it is the same panel."""
        first, *others = (part.as_json() for part in self.parts)
        found = {"substrate": self.substrate, "colour": self.colour, "hardness": self.hardness}
        found |= {"panel_degc": self.panel_degc, "rest": first["name"]}
        found |= {key: value for key, value in first.items() if key not in ZONE_OWN}
        return found | ({"zones": others} if others else {})


def _soft_degc(substrate: str, hardness: float, constants: Constants) -> float:
    """Where the film softens: hard ones later, soft ones earlier."""
    heat = constants.heat
    per_step = heat.harder_degc if hardness < 1 else heat.softer_degc
    base: float = getattr(heat, f"soft_{substrate}", heat.soft_clear_coat)
    return max(heat.air_degc + 10.0, base + per_step * (1 - hardness))


def _parts(given: Raw, catalogue: Catalogue, substrate: str, constants: Constants) -> tuple[Zone, ...]:
    """The zones of a panel with their shares of it."""
    listed = [one.only(ZONE_FIELDS) for one in given.objects("zones", MOST_ZONES)]
    names = [_name(one) for one in listed]
    if len(set(names)) < len(names):
        twice = next(name for name in names if names.count(name) > 1)
        raise given.refused(f"two zones are called {twice!r}; give each a name of its own", "zones")
    rest = given.text("rest", MAIN)
    whole = zone_of(given, catalogue, substrate, constants, rest, None)
    parts = [
        zone_of(one, catalogue, substrate, constants, name, whole) for name, one in zip(names, listed, strict=True)
    ]
    if not any(name in (rest, *REST) for name in names):
        parts = [whole, *parts]
    parts.sort(key=lambda part: part.name not in (rest, *REST))
    parts = [part for one in parts for part in _with_edge(one, rest, constants)]
    placed = marks_of(given, catalogue, constants, [part.name for part in parts])
    own = {name: marks_of(one, catalogue, constants, [name])[name] for name, one in zip(names, listed, strict=True)}
    shares = _shares(given, parts, constants)
    edges = {_edge_of(part.name, rest): part.name for part in parts}
    edged = {edges[part.name] for part in parts if part.edge and part.name in edges}
    return tuple(
        part.finished(
            [*placed[part.name], *own.get(part.name, ())],
            shares[part.name],
            part.name in edged,
            edges.get(part.name, "") if part.edge else "",
        )
        for part in parts
    )


def _name(one: Raw) -> str:
    name = one.text("name", "")
    if name and name != "all" and name == name.strip() and len(name) <= 40:
        return name
    raise one.refused("a zone has a name of 1 to 40 characters, and none is called all", "name")


def _with_edge(part: Zone, rest: str, constants: Constants) -> tuple[Zone, ...]:
    """A zone and, where its edge has a film of its own, that edge."""
    if part.edge_film_um is None:
        return (part,)
    return part.without_edge(), part.as_edge(_edge_of(part.name, rest), constants.film.edge_ratio)


def _edge_of(name: str, rest: str) -> str:
    """What the edge of a zone is called."""
    return EDGE if name in (rest, *REST) else f"{name}_{EDGE}"


def _shares(given: Raw, parts: list[Zone], constants: Constants) -> dict[str, float]:
    """The share of the panel that each zone has: as written; else a little for an edge, a tenth for a listed zone, and
    for the first all that is left.
    """
    usual = min(0.1, 0.9 / len(parts))
    others = {part.name: part.share or (constants.film.edge_share if part.edge else usual) for part in parts[1:]}
    left = 1.0 - sum(others.values())
    if left <= 0:
        said = f"the zones have {1 - left:.2f} of the panel between them; leave some for {parts[0].name}"
        raise given.refused(said, "zones")
    return {parts[0].name: left, **others}
