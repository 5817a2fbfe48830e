"""The truth of a picture: which pixels and which cells of its grid each defect covers, worked out without rendering."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from typing import Final

import numpy as np

from courses.pictures.arrays import Mask, grown
from courses.pictures.camera import Camera, stand_for
from courses.pictures.files import png
from courses.pictures.kinds import kind_of
from courses.pictures.panel import planned
from courses.pictures.scene import Scene

__all__ = ["CELLS", "cell_shares", "mask_files", "masks", "required_and_allowed"]

ROWS, COLUMNS = "ABCD", 6
CELLS: Final = tuple(f"{row}{column}" for row in ROWS for column in range(1, COLUMNS + 1))
"""The cells of a picture, row by row from the upper left."""
GROWN_PX: Final = 8
"""How much wider thin marks are taken on each side, in pixels of a picture 960 wide: a fingertip is broad."""
REQUIRED, ALLOWED, PRESENT = 0.20, 0.03, 0.03
_WIDTH = 240


def masks(scene: Scene, light: str) -> tuple[Mask, ...]:
    """Which pixels of the picture each defect covers, (h, w) each, in the order of the scene."""
    return _masks(scene, light, Camera(stand_for(light, scene.size), scene.size))


def mask_files(scene: Scene, light: str) -> Mapping[str, bytes]:
    """The masks as PNG files, white where a defect lies, called ``NN-kind.png`` after its place in the scene,
    from 00.
    """
    found = zip(scene.defects, masks(scene, light), strict=True)
    return {f"{defect.index:02d}-{defect.kind}.png": png(mask) for defect, mask in found}


def _masks(scene: Scene, light: str, camera: Camera) -> tuple[Mask, ...]:
    return tuple(kind_of(one.kind).mask(planned(scene, one, light), camera) for one in scene.defects)


def cell_shares(scene: Scene, light: str) -> tuple[Mapping[str, float], ...]:
    """The share of each cell that each defect covers, 0 to 1; thin marks are made wider first. Geometry only: cheap."""
    w, h = scene.size
    camera = Camera(stand_for(light, scene.size), (_WIDTH, max(4, round(_WIDTH * h / w))))
    px = round(GROWN_PX * _WIDTH / 960)
    found = _masks(scene, light, camera)
    return tuple(_shares(grown(mask, px) if one.thin else mask) for one, mask in zip(scene.defects, found, strict=True))


def _shares(mask: Mask) -> Mapping[str, float]:
    h, w = mask.shape
    row = np.arange(h) * len(ROWS) // h
    column = np.arange(w) * COLUMNS // w
    cell = row[:, None] * COLUMNS + column[None, :]
    covered = np.bincount(cell[mask], minlength=len(CELLS)) / np.bincount(cell.ravel(), minlength=len(CELLS))
    return dict(zip(CELLS, (round(float(share), 4) for share in covered), strict=True))


def required_and_allowed(
    shares: Iterable[Mapping[str, float]], thin: Sequence[bool]
) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """The cells somebody has to mark, and those they may: from the shares of one or more defects of a zone.

    Required is a cell covered by 20 % or more (by a thin mark: by 3 %), allowed are those, the cells at 3 to 20 %
    and the ring of neighbours round the required ones.

    >>> from types import MappingProxyType
    >>> bare = dict.fromkeys(CELLS, 0.0)
    >>> required, allowed = required_and_allowed([bare | {"A1": 0.5, "D6": 0.04}], [False])
    >>> required, allowed
    (('A1',), ('A1', 'A2', 'B1', 'B2', 'D6'))
    """
    required, free = set(), set()
    for one, narrow in zip(shares, thin, strict=True):
        required |= {cell for cell, share in one.items() if share >= (PRESENT if narrow else REQUIRED)}
        free |= {cell for cell, share in one.items() if share >= ALLOWED}
    allowed = free | {near for cell in required for near in _ring(cell)} | required
    return tuple(cell for cell in CELLS if cell in required), tuple(cell for cell in CELLS if cell in allowed)


def _ring(cell: str) -> Iterable[str]:
    row, column = ROWS.index(cell[0]), int(cell[1:])
    for r in range(max(0, row - 1), min(len(ROWS), row + 2)):
        for c in range(max(1, column - 1), min(COLUMNS, column + 1) + 1):
            yield f"{ROWS[r]}{c}"
