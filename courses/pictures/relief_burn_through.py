"""Film sanded or polished through where it lay thinnest: along an edge or a proud seam, layer by layer."""

from __future__ import annotations

from dataclasses import dataclass
from math import cos, sin

import numpy as np
from numpy.random import Generator

from courses.pictures.arrays import F32, Floats, Mask
from courses.pictures.camera import Camera
from courses.pictures.canvas import Canvas
from courses.pictures.kind import Kind
from courses.pictures.layers import BARE, open_to
from courses.pictures.noise import Field
from courses.pictures.plate import Plate
from courses.pictures.scene import Defect
from courses.pictures.strokes import Strokes

__all__ = ["BURN_THROUGH", "BurnThrough"]

SEAM_UM = 240.0
"""How proud the seam stands that was cut through (chosen by eye)."""


@dataclass(frozen=True)
class BurnThrough:
    """A worn lens about a line: its frame, how deep it is at its worst (in films), and how uneven."""

    plate: Plate
    angle: float
    half: tuple[float, float]
    deepest: float
    uneven: Field
    streaks: Field
    bend: tuple[float, float]

    def frame(self, x: Floats, y: Floats) -> tuple[Floats, Floats]:
        """Return places along and across the line, 1 where the scuffed area ends."""
        dx, dy = x - F32(self.plate.centre[0]), y - F32(self.plate.centre[1])
        c, s = F32(cos(self.angle)), F32(sin(self.angle))
        u, v = (c * dx + s * dy) / F32(self.half[0]), (c * dy - s * dx) / F32(self.half[1])
        return u, v + F32(self.bend[0]) * u * u + F32(self.bend[1]) * np.sin(4 * u)

    def depth(self, x: Floats, y: Floats) -> Floats:
        """Return how much is gone, in films: 0 at the end of the scuff, over 1 where the film is through."""
        u, v = self.frame(x, y)
        # One flank of a seam wears further than the other.
        away = np.hypot(u, np.where(v < 0, F32(1.35) * v, v))
        c, s = F32(cos(self.angle)), F32(sin(self.angle))
        along, across = c * x + s * y, c * y - s * x
        uneven = F32(0.10) * self.uneven.at(along, across) + F32(0.035) * self.streaks.at(along, across)
        worn = np.clip(1 - away - uneven, 0, 1)
        return np.asarray(F32(self.deepest) * (1 - (1 - worn) ** 1.7), F32)


def _plan(defect: Defect, plate: Plate, rng: Generator) -> BurnThrough:
    hx, hy = plate.half
    c, s = abs(cos(plate.angle)), abs(sin(plate.angle))
    half = (hx * c + hy * s, min(hx * s + hy * c, 14 + 46 * defect.severity, 0.6 * (hx * c + hy * s)))
    return BurnThrough(
        plate=plate,
        angle=plate.angle,
        half=half,
        deepest=1.25 + 1.35 * defect.severity,
        uneven=plate.field(14, 120, 90),
        streaks=plate.field(1.6, 30, 91, stretch=(6.0, 1.0)),
        bend=(float(rng.uniform(-0.18, 0.18)), float(rng.uniform(-0.07, 0.07))),
    )


def _mask(plan: BurnThrough, camera: Camera) -> Mask:
    return plan.depth(camera.x, camera.y) > 0.9 * BARE


def _lay(plan: BurnThrough, canvas: Canvas) -> None:
    window = canvas.camera.window(*plan.plate.centre, 1.3 * max(plan.half))
    if window is None:
        return
    x, y = canvas.camera.x[window.at], canvas.camera.y[window.at]
    depth = plan.depth(x, y)
    scuffed = np.clip(depth * 2.2, 0, 1) * (F32(0.85) + F32(0.12) * plan.streaks.at(x, y))
    canvas.coat[window.at] *= 1 - F32(0.38) * scuffed
    canvas.alpha[window.at] = np.hypot(canvas.alpha[window.at], F32(0.035) * scuffed)
    canvas.halo[window.at] += F32(0.035) * scuffed
    _bend_seam(plan, canvas, window.at, (x, y))
    open_to(canvas, plan.plate, depth, window.at)
    _streak(plan, canvas)


def _bend_seam(plan: BurnThrough, canvas: Canvas, at: tuple[slice, slice], places: tuple[Floats, Floats]) -> None:
    """The seam stands a little proud, which is why it went first: reflections bend over it."""
    u, v = plan.frame(*places)
    inside = np.clip(1 - u * u, 0, 1) ** 2
    slope = F32(4 * SEAM_UM * 1e-3 / plan.half[1]) * v * np.clip(1 - v * v, 0, 1) * inside
    canvas.nx[at] -= F32(sin(plan.angle)) * slope
    canvas.ny[at] += F32(cos(plan.angle)) * slope


def _streak(plan: BurnThrough, canvas: Canvas) -> None:
    """Marks of the last sheet along the line, over everything that was worn."""
    rng = canvas.rng
    n = int(plan.half[0] * plan.half[1] * 0.10)
    u, v = rng.uniform(-1, 1, n), rng.normal(0, 0.45, n)
    c, s = cos(plan.angle), sin(plan.angle)
    x = plan.plate.centre[0] + plan.half[0] * c * u - plan.half[1] * s * v
    y = plan.plate.centre[1] + plan.half[0] * s * u + plan.half[1] * c * v
    keep = plan.depth(x, y) > 0.02
    heading = plan.angle + rng.normal(0, 0.06, n)
    length = np.minimum(rng.lognormal(2.7, 0.4, n), 0.5 * plan.half[0])
    width = rng.lognormal(-4.2, 0.4, n)
    bend = rng.normal(0, 0.002, n)
    marks = Strokes(*(np.asarray(part[keep], F32) for part in (x, y, heading, length, width, bend)))
    marks.lay(canvas, along=0.045, across=0.30, white=0.05)


BURN_THROUGH: Kind[BurnThrough] = Kind(_plan, _mask, _lay)
