"""Fine marks as a cloud of samples: each has a place, a direction, a share of its pixel, and glints by its own lobe."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Any

import numpy as np

from courses.pictures.arrays import F32, Floats
from courses.pictures.camera import Camera

__all__ = ["Grooves", "width_mm"]

CHUNK = 200_000
"""Samples worked on at once, so that memory stays small."""
FARTHEST = F32(3.6)
"""Slopes beyond so many spreads of the lobe along a mark count as dark: less than two thousandths of its middle."""


def width_mm(depth_um: Any, across: float) -> Any:
    """The width of a V-shaped mark so deep, whose flanks slope by ``across``.

    >>> round(width_mm(1.36, 0.34), 4)
    0.008
    """
    return depth_um * (2e-3 / across)


@dataclass(frozen=True)
class _Lobe:
    """What the samples added at once have in common."""

    along: float
    across: float
    white: float
    dark: float
    filled_um: float
    bundle: float


@dataclass(frozen=True)
class _Part:
    """Samples of one family, which share the shape of their lobe."""

    base: np.ndarray[Any, np.dtype[np.int32]]
    right: Floats
    down: Floats
    tx: Floats
    ty: Floats
    cover: Floats
    along: float
    across: float


class Grooves:
    """All fine marks of a panel; what they look like depends on the lamp only in `glint`.

    ``lost_um`` is the film taken off at each pixel: it narrows a V-shaped mark of width w and slope s by 2 h / s.
    """

    def __init__(self, camera: Camera, lost_um: Floats | None = None) -> None:
        """Begin without any mark, for pictures of one ``camera``."""
        w, h = camera.size
        self.camera, self.lost_um = camera, lost_um
        self.white = np.zeros(h * w, F32)
        self.dark = np.zeros(h * w, F32)
        self.cover = np.zeros(h * w, F32)
        self._parts: list[_Part] = []

    def __len__(self) -> int:
        """How many samples there are."""
        return sum(part.base.size for part in self._parts)

    def add(
        self,
        x: Any,
        y: Any,
        phi: Any,
        step_mm: Any,
        width_mm: Any,
        along: float = 0.011,
        across: float = 0.34,
        white: float = 0.0,
        dark: float = 0.0,
        filled_um: float = 0.0,
        bundle: float = 1.0,
    ) -> None:
        """Add samples of marks: places, directions, the length each stands for and its width.

        ``along`` and ``across`` are the spreads of slope along and across the mark, ``white`` the share of it that
        scatters white, ``dark`` the share that swallows light, ``filled_um`` how high oil stands in it, ``bundle`` how
        many marks too fine to be told apart run side by side there.
        """
        arrays = np.broadcast_arrays(*(np.asarray(value, F32) for value in (x, y, phi, step_mm, width_mm)))
        lobe = _Lobe(along, across, white, dark, filled_um, bundle)
        for start in range(0, arrays[0].size, CHUNK):
            self._add([value.reshape(-1)[start : start + CHUNK] for value in arrays], lobe)

    def _add(self, piece: list[Floats], lobe: _Lobe) -> None:
        x, y, phi, step, width = piece
        w, h = self.camera.size
        px, py = self.camera.project(x, y)
        inside = (px > 0) & (px < w - 1.001) & (py > 0) & (py < h - 1.001) & (width > 0)
        px, py, phi, step, width = (value[inside] for value in (px, py, phi, step, width))
        i, j = px.astype(np.int32), py.astype(np.int32)
        base = j * np.int32(w) + i
        right, down = (px - i).astype(F32), (py - j).astype(F32)
        near = _nearest(base, right, down, w)
        if lobe.across < 1:
            width = self._left(width, near, lobe)
        cover = width * step * F32(lobe.bundle) / self.camera.pixel_area.reshape(-1)[near]
        open_ = cover > 0
        if not open_.all():
            base, right, down, near, phi, cover = (v[open_] for v in (base, right, down, near, phi, cover))
        self.cover += np.bincount(near, cover, w * h).astype(F32)
        for share, picture in ((lobe.white, self.white), (lobe.dark, self.dark)):
            if share:
                _splat(picture, base, right, down, cover * F32(share), w)
        if lobe.along < 4:
            part = _Part(base, right, down, np.cos(phi), np.sin(phi), cover, lobe.along, lobe.across)
            self._parts.append(part)

    def _left(self, width: Floats, near: Any, lobe: _Lobe) -> Any:
        """What is still open of each width: film taken off and oil both close a V-shaped mark."""
        if lobe.filled_um:
            # oil never levels a mark wholly: its skin sags into the widest part
            width = np.maximum(width - width_mm(lobe.filled_um, lobe.across), F32(0.08) * width)
        if self.lost_um is None:
            return width
        return np.maximum(width - width_mm(self.lost_um.reshape(-1)[near], lobe.across), 0)

    def glint(self, dx: Floats, dy: Floats) -> Floats:
        """The mirror-like flank each pixel sees, (h, w): cover times the density of slopes at the wanted slope."""
        w, h = self.camera.size
        out = np.zeros(h * w, F32)
        flat_x, flat_y = dx.reshape(-1), dy.reshape(-1)
        waiting: list[tuple[Any, Floats, Floats, Floats]] = []
        for part in self._parts:
            waiting.append(_lit(part, flat_x, flat_y, w))
            if sum(one[0].size for one in waiting) > CHUNK or part is self._parts[-1]:
                base, right, down, value = (np.concatenate(column) for column in zip(*waiting, strict=True))
                _splat(out, base, right, down, value, w)
                waiting = []
        return out.reshape(h, w)


def _lit(part: _Part, flat_x: Floats, flat_y: Floats, w: int) -> tuple[Any, Floats, Floats, Floats]:
    """The samples of one family that shine for the wanted slopes, and how strongly."""
    near = _nearest(part.base, part.right, part.down, w)
    a, b = flat_x[near], flat_y[near]
    along = (part.tx * a + part.ty * b) * F32(1 / part.along)
    lit = np.flatnonzero(np.abs(along) < FARTHEST)
    along, tx, ty = along[lit], part.tx[lit], part.ty[lit]
    across = (tx * b[lit] - ty * a[lit]) * F32(1 / part.across)
    density = np.exp(F32(-0.5) * (along * along + across * across))
    density *= part.cover[lit] * F32(1 / (2 * math.pi * part.along * part.across))
    return part.base[lit], part.right[lit], part.down[lit], density


def _nearest(base: Any, right: Floats, down: Floats, w: int) -> Any:
    return base + (right > 0.5) + np.int32(w) * (down > 0.5)


def _splat(picture: Floats, base: Any, right: Floats, down: Floats, value: Floats, w: int) -> None:
    """Share each value among the four pixels round its place."""
    lower, upper = value * down, value * (1 - down)
    for row, off in ((upper, 0), (lower, w)):
        to_right = row * right
        for share, step in ((row - to_right, off), (to_right, off + 1)):
            picture += np.bincount(base + np.int32(step), share, picture.size)[: picture.size].astype(F32)
