"""A region's own way along and across: millimetres from its middle, turned by the direction of the defect."""

from __future__ import annotations

from dataclasses import dataclass
from math import cos, hypot, sin
from typing import Any

from courses.pictures.arrays import F32
from courses.pictures.plate import Plate

__all__ = ["Turned", "turned"]


@dataclass(frozen=True)
class Turned:
    """Axes about the middle (``x``, ``y``, mm) of a region: ``u`` along its direction, ``v`` square to it, down where
    ``angle`` is 0."""

    x: float
    y: float
    angle: float
    half_u: float
    half_v: float

    def of(self, x: Any, y: Any) -> tuple[Any, Any]:
        """Return ``u`` and ``v``, mm, of places on the panel.

        >>> [round(float(value)) for value in Turned(10.0, 20.0, 0.0, 5.0, 5.0).of(13.0, 24.0)]
        [3, 4]
        """
        c, s = F32(cos(self.angle)), F32(sin(self.angle))
        dx, dy = x - F32(self.x), y - F32(self.y)
        return dx * c + dy * s, dy * c - dx * s

    def back(self, u: Any, v: Any) -> tuple[Any, Any]:
        """Return the places on the panel, mm, of ``u`` and ``v``.

        >>> [round(float(value)) for value in Turned(10.0, 20.0, 0.0, 5.0, 5.0).back(3.0, 4.0)]
        [13, 24]
        """
        c, s = cos(self.angle), sin(self.angle)
        return self.x + u * c - v * s, self.y + u * s + v * c


def turned(plate: Plate) -> Turned:
    """Return the axes of a region; ``half_u`` and ``half_v`` are how far its box reaches along them, mm."""
    (x, y), (hx, hy), angle = plate.centre, plate.half, plate.angle
    c, s = abs(cos(angle)), abs(sin(angle))
    along = min(hx / c if c > 1e-6 else hypot(hx, hy), hy / s if s > 1e-6 else hypot(hx, hy))
    across = min(hy / c if c > 1e-6 else hypot(hx, hy), hx / s if s > 1e-6 else hypot(hx, hy))
    return Turned(x, y, angle, along, across)
