"""Where the photographer stands, and which place of the panel each pixel sees.

Millimetres on the panel: x to the right, y down, z towards the viewer. The middle of the picture sees the middle of
the panel, (300, 200).
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import cached_property
from typing import Any

import numpy as np

from courses.pictures.arrays import F32, Floats, Mask

__all__ = ["PANEL", "STANDS", "Camera", "Stand", "Window", "stand_for"]

PANEL = (600.0, 400.0)
"""The part of the panel a picture is about, mm: `Stand` looks at its middle."""


@dataclass(frozen=True)
class Stand:
    """A place to stand: ``tilt`` degrees from square on, ``distance`` mm, ``width`` mm of panel across the middle.

    ``aspect`` is the height of the picture over its width. Free of resolution: places in the picture are fractions.

    >>> stand = Stand(24.0, 900.0, 560.0, 2 / 3)
    >>> x, y = stand.to_panel(0.5, 0.5)
    >>> round(float(x)), round(float(y))
    (300, 200)
    """

    tilt: float
    distance: float
    width: float
    aspect: float

    @property
    def _turn(self) -> tuple[float, float]:
        return math.cos(math.radians(self.tilt)), math.sin(math.radians(self.tilt))

    @property
    def eye(self) -> tuple[float, float, float]:
        """The place of the lens, mm."""
        cos, sin = self._turn
        return PANEL[0] / 2, PANEL[1] / 2 + self.distance * sin, self.distance * cos

    def to_panel(self, u: Any, v: Any) -> tuple[Any, Any]:
        """The place on the panel, mm, seen at the fractions ``u`` from the left and ``v`` from the top."""
        cos, sin = self._turn
        k = self.width / self.distance
        across, down = (u - 0.5) * k, (v - 0.5) * (k * self.aspect)
        reach = self.eye[2] / (cos + down * sin)
        return self.eye[0] + reach * across, self.eye[1] + reach * (down * cos - sin)

    def to_picture(self, x: Any, y: Any) -> tuple[Any, Any]:
        """The fractions of the picture at which a place on the panel is seen; the way back from `to_panel`."""
        cos, sin = self._turn
        k = self.width / self.distance
        away = self.eye[2] * cos - (y - self.eye[1]) * sin
        down = ((y - self.eye[1]) * cos + self.eye[2] * sin) / away
        return (x - self.eye[0]) / (away * k) + 0.5, down / (k * self.aspect) + 0.5

    def homography(self, width: int) -> tuple[float, ...]:
        """The eight numbers of the plane-to-plane map from pixels (corner based) to mm,
        for a picture so many px wide.
        """
        cos, sin = self._turn
        k = self.width / self.distance
        p = k / width
        q = -0.5 * k * self.aspect
        # w = cos + down sin, down = p j + q, across = p i - k / 2; all divided by w at (0, 0)
        w0 = cos + q * sin
        cx, cy, cz = self.eye
        return (
            cz * p / w0,
            cx * p * sin / w0,
            (cx * w0 - cz * k / 2) / w0,
            0.0,
            (cy * sin + cz * cos) * p / w0,
            (cy * w0 + cz * (q * cos - sin)) / w0,
            0.0,
            p * sin / w0,
        )


STANDS = {"point": (24.0, 900.0, 560.0), "diffuse": (38.0, 1000.0, 600.0), "raking": (66.0, 1100.0, 520.0)}
"""Tilt (degrees), distance and width (mm) for each light, set by eye:
lamp overhead, sky mirrored, low along the panel.
"""


def stand_for(light: str, size: tuple[int, int]) -> Stand:
    """The stand from which a ``light`` is looked at, for a picture of ``size`` pixels.

    >>> stand_for("point", (960, 640)).tilt
    24.0
    """
    tilt, distance, width = STANDS[light]
    return Stand(tilt, distance, width, size[1] / size[0])


@dataclass(frozen=True)
class Window:
    """A piece of the picture round a place: ``at`` indexes any picture, ``dx`` and ``dy`` are mm from the place."""

    at: tuple[slice, slice]
    dx: Floats
    dy: Floats


class Camera:
    """A stand with pixels: what each of them sees.

    >>> camera = Camera(stand_for("point", (96, 64)), (96, 64))
    >>> camera.x.shape, round(camera.pixel_mm, 1)
    ((64, 96), 6.1)
    """

    def __init__(self, stand: Stand, size: tuple[int, int]) -> None:
        """Take a ``stand`` and a ``size`` in pixels, width first."""
        self.stand, self.size = stand, size

    @cached_property
    def _places(self) -> tuple[Floats, Floats]:
        w, h = self.size
        u, v = (np.arange(w) + 0.5) / w, (np.arange(h) + 0.5) / h
        x, y = self.stand.to_panel(u[None, :], v[:, None])
        return x.astype(F32), np.broadcast_to(y, (h, w)).astype(F32)

    @property
    def x(self) -> Floats:
        """Mm to the right of each pixel's place, (h, w)."""
        return self._places[0]

    @property
    def y(self) -> Floats:
        """Mm down of each pixel's place, (h, w)."""
        return self._places[1]

    def view(self, rows: slice) -> tuple[Any, Any, Any, Any]:
        """The unit vector from the panel to the lens and the distance in mm, for some rows of the picture."""
        cx, cy, cz = (F32(value) for value in self.stand.eye)
        vx, vy = cx - self.x[rows], cy - self.y[rows]
        distance = np.sqrt(vx * vx + vy * vy + cz * cz)
        return vx / distance, vy / distance, cz / distance, distance

    @cached_property
    def pixel_area(self) -> Floats:
        """Mm² of panel under each pixel, (h, w)."""
        w, h = self.size
        a, _b, _c, _, e, f, _, s = self.stand.homography(w)
        lean = (1 + s * (np.arange(h) + 0.5))[:, None]
        # the map is a shear and stretch in x and a projective map in y: its determinant falls with the cube of the lean
        return np.broadcast_to(abs(a * (e - f * s)) / lean**3, (h, w)).astype(F32)

    @cached_property
    def pixel_mm(self) -> float:
        """Mm of panel under a typical pixel."""
        return float(np.sqrt(np.median(self.pixel_area[:, 0])))

    def project(self, x: Any, y: Any) -> tuple[Any, Any]:
        """The pixel coordinates of places on the panel: 0.0 is the middle of the first pixel."""
        u, v = self.stand.to_picture(x, y)
        w, h = self.size
        return u * w - 0.5, v * h - 0.5

    def window(self, x: float, y: float, radius_mm: float) -> Window | None:
        """The piece of the picture within ``radius_mm`` of a place, or None where all of it lies outside."""
        w, h = self.size
        corners = [(x + i * radius_mm, y + j * radius_mm) for i in (-1, 1) for j in (-1, 1)]
        px, py = zip(*(self.project(*corner) for corner in corners), strict=True)
        rows = slice(max(0, math.floor(min(py))), min(h, math.ceil(max(py)) + 1))
        columns = slice(max(0, math.floor(min(px))), min(w, math.ceil(max(px)) + 1))
        if rows.start >= rows.stop or columns.start >= columns.stop:
            return None
        at = (rows, columns)
        return Window(at, self.x[at] - F32(x), self.y[at] - F32(y))

    def drawn(self, x: Any, y: Any) -> Mask:
        """The pixels hit by densely sampled places."""
        w, h = self.size
        px, py = self.project(x, y)
        i, j = np.rint(px).astype(int), np.rint(py).astype(int)
        inside = (i >= 0) & (i < w) & (j >= 0) & (j < h)
        hit = np.zeros((h, w), bool)
        hit[j[inside], i[inside]] = True
        return hit

    def look_up(self, picture: Any, x: Any, y: Any) -> Any:
        """The value of a picture-sized array at places on the panel, from the nearest pixel."""
        w, h = self.size
        px, py = self.project(x, y)
        return picture[np.clip(np.rint(py).astype(int), 0, h - 1), np.clip(np.rint(px).astype(int), 0, w - 1)]
