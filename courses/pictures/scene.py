"""What a picture is of: a panel, its defects, what was taken off it.

Read from plain values, refused in one sentence.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from types import MappingProxyType
from typing import Any, Final

from courses.trade.errors import ImpossibleChoice, OutOfRange, offer
from courses.trade.surfaces import Catalogue

__all__ = ["LIGHTS", "Box", "Defect", "Scene", "SceneRefused"]

LIGHTS: Final = ("diffuse", "point", "raking")
CURVES: Final = ("flat", "gentle")
MOST_DEFECTS: Final = 12
SIDES: Final = (64, 1920)
Box = tuple[float, float, float, float]
WHOLE: Final[Box] = (0.0, 0.0, 1.0, 1.0)
_KEYS: Final = (
    "substrate", "colour", "size", "seed", "curve", "defects",
    "removed_um", "trail_um", "tail_um", "removed_right_of", "oils",
)  # fmt: skip
_DEFECT_KEYS: Final = ("kind", "severity", "depth_um", "region", "direction")


class SceneRefused(ValueError):
    """A scene that can't be rendered: one sentence that says what, where and what would be right."""


@dataclass(frozen=True)
class Defect:
    """One defect: its kind, how strong (``severity`` 0 to 1) and how deep it is, where it lies and which way it runs.

    ``box`` is left, top, right and lower edge in fractions of the picture, ``direction`` degrees counter-clockwise
    from the right. ``thin`` marks fill little of a cell; ``index`` is the place in the scene, on which the defect's
    own chance rests.
    """

    kind: str
    severity: float
    depth_um: float
    box: Box
    direction: float
    thin: bool
    index: int


@dataclass(frozen=True)
class Scene:
    """A panel to be pictured, everything resolved; equal scenes give equal pictures.

    ``rgb`` is sRGB 0 to 255; ``removed_um`` was taken off, only to the right of the fraction ``removed_right_of``
    where that is given; ``trail_um`` and ``tail_um`` are the depths of the machine trail and the deepest stray mark
    that were left; ``oils`` fill shallow marks.
    """

    substrate: str
    colour: str
    rgb: tuple[int, int, int]
    size: tuple[int, int]
    seed: int
    curve: str
    defects: tuple[Defect, ...]
    removed_um: float
    trail_um: float
    tail_um: float
    removed_right_of: float | None
    oils: bool
    index: float
    film_um: float
    raw: Mapping[str, Any] = field(compare=False, repr=False)

    @property
    def gel(self) -> bool:
        """Whether it is gel coat, which carries its colour through; else a clear or thin coat."""
        return self.substrate == "gel_coat"

    @classmethod
    def of(cls, raw: Mapping[str, object], trade: Catalogue) -> Scene:
        """The scene written in ``raw`` (the shape of the door ``picture``), or `SceneRefused`."""
        return _Reader(trade).scene(raw)

    def as_json(self) -> dict[str, Any]:
        """The values the scene was read from, with every default filled in."""
        return {**self.raw, "defects": [{**one} for one in self.raw["defects"]]}


