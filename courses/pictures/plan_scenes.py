"""The panel of a plan as scenes: as it stood before, and as the plan left it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from types import MappingProxyType
from typing import Any, Final

from courses.trade.surfaces import Catalogue

__all__ = ["LAMPS", "SIZE", "after", "before"]

SIZE: Final = (960, 640)
LAMPS: Final[Mapping[str, tuple[tuple[float, float], ...]]] = MappingProxyType(
    {
        "point": ((0.3, 0.42), (0.5, 0.42), (0.7, 0.42)),
        "raking": ((0.3, 0.42), (0.5, 0.42), (0.7, 0.42)),
        "diffuse": ((0.5, 0.42),),
    }
)
"""The places of the lamp in each light, in fractions of the picture."""
STEP_UM: Final = 0.5
"""What was taken off is rounded to this, so that plans that hardly differ share a picture."""
LEAST_LEFT: Final = 0.02
"""Share of a population below which nothing of it is shown."""
MIDDLE: Final = (0.28, 0.22, 0.72, 0.78)
EDGE: Final = (0.84, 0.0, 1.0, 1.0)
_WORN: Final = ("polish", "sand", "leave")
"""Kinds with these verdicts are worn as film is taken off; others stay, or go whole."""


def before(surface: Mapping[str, Any], seed: int, trade: Catalogue, size: tuple[int, int] = SIZE) -> dict[str, Any]:
    """The scene of a ``surface`` (the shape of the door ``simulate``, defaults filled in) before any step."""
    return _scene(surface, seed, size, list(_found(surface, trade)))


def after(
    surface: Mapping[str, Any],
    outcome: Mapping[str, Any],
    seed: int,
    trade: Catalogue,
    size: tuple[int, int] = SIZE,
) -> dict[str, Any]:
    """The same panel with the ``outcome`` of a plan, as the door ``simulate`` gives it: what was taken off, what stays.

    Deposits that chemistry took are gone, marks the plan made are added, an edge without film shows what lies under it.
    """
    left = {one["kind"]: one for one in outcome["residual"]}
    found = list(_found(surface, trade))
    kept = [one for one in found if _stays(one["kind"], left, trade)]
    known = {one["kind"] for one in found}
    made = [
        _mark(one, trade) for kind, one in left.items() if kind not in known and _shows(one) and kind in trade.kinds
    ]
    scene = _scene(surface, seed, size, [*kept, *made, *_bare(outcome)][:12])
    taken = _gained(found, left, trade, float(outcome["removed_um"]))
    scene["removed_um"] = round(taken / STEP_UM) * STEP_UM
    return {**scene, "trail_um": float(outcome["trail_um"]), "tail_um": float(outcome["tail_um"])}


def _scene(
    surface: Mapping[str, Any], seed: int, size: tuple[int, int], defects: list[dict[str, Any]]
) -> dict[str, Any]:
    return {
        "substrate": surface["substrate"],
        "colour": surface.get("colour", "white"),
        "size": list(size),
        "seed": seed,
        "curve": "flat",
        "defects": defects,
        "trail_um": float(surface.get("trail_um", 0)),
        "tail_um": float(surface.get("tail_um", 0)),
    }


def _found(surface: Mapping[str, Any], trade: Catalogue) -> Iterator[dict[str, Any]]:
    """Yield what lies on a surface as defects of a picture, the chalk first."""
    if surface.get("oxidation_um"):
        yield _mark({"kind": "oxidation", "depth_um": surface["oxidation_um"]}, trade)
    for one in surface.get("defects", ()):
        yield _mark(one, trade)


def _mark(one: Mapping[str, Any], trade: Catalogue) -> dict[str, Any]:
    """A mark of the model as a picture takes it: its depth within what the kind can be, one crack in the middle."""
    kind = trade.kind(one["kind"])
    region = {"region": {"box": list(MIDDLE)}} if kind.through else {}
    if not kind.graded:
        return {"kind": kind.code, **region}
    low, _middle, high = kind.depths_um
    return {"kind": kind.code, "depth_um": min(high, max(low, float(one.get("depth_um", low)))), **region}


def _shows(one: Mapping[str, Any]) -> bool:
    return float(one.get("left", 1)) > LEAST_LEFT


def _stays(kind: str, left: Mapping[str, Mapping[str, Any]], trade: Catalogue) -> bool:
    """Whether a mark is drawn: what wears is drawn always, and worn by the picture itself."""
    return trade.kind(kind).verdict in _WORN or (kind in left and _shows(left[kind]))


def _gained(
    found: Sequence[Mapping[str, Any]], left: Mapping[str, Mapping[str, Any]], trade: Catalogue, removed_um: float
) -> float:
    """How deep the marks were levelled: all that was taken off counts for chalk, less of it for marks in the film."""
    marks = [one for one in found if trade.kind(one["kind"]).stands == "below" and "depth_um" in one]
    standing = [one for one in marks if one["kind"] in left and _shows(left[one["kind"]])]
    if not standing or any(one["kind"] == "oxidation" for one in found):
        return removed_um
    gained = max(float(one["depth_um"]) - float(left[one["kind"]]["depth_um"]) for one in standing)
    return min(removed_um, max(0.0, gained))


def _bare(outcome: Mapping[str, Any]) -> Iterator[dict[str, Any]]:
    """Yield the edge, or the middle, where no film is left."""
    for zone in outcome.get("zones", ()):
        if zone["film_um"] < STEP_UM:
            yield {"kind": "burn_through", "region": {"box": list(EDGE if zone["name"] == "edge" else MIDDLE)}}
