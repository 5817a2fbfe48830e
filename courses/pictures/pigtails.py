"""Pigtails: curls of one coarse grain under an orbital disc, strung along its path until the grain is lost."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.random import Generator

from courses.pictures.arrays import F32, Floats, Mask
from courses.pictures.camera import Camera
from courses.pictures.canvas import Canvas
from courses.pictures.grooves import width_mm
from courses.pictures.kind import Kind
from courses.pictures.plate import Plate
from courses.pictures.scene import Defect

__all__ = ["PIGTAIL", "Pigtails"]

ALONG, ACROSS = 0.075, 0.30
ORBIT_MM = 2.5
"""Radius of the orbit: discs swing 5 mm, common practice."""


@dataclass(frozen=True)
class Pigtails:
    """Curls: where each begins on its path, which way it walks, how it turns, how hard it bites along its turns."""

    plate: Plate
    x: Floats
    y: Floats
    heading: Floats
    start: Floats
    turns: Floats
    orbit: Floats
    walk: Floats
    lift: Floats
    phase: Floats
    width: Floats

    def places(self, step_mm: float) -> tuple[Any, ...]:
        """Place, direction and width of samples about ``step_mm`` apart along every curl."""
        count = np.maximum(8, (self.turns * 2 * np.pi * self.orbit / step_mm).astype(np.int32))
        k = np.repeat(np.arange(count.size), count)
        t = (np.arange(k.size) - (np.cumsum(count) - count)[k] + 0.5) / count[k]
        th = self.start[k] + t * self.turns[k] * 2 * np.pi
        # the orbit is no circle: the disc turns under it and the pad gives way
        r = self.orbit[k] * (1 + 0.10 * np.sin(0.37 * th + self.phase[k]))
        gone = self.walk[k] * (th - self.start[k])
        cos, sin = np.cos(self.heading[k]), np.sin(self.heading[k])
        x = self.x[k] + r * np.cos(th) + gone * cos
        y = self.y[k] + r * np.sin(th) + gone * sin
        vx, vy = -r * np.sin(th) + self.walk[k] * cos, r * np.cos(th) + self.walk[k] * sin
        # the grain bites on the loaded side of the orbit and lifts off on the other
        bite = np.clip(1.15 - self.lift[k] * (1 - np.cos(th - self.phase[k])), 0, 1)
        ends = np.clip(t * 6, 0, 1) * np.clip((1 - t) * 2.5, 0, 1)
        found = (x, y, np.arctan2(vy, vx), self.width[k] * bite * ends)
        return tuple(value.astype(F32) for value in found)


def plan(defect: Defect, plate: Plate, rng: Generator) -> Pigtails:
    """Some paths of the disc, each with curls strung out unevenly, and stragglers between."""
    n = max(2, round(plate.area_mm2 / 240_000 * (8 + 32 * defect.severity)))
    each = rng.integers(1, 7, n)
    path = np.repeat(np.arange(n), each)
    m = path.size
    x0, y0 = plate.scatter(rng, n)
    heading = rng.normal(plate.angle, 0.5, n) + rng.choice([0, np.pi], n)
    order = np.arange(m) - (np.cumsum(each) - each)[path]
    gone = order * rng.uniform(9, 24, n)[path] + rng.normal(0, 3, m)
    heading = heading[path] + 0.10 * order * rng.normal(0, 1, n)[path]
    x, y = x0[path] + gone * np.cos(heading), y0[path] + gone * np.sin(heading) + rng.normal(0, 1.5, m)
    orbit = ORBIT_MM * np.clip(rng.normal(1, 0.16, m), 0.45, 1.4)
    keep = rng.random(n)[path]
    width = width_mm(defect.depth_um, ACROSS) * rng.lognormal(0, 0.3, m) * (0.6 + 0.6 * keep)
    values = (
        *(x, y, heading + rng.normal(0, 0.2, m), rng.uniform(0, 6.28, m)),
        *(np.clip(rng.lognormal(0.25, 0.6, m), 0.45, 4.5), orbit, orbit * rng.uniform(0.06, 0.45, m)),
        *(rng.uniform(0, 0.8, m) ** 1.5, rng.uniform(0, 6.28, m), width),
    )
    return Pigtails(plate, *(np.asarray(value, F32) for value in values))


def mask(plan: Pigtails, camera: Camera) -> Mask:
    """The pixels the curls run over."""
    x, y, _phi, width = plan.places(0.6 * camera.pixel_mm)
    there = (width > 0) & (plan.plate.weight(x, y) > 0.5)
    return camera.drawn(x[there], y[there])


def lay(plan: Pigtails, canvas: Canvas) -> None:
    """Cut the curls: rough in the bottom, with a torn, whitish edge."""
    step = 0.45 * canvas.camera.pixel_mm
    x, y, phi, width = plan.places(step)
    width = width * plan.plate.weight(x, y)
    canvas.grooves.add(x, y, phi, step, width, ALONG, ACROSS, white=0.25, bundle=6.0)


PIGTAIL: Kind[Pigtails] = Kind(plan, mask, lay)