class _Reader:
    """Reads one scene; each step refuses what it can't take."""

    def __init__(self, trade: Catalogue) -> None:
        self.trade = trade

    def scene(self, raw: object) -> Scene:
        given = _mapping(raw, "a picture")
        _only(given, _KEYS, "a picture")
        substrate = _one_of(given.get("substrate", "clear_coat"), self.trade.surfaces, "substrate")
        colour, rgb = self._colour(given.get("colour", "black"))
        size = self._size(given.get("size", [960, 640]))
        seed = _whole(given.get("seed", 0), 0, 2**63 - 1, "seed")
        curve = _one_of(given.get("curve", "flat"), CURVES, "curve")
        listed = given.get("defects", [])
        if not isinstance(listed, Sequence) or isinstance(listed, str):
            raise SceneRefused("defects: this is no list of defects.")
        if len(listed) > MOST_DEFECTS:
            raise SceneRefused(f"defects: there are {len(listed)}; a picture takes at most {MOST_DEFECTS}.")
        surface = self.trade.surfaces[substrate]
        defects = tuple(self._defect(one, index, surface.film_um) for index, one in enumerate(listed))
        depths = {key: _number(given.get(key, 0), 0, 1000, key) for key in ("removed_um", "trail_um", "tail_um")}
        right_of = given.get("removed_right_of")
        right_of = None if right_of is None else _number(right_of, 0, 1, "removed_right_of")
        oils = given.get("oils", False)
        if not isinstance(oils, bool):
            raise SceneRefused(f"oils: {oils!r} is neither true nor false.")
        kept: dict[str, Any] = {
            "substrate": substrate, "colour": colour, "size": list(size), "seed": seed, "curve": curve,
            "defects": [_written(defect, one) for defect, one in zip(defects, listed, strict=True)], **depths,
        }  # fmt: skip
        if right_of is not None:
            kept["removed_right_of"] = right_of
        if oils:
            kept["oils"] = True
        return Scene(
            substrate=substrate, colour=colour, rgb=rgb, size=size, seed=seed, curve=curve, defects=defects,
            removed_right_of=right_of, oils=oils, index=surface.index, film_um=surface.film_um,
            raw=MappingProxyType(kept), **depths,
        )  # fmt: skip

    def _colour(self, given: object) -> tuple[str, tuple[int, int, int]]:
        if not isinstance(given, str):
            raise SceneRefused(f"colour: {str(given)[:40]} is no colour; write a name such as navy, or #rrggbb.")
        try:
            return given, self.trade.rgb(given)
        except ImpossibleChoice as wrong:
            raise SceneRefused(f"colour: {wrong.sentence}") from wrong

    @staticmethod
    def _size(given: object) -> tuple[int, int]:
        if not isinstance(given, Sequence) or isinstance(given, str) or len(given) != 2:
            raise SceneRefused("size: write width and height in pixels, such as [960, 640].")
        return _whole(given[0], *SIDES, "size"), _whole(given[1], *SIDES, "size")

    def _defect(self, raw: object, index: int, film_um: float) -> Defect:
        place = f"defects[{index}]"
        given = _mapping(raw, place)
        _only(given, _DEFECT_KEYS, place)
        if "kind" not in given:
            raise SceneRefused(f"{place}: kind is missing.")
        kind = _one_of(given["kind"], self.trade.kinds, f"{place}.kind")
        direction = _number(given.get("direction", 0), -360, 360, f"{place}.direction")
        severity, depth = self._strength(given, kind, place, film_um)
        box = _box(given.get("region", {"box": list(WHOLE)}), f"{place}.region")
        return Defect(kind, severity, depth, box, direction, self.trade.kinds[kind].thin, index)

    def _strength(self, given: Mapping[str, Any], kind: str, place: str, film_um: float) -> tuple[float, float]:
        if "severity" in given and "depth_um" in given:
            raise SceneRefused(f"{place}: severity and depth_um say the same; keep one.")
        if "depth_um" not in given:
            severity = _number(given.get("severity", 0.6), 0, 1, f"{place}.severity")
            return severity, self.trade.kind(kind).depth_um(severity, film_um)
        depth = _number(given["depth_um"], 0, 1e4, f"{place}.depth_um")
        try:
            return self.trade.severity(kind, depth), depth
        except OutOfRange as wrong:
            raise SceneRefused(f"{place}.depth_um: {wrong.sentence}") from wrong


def _mapping(raw: object, place: str) -> Mapping[str, Any]:
    if not isinstance(raw, Mapping):
        raise SceneRefused(f"{place}: this is no object of keys and values.")
    return raw


def _only(given: Mapping[str, Any], known: Sequence[str], place: str) -> None:
    for key in given:
        if key not in known:
            raise SceneRefused(f"{place}: {str(key)[:40]!r} is no key of it; {offer(str(key)[:40], known)}")


def _one_of(given: object, known: Any, place: str) -> str:
    if not isinstance(given, str):
        raise SceneRefused(f"{place}: {str(given)[:40]} is no word; {offer('', known)}")
    if given not in known:
        raise SceneRefused(f"{place}: {given[:40]!r} is not known; {offer(given[:40], known)}")
    return given


def _number(given: object, low: float, high: float, place: str) -> float:
    if isinstance(given, bool) or not isinstance(given, int | float):
        raise SceneRefused(f"{place}: {str(given)[:40]!r} is no number; give one from {low:g} to {high:g}.")
    if isinstance(given, float) and not math.isfinite(given):
        raise SceneRefused(f"{place}: {given} is no number; give one from {low:g} to {high:g}.")
    if not low <= given <= high:
        shown = f"{given:g}" if abs(given) < 1e15 else "that"
        raise SceneRefused(f"{place}: {shown} lies outside {low:g} to {high:g}; give a value within.")
    return float(given)


def _whole(given: object, low: int, high: int, place: str) -> int:
    if isinstance(given, bool) or not isinstance(given, int):
        raise SceneRefused(f"{place}: {str(given)[:40]!r} is no whole number; give one from {low} to {high}.")
    if not low <= given <= high:
        shown = str(given) if abs(given) < 10**20 else "that"
        raise SceneRefused(f"{place}: {shown} lies outside {low} to {high}; give a value within.")
    return given


def _box(raw: object, place: str) -> Box:
    region = _mapping(raw, place)
    _only(region, ("box",), place)
    given = region.get("box")
    if not isinstance(given, Sequence) or isinstance(given, str) or len(given) != 4:
        raise SceneRefused(f"{place}.box: write left, top, right and lower edge, such as [0.2, 0.2, 0.6, 0.7].")
    left, top, right, low = (_number(edge, 0, 1, f"{place}.box") for edge in given)
    if not (left < right and top < low):
        raise SceneRefused(f"{place}.box: it is empty; left has to be less than right, top less than low.")
    return left, top, right, low


def _written(defect: Defect, raw: Mapping[str, Any]) -> Mapping[str, Any]:
    strength = ("depth_um", defect.depth_um) if "depth_um" in raw else ("severity", defect.severity)
    written = {"kind": defect.kind, strength[0]: strength[1], "region": {"box": list(defect.box)}}
    return MappingProxyType({**written, "direction": defect.direction})
