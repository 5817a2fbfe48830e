"""A zone of a panel: its film, what must stay of it, what lies on it and in it, and what was agreed."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Final

from courses.trade.constants import Constants
from courses.trade.errors import TradeError, offer
from courses.trade.gloss import smooth_gloss
from courses.trade.leftover import layer_to_um
from courses.trade.surface.marks import Marks
from courses.trade.surface.raw import Raw
from courses.trade.surfaces import Catalogue

__all__ = [
    "MOST_DEFECTS",
    "RANGES",
    "SOUND_TAIL_UM",
    "ZONE_KEYS",
    "ZONE_OWN",
    "Zone",
    "marks_of",
    "zone_defaults",
    "zone_of",
]

SOUND_RZ_UM: Final = 0.05
SOUND_TAIL_UM: Final = 0.10
"""Mean and deepest scratch of a sound, finished film: model."""
MOST_DEFECTS: Final = 40
_EVERYWHERE: Final = "all"

ZONE_KEYS: Final = (
    *("film_um", "film_spread", "edge_film_um", "reserve_um", "budget_um", "cure", "cure_most"),
    *("soiled", "taped", "wet", "oils", "rz_um", "tail_um", "trail_um", "oxidation_um", "oxidation_cv", "agreed"),
)
"""What a surface or a zone of it may say."""

ZONE_OWN: Final = ("name", "share", "edge", "idle")
"""What only a listed zone may say."""

RANGES: Final = {
    "film_um": (1.0, 5000.0),
    "film_spread": (0.01, 0.6),
    "edge_film_um": (1.0, 5000.0),
    "reserve_um": (0.0, 5000.0),
    "budget_um": (0.1, 1000.0),
    "cure": (0.0, 1.0),
    "cure_most": (0.0, 1.0),
    "rz_um": (0.0, 20.0),
    "tail_um": (0.0, 50.0),
    "trail_um": (0.0, 2.0),
    "oxidation_um": (0.0, 40.0),
    "oxidation_cv": (0.01, 1.0),
    "share": (0.001, 1.0),
}


@dataclass(frozen=True, slots=True)
class Zone:
    """One zone before any work; lengths in micrometres, shares from 0 to 1.

    ``share``: of the panel. ``edge``: a line that a pad meets, which tape covers; ``edge_of`` names the zone it
    borders. ``idle``: not part of the work, so that nothing is judged there. ``has_edge``: whether its own edge is
    another zone. ``marks`` are all families of marks but trails, which join ``trail_um``, and the oxidised layer.
    ``may_stay``: kinds of defects that were agreed to stay. ``cure_most``: how far the cure ever comes.
    """

    name: str
    share: float
    edge: bool
    idle: bool
    edge_of: str
    has_edge: bool
    film_um: float
    film_spread: float
    edge_film_um: float | None
    reserve_um: float
    budget_um: float
    cure: float
    cure_most: float
    soiled: bool
    taped: bool
    wet: bool
    oils: bool
    rz_um: float
    tail_um: float
    trail_um: float
    oxidation_um: float
    oxidation_cv: float
    gloss60: float
    gloss20: float
    may_stay: tuple[str, ...]
    marks: tuple[Marks, ...] = ()

    @property
    def judged(self) -> bool:
        """Whether its film and its finish count for the panel: it is no edge, and part of the work."""
        return not (self.edge or self.idle)

    @property
    def layer_um(self) -> float:
        """Depth, µm, that 95 of 100 places of the oxidised layer don't reach; 0 where there is none."""
        return layer_to_um(self.oxidation_um, self.oxidation_cv) if self.oxidation_um >= 0.01 else 0.0

    def without_edge(self) -> Zone:
        """This zone, its edge being a zone of its own."""
        return replace(self, edge_film_um=None)

    def as_edge(self, name: str, ratio: float) -> Zone:
        """The edge of this zone: thinner from the start, so that less of it has to stay, by the same ``ratio``."""
        assert self.edge_film_um is not None
        film, reserve = self.edge_film_um, self.reserve_um * ratio
        return replace(self, name=name, film_um=film, reserve_um=reserve, edge=True, share=0.0, edge_film_um=None)

    def finished(self, marks: Sequence[Marks], share: float, has_edge: bool, edge_of: str) -> Zone:
        """This zone with all that lies on it, and its share of the panel: trails and layers go where they belong."""
        trails = [one.depth_um for one in marks if one.role == "trail"]
        layers = [one.depth_um for one in marks if one.role == "layer"]
        return replace(
            self,
            marks=tuple(one for one in marks if one.role not in ("trail", "layer")),
            trail_um=max([self.trail_um, *trails]),
            oxidation_um=max([self.oxidation_um, *layers]),
            share=share,
            has_edge=has_edge,
            edge_of=edge_of,
        )

    def as_json(self) -> dict[str, object]:
        """The zone as the door takes it, with every default filled in."""
        names = (*ZONE_OWN, *(key for key in ZONE_KEYS if key not in ("agreed", "edge_film_um")))
        agreed = {"gloss60": self.gloss60, "gloss20": self.gloss20, "may_stay": list(self.may_stay)}
        return {name: getattr(self, name) for name in names} | {"agreed": agreed, "defects": self._marks_as_json()}

    def _marks_as_json(self) -> list[dict[str, object]]:
        found = []
        for one in self.marks:
            said: dict[str, object] = {"kind": one.kind}
            if one.depth_um:
                said["depth_um"] = one.depth_um
            found.append(said | {"spread": one.spread, "cover": one.cover, "zone": self.name})
        return found


