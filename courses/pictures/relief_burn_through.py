"""Film sanded or polished through where it lay thinnest: along an edge or a proud seam, layer by layer."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property
from math import cos, sin

import numpy as np
from numpy.random import Generator

from courses.pictures.arrays import F32, Floats, Mask
from courses.pictures.camera import Camera
from courses.pictures.canvas import Canvas
from courses.pictures.kind import Kind
from courses.pictures.layers import BARE, Beneath
from courses.pictures.noise import Field
from courses.pictures.plate import Plate
from courses.pictures.scene import Defect
from courses.pictures.strokes import Strokes
from courses.pictures.turned import Turned, turned

__all__ = ["BURN_THROUGH", "BurnThrough"]

SEAM_UM = 260.0
"""How proud the seam stands that was cut through (chosen by eye)."""


@dataclass(frozen=True)
class BurnThrough:
    """A worn lens about a line: its axes, half width in mm, depth at its worst (in films), and how uneven it is."""

    plate: Plate
    axes: Turned
    half: float
    deepest: float
    uneven: Field
    bend: tuple[float, float]

    @cached_property
    def streaks(self) -> Field:
        """Fine unevenness along the line, as a sheet leaves it; too fine to matter for where the film is through."""
        return self.plate.field(3.2, 30, 91, stretch=(6.0, 1.0))

    def frame(self, x: Floats, y: Floats) -> tuple[Floats, Floats]:
        """Return places along and across the line, 1 where the scuffed area ends."""
        u, v = self.axes.of(x, y)
        u, v = u / F32(self.axes.half_u), v / F32(self.half)
        return u, v + F32(self.bend[0]) * u * u + F32(self.bend[1]) * np.sin(4 * u)

    def depth(self, x: Floats, y: Floats, fine: bool = True) -> Floats:
        """Return how much is gone, in films: 0 where the scuff ends, over 1 where it is through; `fine`: streaked."""
        u, v = self.frame(x, y)
        # one flank of a seam wears further than the other
        away = np.hypot(u, np.where(v < 0, F32(1.35) * v, v))
        along, across = self.axes.of(x, y)
        uneven = F32(0.055) * self.uneven.at(along, across)
        if fine:
            uneven += F32(0.022) * self.streaks.at(along, across)
        worn = np.clip(1 - away - uneven, 0, 1)
        return np.asarray(F32(self.deepest) * worn ** F32(1.15), F32)


def _plan(defect: Defect, plate: Plate, rng: Generator) -> BurnThrough:
    axes = turned(plate)
    return BurnThrough(
        plate=plate,
        axes=axes,
        half=min(axes.half_v, 16 + 50 * defect.severity, 0.7 * axes.half_u),
        deepest=(1.35 if plate.scene.substrate == "clear_coat" else 1.15) + 1.15 * defect.severity,
        uneven=plate.field(24, 160, 90),
        bend=(float(rng.uniform(-0.18, 0.18)), float(rng.uniform(-0.07, 0.07))),
    )


def _mask(plan: BurnThrough, camera: Camera) -> Mask:
    return plan.depth(camera.x, camera.y, fine=False) > 0.85 * BARE


def _lay(plan: BurnThrough, canvas: Canvas) -> None:
    window = canvas.camera.window(plan.axes.x, plan.axes.y, 1.2 * max(plan.axes.half_u, plan.half))
    if window is None:
        return
    x, y = canvas.camera.x[window.at], canvas.camera.y[window.at]
    depth = plan.depth(x, y)
    scuffed = np.clip(depth * 3.0, 0, 1) * (F32(0.85) + F32(0.12) * plan.streaks.at(x, y))
    canvas.coat[window.at] *= 1 - F32(0.62) * scuffed
    canvas.alpha[window.at] = np.hypot(canvas.alpha[window.at], F32(0.060) * scuffed)
    canvas.halo[window.at] += F32(0.05) * scuffed
    _bend_seam(plan, canvas, window.at, (x, y))
    Beneath(plan.plate, blunt=2.0).open_to(canvas, depth, window.at)
    _streak(plan, canvas)


def _bend_seam(plan: BurnThrough, canvas: Canvas, at: tuple[slice, slice], places: tuple[Floats, Floats]) -> None:
    """The seam stands a little proud, which is why it went first: reflections bend over it."""
    u, v = plan.frame(*places)
    inside = np.clip(1 - u * u, 0, 1) ** 2
    slope = F32(4 * SEAM_UM * 1e-3 / plan.half) * v * np.clip(1 - v * v, 0, 1) * inside
    canvas.nx[at] -= F32(sin(plan.axes.angle)) * slope
    canvas.ny[at] += F32(cos(plan.axes.angle)) * slope


def _streak(plan: BurnThrough, canvas: Canvas) -> None:
    """Marks of the last sheet along the line, over everything that was worn."""
    rng, long = canvas.rng, plan.axes.half_u
    n = int(long * plan.half * 0.16)
    x, y = plan.axes.back(long * rng.uniform(-1, 1, n), plan.half * rng.normal(0, 0.5, n))
    x, y = x.astype(F32), y.astype(F32)
    keep = plan.depth(x, y) > 0.02
    length = np.minimum(rng.lognormal(2.9, 0.4, n), 0.4 * long)
    width, bend = rng.lognormal(-3.9, 0.4, n), rng.normal(0, 0.002, n)
    heading = plan.axes.angle + rng.normal(0, 0.06, n)
    marks = Strokes(x[keep], y[keep], *(part[keep].astype(F32) for part in (heading, length, width, bend)))
    marks.lay(canvas, along=0.045, across=0.30, white=0.06)


BURN_THROUGH: Kind[BurnThrough] = Kind(_plan, _mask, _lay)
