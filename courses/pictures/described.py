"""A picture in words, for people who can't see it: what somebody who names nothing would note, cell by cell.

Neither a kind nor its cause is named, and what doesn't show in this colour and light is told like the clean panel, so
that the words ask the same question as the picture.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from types import MappingProxyType
from typing import Final

from courses.pictures.canvas import OIL_UM
from courses.pictures.contrast import Contrast
from courses.pictures.scene import Defect, Scene
from courses.pictures.truth import ALLOWED, CELLS
from courses.trade.surfaces import Catalogue

__all__ = ["CLEAN", "Observation", "described"]

CLEAN: Final[Mapping[str, str]] = MappingProxyType(
    {
        "diffuse": "nothing stands out: even colour and gloss",
        "point": "nothing stands out: an even, sharp lamp image",
        "raking": "nothing stands out: no lines, no relief",
    }
)
"""What is noted where nothing shows, by light."""

ACROSS: Final = 6
"""How many cells lie side by side."""

FAINTLY: Final = "faintly: {words}"
WHEN_MOVED: Final = "{words}; when the lamp moves, {moved}"
FILLED: Final = ("swirl", "hologram", "da_haze")
"""The kinds that oil fills until they are wiped."""
WORN: Final = ("polish", "sand")
"""The verdicts of kinds that go as film is taken off."""


@dataclass(frozen=True, slots=True)
class Observation:
    """What is noted of some ``cells`` (in the order of the grid): ``words``, small letters, no full stop."""

    cells: tuple[str, ...]
    words: str


def described(
    scene: Scene,
    light: str,
    shares: Sequence[Mapping[str, float]],
    contrast: Contrast,
    catalogue: Catalogue,
    moved: bool = False,
) -> tuple[Observation, ...]:
    """What stands in each group of cells of ``scene`` in a ``light``: every cell once, groups by their first cell.

    ``shares`` are those of `cell_shares`, one for each defect; a cell counts from 3 %, as where it may be marked. With
    ``moved`` it is said too what happens when the lamp moves. What oil fills, or was taken off, is told as shallower.
    """

    def words(taken_um: float) -> list[str | None]:
        return [
            _words(defect, scene, light, contrast, catalogue, moved, _left(defect, scene, catalogue, taken_um))
            for defect in scene.defects
        ]

    whole, worn = words(0.0), words(scene.removed_um)
    groups: dict[str, list[str]] = {}
    for cell in CELLS:
        noted = zip(worn if _worked(cell, scene) else whole, shares, strict=True)
        there = (said for said, share in noted if said and share.get(cell, 0.0) >= ALLOWED)
        groups.setdefault("; ".join(dict.fromkeys(there)) or CLEAN[light], []).append(cell)
    return tuple(Observation(tuple(cells), said) for said, cells in groups.items())


def _worked(cell: str, scene: Scene) -> bool:
    """Whether the middle of a cell lies where film was taken off."""
    return (int(cell[1]) - 0.5) / ACROSS >= (scene.removed_right_of or 0.0)


def _left(defect: Defect, scene: Scene, catalogue: Catalogue, taken_um: float) -> float:
    """The share of a defect that still shows after so much was taken off, and under oil where the panel has any."""
    if defect.depth_um <= 0:
        return 1.0
    gone = min(1.0, taken_um / defect.depth_um) if catalogue.kind(defect.kind).verdict in WORN else 0.0
    filled = min(1.0, OIL_UM / defect.depth_um) if scene.oils and defect.kind in FILLED else 0.0
    return (1 - gone) * (1 - filled)


def _words(
    defect: Defect, scene: Scene, light: str, contrast: Contrast, catalogue: Catalogue, moved: bool, left: float
) -> str | None:
    """What is noted of the share of one defect that is ``left``, or nothing where it can't be told from clean panel."""
    shows = contrast.of(defect.kind, scene.colour, light, defect.severity * left)
    if shows.unseen:
        return None
    kind = catalogue.kind(defect.kind)
    words = kind.seen[light] if shows.askable else FAINTLY.format(words=kind.seen[light])
    return WHEN_MOVED.format(words=words, moved=kind.moved) if moved else words
