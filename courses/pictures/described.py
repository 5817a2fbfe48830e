"""A picture in words, for people who can't see it: what somebody who names nothing would note, cell by cell.

Neither a kind nor its cause is named, and what doesn't show in this colour and light is told like the clean panel, so
that the words ask the same question as the picture.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from types import MappingProxyType
from typing import Final

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

FAINTLY: Final = "faintly: {words}"
WHEN_MOVED: Final = "{words}; when the lamp moves, {moved}"


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
    ``moved`` it is said too what happens when the lamp moves. What was taken off the panel is not thought of.
    """
    words = [_words(defect, scene, light, contrast, catalogue, moved) for defect in scene.defects]
    groups: dict[str, list[str]] = {}
    for cell in CELLS:
        there = (said for said, share in zip(words, shares, strict=True) if said and share.get(cell, 0.0) >= ALLOWED)
        groups.setdefault("; ".join(dict.fromkeys(there)) or CLEAN[light], []).append(cell)
    return tuple(Observation(tuple(cells), said) for said, cells in groups.items())


def _words(
    defect: Defect, scene: Scene, light: str, contrast: Contrast, catalogue: Catalogue, moved: bool
) -> str | None:
    """What is noted of one defect, or nothing where it can't be told from the clean panel."""
    shows = contrast.of(defect.kind, scene.colour, light, defect.severity)
    if shows.unseen:
        return None
    kind = catalogue.kind(defect.kind)
    words = kind.seen[light] if shows.askable else FAINTLY.format(words=kind.seen[light])
    return WHEN_MOVED.format(words=words, moved=kind.moved) if moved else words