def zone_of(
    given: Raw, catalogue: Catalogue, substrate: str, constants: Constants, name: str, whole: Zone | None
) -> Zone:
    """The zone that ``given`` describes; what it leaves out is that of the ``whole`` panel, or of the substrate."""
    base, values = catalogue.surface(substrate), given.values

    def number(key: str, default: float) -> float:
        return given.number(key, *RANGES[key]) if key in values else default

    film = number("film_um", whole.film_um) if whole else given.number("film_um", *RANGES["film_um"])
    usual = whole or _usual(name, film, base.reserve_um, constants, substrate)
    reserve = number("reserve_um", usual.reserve_um)
    left = base.budget_um if whole is None or "film_um" in values else whole.budget_um
    rz = number("rz_um", usual.rz_um)
    gloss60, gloss20, may_stay = _agreed(given, catalogue, substrate, whole)
    return Zone(
        name=name,
        share=number("share", 0.0),
        edge=given.flag("edge", name == "edge"),
        idle=given.flag("idle", False),
        edge_of="",
        has_edge=False,
        film_um=film,
        film_spread=number("film_spread", usual.film_spread),
        edge_film_um=number("edge_film_um", 0.0) or None,
        reserve_um=reserve,
        budget_um=number("budget_um", min(left, max(film - reserve, constants.gates.refresh_um))),
        cure=number("cure", usual.cure),
        cure_most=number("cure_most", usual.cure_most),
        soiled=given.flag("soiled", usual.soiled),
        taped=given.flag("taped", usual.taped),
        wet=given.flag("wet", usual.wet),
        oils=given.flag("oils", usual.oils),
        rz_um=rz,
        tail_um=number("tail_um", max(usual.tail_um, rz)),
        trail_um=number("trail_um", usual.trail_um),
        oxidation_um=_layer(given, catalogue, usual.oxidation_um),
        oxidation_cv=number("oxidation_cv", usual.oxidation_cv),
        gloss60=gloss60,
        gloss20=gloss20,
        may_stay=may_stay,
    )


def zone_defaults(catalogue: Catalogue, constants: Constants, substrate: str) -> dict[str, object]:
    """What stands for every key that a surface of this ``substrate`` leaves out, at its usual film."""
    film = catalogue.surface(substrate).film_um
    found = zone_of(Raw({"film_um": film}, ""), catalogue, substrate, constants, "main", None).as_json()
    hardness = catalogue.surface(substrate).hardness
    return {"hardness": hardness} | {key: value for key, value in found.items() if key not in ZONE_OWN}


def _usual(name: str, film: float, reserve: float, constants: Constants, substrate: str) -> Zone:
    """A sound zone, washed by nobody yet."""
    spread: float = getattr(constants.film, f"spread_{substrate}", constants.film.spread_clear_coat)
    return Zone(
        name=name,
        share=1.0,
        edge=False,
        idle=False,
        edge_of="",
        has_edge=False,
        film_um=film,
        film_spread=spread,
        edge_film_um=None,
        reserve_um=reserve,
        budget_um=0.0,
        cure=1.0,
        cure_most=1.0,
        soiled=True,
        taped=False,
        wet=False,
        oils=False,
        rz_um=SOUND_RZ_UM,
        tail_um=SOUND_TAIL_UM,
        trail_um=0.0,
        oxidation_um=0.0,
        oxidation_cv=0.25,
        gloss60=0.0,
        gloss20=0.0,
        may_stay=(),
    )


