"""The pictures of one draw: which panel, under which light, and what has to be found in it.

Nothing is rendered here. Which cells a defect lies in follows from the geometry of its scene, whether it can be seen
from a table of contrasts that was measured beforehand.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import lru_cache
from itertools import chain

from assessments.scenarios.fields import Field
from assessments.scenarios.tasks import Task
from courses.pictures import CELLS, Scene, cell_shares, required_and_allowed
from courses.pictures.contrast import Contrast
from courses.pictures.described import Observation, described
from courses.trade.constants import Constants
from courses.trade.surfaces import Catalogue

Lamp = tuple[float, float]
POINT_LAMP: Lamp = (0.5, 0.42)


@dataclass(frozen=True, slots=True)
class Shop:
    """What is known of every panel: the trade's table of defects and surfaces, the contrasts measured, the figures
    that a plan is worked with."""

    catalogue: Catalogue
    contrast: Contrast
    constants: Constants


@dataclass(frozen=True, slots=True)
class Zone:
    """A part of a picture that rules call by name: where these defects lie, and the verdict that is right there.

    A draw is thrown away unless it has to be marked in at least ``least`` and at most ``most`` cells.
    """

    name: str
    defects: tuple[int, ...]
    verdict: str = ""
    least: int = 1
    most: int = len(CELLS)


@dataclass(frozen=True, slots=True)
class Shown:
    """One picture: a scene as the door ``picture`` takes it, its light, and the places its lamp can stand at.

    ``seen`` are the defects, by place in the scene, that have to stand out; ``sought`` those that have to be found:
    they stand out, but not so that nobody could miss them. ``unseen`` are those that mustn't show.
    """

    name: str
    scene: Mapping[str, object]
    light: str
    lamps: tuple[Lamp, ...] = (POINT_LAMP,)
    seen: tuple[int, ...] = ()
    sought: tuple[int, ...] = ()
    unseen: tuple[int, ...] = ()
    zones: tuple[Zone, ...] = ()


@dataclass(frozen=True, slots=True)
class ZoneCells:
    """The cells of a zone: those that have to be marked, and those that may be, its neighbours among them."""

    name: str
    verdict: str
    required: tuple[str, ...]
    allowed: tuple[str, ...]


def zone_fields(task: Task) -> tuple[Field, ...]:
    """Return the fields of the key that a task of zones brings along: the cells asked for, and those that are free."""
    cell = Field("cells", "choice", options=task.choices)
    return (
        Field("required", "list", "Cells to mark", items=cell, most=len(CELLS)),
        Field("required_n", "whole", "How many cells to mark"),
        Field("allowed", "list", "Cells that may be marked", items=cell, most=len(CELLS)),
    )


def zone_key(task: Task, zones: tuple[ZoneCells, ...]) -> dict[str, object]:
    """Return what the key holds of a task of zones.

    Where verdicts are asked, the cells to mark are those that have to be referred; where none has to, all of them.
    """
    referred = tuple(zone for zone in zones if zone.verdict == "refer") if task.verdicts else ()
    asked = referred or zones
    required = _in_order({cell for zone in asked for cell in zone.required})
    groups = [{"cells": list(zone.required), "verdict": zone.verdict} for zone in zones]
    return {
        task.id: groups if task.verdicts else required,
        "required": required,
        "required_n": len(required),
        "allowed": _in_order({cell for zone in asked for cell in zone.allowed}),
    }


def zones_in(shown: Shown, shop: Shop) -> tuple[ZoneCells, ...]:
    """Return the zones of a picture with their cells, from the geometry of its defects alone."""
    scene = Scene.of(shown.scene, shop.catalogue)
    return _zones_in(scene, shown.light, shown.zones)


def unfit(shown: Shown, shop: Shop) -> str | None:
    """Return why a picture can't be asked about, or None.

    A defect to be seen doesn't stand out, one to be found can't be missed, one not to be seen shows, a zone lies in too
    few cells or too many.
    """
    scene = Scene.of(shown.scene, shop.catalogue)
    return next(chain(_against(scene, shown, shop.contrast), _against_zones(scene, shown)), None)


def observed(shown: Shown, shop: Shop) -> tuple[Observation, ...]:
    """Return what a neutral observer notes of a picture, cell by cell: the same scene for who can't see it."""
    scene = Scene.of(shown.scene, shop.catalogue)
    shares = cell_shares(scene, shown.light)
    return described(scene, shown.light, shares, shop.contrast, shop.catalogue, moved=len(shown.lamps) > 1)


def _against(scene: Scene, shown: Shown, contrast: Contrast) -> Iterator[str]:
    for place in (*shown.seen, *shown.sought, *shown.unseen):
        defect = scene.defects[place]
        entry = contrast.of(defect.kind, scene.colour, shown.light, defect.severity)
        if place not in shown.unseen and not entry.askable:
            yield f"{defect.kind} on {scene.colour} doesn't stand out in {shown.light} light"
        if place in shown.sought and entry.easy:
            yield f"{defect.kind} on {scene.colour} can't be missed in {shown.light} light"
        if place in shown.unseen and not entry.unseen:
            yield f"{defect.kind} on {scene.colour} shows in {shown.light} light"


def _against_zones(scene: Scene, shown: Shown) -> Iterator[str]:
    for zone, cells in zip(shown.zones, _zones_in(scene, shown.light, shown.zones), strict=True):
        if not zone.least <= len(cells.required) <= zone.most:
            yield f"zone '{zone.name}' lies in {len(cells.required)} cells, not in {zone.least} to {zone.most}"


@lru_cache(maxsize=512)
def _zones_in(scene: Scene, light: str, zones: tuple[Zone, ...]) -> tuple[ZoneCells, ...]:
    shares = cell_shares(scene, light)
    return tuple(_cells_of(zone, scene, shares) for zone in zones)


def _cells_of(zone: Zone, scene: Scene, shares: tuple[Mapping[str, float], ...]) -> ZoneCells:
    thin = [scene.defects[place].thin for place in zone.defects]
    required, allowed = required_and_allowed([shares[place] for place in zone.defects], thin)
    return ZoneCells(zone.name, zone.verdict, required, allowed)


def _in_order(cells: set[str]) -> list[str]:
    return [cell for cell in CELLS if cell in cells]
