"""Many gently bent strokes at once: the hair lines of a wash, the lines of sanding paper."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

import numpy as np

from courses.pictures.arrays import F32, Floats
from courses.pictures.canvas import Canvas

__all__ = ["Strokes", "stepped"]

GROUP = 4000
"""Strokes worked on at once, so that memory stays small."""
STEP_PX = 0.55
"""Distance of the samples along a stroke, in pixels."""


def stepped(length: Floats, step: float, least: int = 3) -> tuple[Any, Floats]:
    """For marks of these lengths cut into steps: which mark each sample belongs to, and where along it, 0 to 1.

    >>> owner, along = stepped(np.array([2.0, 4.0]), 1.0, 2)
    >>> owner.tolist(), along.tolist()
    ([0, 0, 1, 1, 1, 1], [0.25, 0.75, 0.125, 0.375, 0.625, 0.875])
    """
    count = np.maximum(least, (np.asarray(length) / step).astype(np.int32))
    owner = np.repeat(np.arange(count.size, dtype=np.int32), count)
    start = np.cumsum(count, dtype=np.int32) - count
    along = (np.arange(owner.size, dtype=np.int32) - start[owner] + F32(0.5)) / count[owner].astype(F32)
    return owner, along.astype(F32)


@dataclass(frozen=True)
class Strokes:
    """Strokes by middle (mm), direction (radians), length, width (mm) and bend (1/mm)."""

    x: Floats
    y: Floats
    phi: Floats
    length: Floats
    width: Floats
    bend: Floats

    def joined(self, other: Strokes) -> Strokes:
        """These strokes, and then the ``other`` ones."""
        names = ("x", "y", "phi", "length", "width", "bend")
        return Strokes(*(np.concatenate([getattr(self, name), getattr(other, name)]) for name in names))

    def lay(
        self,
        canvas: Canvas,
        along: float,
        across: float,
        white: float = 0.0,
        breakup: float = 0.55,
        keep: Callable[[Any, Any], Floats] | None = None,
        filled_um: float = 0.0,
        bundle: float = 1.0,
    ) -> None:
        """Lay them as grooves: fading at both ends, uneven by ``breakup``, thinned by ``keep`` at each place."""
        for first in range(0, self.x.size, GROUP):
            x, y, phi, width = self._sampled(canvas, slice(first, first + GROUP), breakup)
            if keep is not None:
                width = width * keep(x, y)
            step = STEP_PX * canvas.camera.pixel_mm
            canvas.grooves.add(x, y, phi, step, width, along, across, white=white, filled_um=filled_um, bundle=bundle)

    def _sampled(self, canvas: Canvas, piece: slice, breakup: float) -> tuple[Floats, Floats, Floats, Floats]:
        """Place, direction and width of each sample of some of the strokes."""
        rng = canvas.rng
        cx, cy, phi0, length, width, bend = (
            np.asarray(value[piece], F32) for value in (self.x, self.y, self.phi, self.length, self.width, self.bend)
        )
        bend = np.where(np.abs(bend) < 1e-4, F32(1e-4), bend)
        k, t = stepped(length, STEP_PX * canvas.camera.pixel_mm)
        s = (t - F32(0.5)) * length[k]
        phi = phi0[k] + bend[k] * s
        x = cx[k] + (np.sin(phi) - np.sin(phi0)[k]) / bend[k]
        y = cy[k] - (np.cos(phi) - np.cos(phi0)[k]) / bend[k]
        # pressure swells and fades along the stroke, and the line trembles a little
        rate, turn, depth, shake = (rng.random(cx.size, dtype=F32) for _ in range(4))
        swell = np.sin(((F32(0.03) + F32(0.17) * rate)[k] * s + turn[k]) * F32(6.2832))
        amount = 1 - F32(breakup) * depth[k] * (F32(0.5) + F32(0.5) * swell)
        amount *= np.minimum(np.minimum(t, 1 - t) * F32(6), 1)
        tremble = F32(0.010) * rng.standard_normal(k.size, dtype=F32)
        tremble += F32(0.02) * np.sin(F32(0.21) * s + F32(6.2832) * shake[k])
        return x, y, phi + tremble, width[k] * amount