def _layer(given: Raw, catalogue: Catalogue, default: float) -> float:
    """The mean depth of the oxidised layer: any up to the deepest there is."""
    if "oxidation_um" not in given.values:
        return default
    value = given.values["oxidation_um"]
    kind = catalogue.kind("oxidation")
    if isinstance(value, int | float) and not isinstance(value, bool) and value > kind.depths_um[2]:
        _severity(given, "oxidation_um", catalogue, "oxidation", float(value))
    return given.number("oxidation_um", 0.0, kind.depths_um[2])


def _agreed(
    given: Raw, catalogue: Catalogue, substrate: str, whole: Zone | None
) -> tuple[float, float, tuple[str, ...]]:
    """Gloss at 60 and 20° that was agreed, and the kinds that may stay."""
    base = catalogue.surface(substrate)
    usual = (whole.gloss60, whole.gloss20) if whole else (base.gloss60, base.gloss20)
    stay = whole.may_stay if whole else ()
    if "agreed" not in given.values:
        return *usual, stay
    agreed = Raw.of(given.values["agreed"], f"{given.where} agreed", 'Agreed is an object; write {"gloss60": 90}.')
    agreed.only(("gloss60", "gloss20", "may_stay"))
    found = []
    for key, angle, default in (("gloss60", 60, usual[0]), ("gloss20", 20, usual[1])):
        most = smooth_gloss(base.index, angle)
        value = agreed.number(key, 0.0, 100.0) if key in agreed.values else default
        if value > most:
            raise agreed.refused(f"no {base.called} reads more than {most:.1f} at {angle}°; agree on less", key)
        found.append(value)
    kinds = agreed.values.get("may_stay", list(stay))
    if not isinstance(kinds, list | tuple):
        raise agreed.refused("may_stay is no list of kinds", "may_stay")
    for code in kinds:
        if not isinstance(code, str) or code not in catalogue.kinds:
            near = offer(code[:40] if isinstance(code, str) else "", catalogue.kinds)
            raise agreed.refused(f"there is no kind of defect {repr(code)[:44]}; {near}", "may_stay")
    return found[0], found[1], tuple(kinds)


def marks_of(given: Raw, catalogue: Catalogue, constants: Constants, zones: Sequence[str]) -> dict[str, list[Marks]]:
    """The families of marks listed under defects, by the zone they lie in; one that names no zone lies in each."""
    found: dict[str, list[Marks]] = {name: [] for name in zones}
    for one in given.objects("defects", MOST_DEFECTS):
        one.only(("kind", "depth_um", "spread", "cover", "zone"))
        zone = one.text("zone", _EVERYWHERE)
        if zone != _EVERYWHERE and zone not in zones:
            raise one.refused(f"there is no zone {zone[:40]!r}; {offer(zone[:40], zones)}", "zone")
        marks = _family(one, catalogue, constants)
        for name in zones if zone == _EVERYWHERE else (zone,):
            found[name].append(marks)
    return found


def _family(one: Raw, catalogue: Catalogue, constants: Constants) -> Marks:
    code = one.word("kind", catalogue.kinds)
    kind, role = catalogue.kind(code), constants.kinds[code]
    spread = one.number("spread", 1.0, 5.0) if "spread" in one.values else role.spread
    cover = one.number("cover", 0.0, 1.0) if "cover" in one.values else role.cover
    depth = kind.depths_um[1] if kind.graded else 0.0
    if "depth_um" in one.values:
        depth = one.number("depth_um", 0.0, 5000.0)
        if not kind.through and (kind.graded or depth):
            _severity(one, "depth_um", catalogue, code, depth)
    return Marks(code, kind.called, role.role, depth, spread, cover, role.weight, role.by)


def _severity(given: Raw, key: str, catalogue: Catalogue, code: str, depth_um: float) -> None:
    """Refuse a depth that this kind never has, in the catalogue's own sentence."""
    try:
        catalogue.severity(code, depth_um)
    except TradeError as wrong:
        raise given.refused(wrong.sentence, key) from None
