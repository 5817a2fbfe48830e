"""The region of one defect, on the panel in millimetres, free of resolution."""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import cached_property
from typing import Any

import numpy as np
from numpy.random import Generator

from courses.pictures.arrays import F32, Floats, soft
from courses.pictures.camera import Stand, stand_for
from courses.pictures.noise import Field, field
from courses.pictures.scene import Defect, Scene

__all__ = ["Plate"]

MARGIN = 0.06
"""How far a region that touches the edge of the picture goes on beyond it, as a fraction of the picture."""


@dataclass(frozen=True)
class Plate:
    """The part of a ``scene`` one ``defect`` lies on, as a ``light`` shows it."""

    scene: Scene
    defect: Defect
    light: str

    @cached_property
    def stand(self) -> Stand:
        """Where the photographer stands."""
        return stand_for(self.light, self.scene.size)

    @property
    def box(self) -> tuple[float, float, float, float]:
        """Left, top, right and lower edge, as fractions of the picture."""
        return self.defect.box

    @property
    def whole(self) -> bool:
        """Whether the region is the whole picture."""
        return self.box == (0.0, 0.0, 1.0, 1.0)

    @property
    def angle(self) -> float:
        """The direction of the defect, radians from +x towards +y on the panel."""
        return -math.radians(self.defect.direction)

    def at(self, u: Any, v: Any) -> tuple[Any, Any]:
        """The place, mm, at fractions of the box."""
        left, top, right, low = self.box
        return self.stand.to_panel(left + (right - left) * np.asarray(u), top + (low - top) * np.asarray(v))

    @property
    def centre(self) -> tuple[float, float]:
        """The place in the middle of the box, mm."""
        x, y = self.at(0.5, 0.5)
        return float(x), float(y)

    @cached_property
    def half(self) -> tuple[float, float]:
        """Half the width and half the height of the box on the panel, mm, measured through its middle."""
        (left, right), _ = self.at([0.0, 1.0], [0.5, 0.5])
        _, (top, low) = self.at([0.5, 0.5], [0.0, 1.0])
        return float(right - left) / 2, float(low - top) / 2

    @cached_property
    def _reach(self) -> tuple[Floats, Floats]:
        """The four corners, mm, with the margin: upper left, upper right, lower left, lower right."""
        left, top, right, low = self.box
        left, top = (-MARGIN if edge <= 0 else edge for edge in (left, top))
        right, low = (1 + MARGIN if edge >= 1 else edge for edge in (right, low))
        return self.stand.to_panel(np.array([left, right, left, right]), np.array([top, top, low, low]))

    @cached_property
    def area_mm2(self) -> float:
        """Mm² of panel that `scatter` covers."""
        x, y = self._reach
        return float((x[1] - x[0] + x[3] - x[2]) / 2 * (y[2] - y[0]))

    def scatter(self, rng: Generator, n: int) -> tuple[Floats, Floats]:
        """``n`` places, mm, spread evenly over the panel inside the box (and a little beyond the picture's edge)."""
        x, y = self._reach
        upper, lower = float(x[1] - x[0]), float(x[3] - x[2])
        u, t = rng.random((2, n))
        if abs(lower - upper) > 1e-6 * upper:
            t = (np.sqrt(upper**2 + t * (lower**2 - upper**2)) - upper) / (lower - upper)
        left = x[0] + (x[2] - x[0]) * t
        return (left + u * (upper + (lower - upper) * t)).astype(F32), (y[0] + (y[2] - y[0]) * t).astype(F32)

    def field(
        self, lo_mm: float, hi_mm: float, stream: int, stretch: tuple[float, float] = (1.0, 1.0), slope: float = 1.3
    ) -> Field:
        """Noise on the panel that belongs to this defect alone; see `courses.pictures.noise.field`."""
        return field([self.scene.seed, 1000 + self.defect.index, stream], lo_mm, hi_mm, stretch, slope)

    @cached_property
    def _ragged(self) -> Field:
        return self.field(12, 220, 0)

    def weight(self, x: Any, y: Any, feather_mm: float = 22.0, rough_mm: float = 6.0) -> Floats:
        """How much of the defect lies at places on the panel, 0 to 1: its box with a soft, ragged edge.

        Half of it is left where the box ends, give or take ``rough_mm``. It is not faded at the picture's own edges.
        """
        if self.whole:
            return np.ones(np.broadcast(x, y).shape, F32)
        u, v = self.stand.to_picture(x, y)
        left, top, right, low = self.box
        wide, high = self.stand.width, self.stand.width * self.stand.aspect
        # ragged alike in every light: laid on the picture, not on the panel, which may run away from the eye
        rough = rough_mm * self._ragged.at(u * wide, v * high) if rough_mm else 0.0
        out = np.ones(np.shape(u), F32)
        edges = [(left > 0, (u - left) * wide), (right < 1, (right - u) * wide)]
        edges += [(top > 0, (v - top) * high), (low < 1, (low - v) * high)]
        for bounded, distance in edges:
            if bounded:
                out *= soft((distance + rough) / feather_mm)
        return out
