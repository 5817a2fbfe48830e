"""Holograms: trails of a rotary pad tilted on one edge, nested arcs in lanes that wander, hurry and overlap."""

from __future__ import annotations

import math
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
from courses.pictures.strokes import stepped

__all__ = ["HOLOGRAM", "Holograms"]

ALONG, ACROSS = 0.030, 0.26
PAD_MM = 82.0
"""Radius of the pad."""
PITCH_MM = 0.85
"""Distance between two arcs of one grain cluster along the walk; by eye."""
GROUP = 500
"""Arcs worked on at once, so that memory stays small."""
BUNDLE = 12.0
"""Marks side by side in one arc: each is far finer than a pixel."""


@dataclass(frozen=True)
class Arcs:
    """Arcs by middle and radius (mm), first and last angle, and how hard the pad was loaded."""

    x: Floats
    y: Floats
    radius: Floats
    first: Floats
    last: Floats
    load: Floats


@dataclass(frozen=True)
class Holograms:
    """The arcs of every lane."""

    plate: Plate
    arcs: Arcs


def plan(defect: Defect, plate: Plate, rng: Generator) -> Holograms:
    """Lanes over the region, walked to and fro, each with its own heading, pace and loaded side of the pad."""
    half_x, half_y = plate.half
    reach = math.hypot(half_x, half_y) + PAD_MM
    lanes, off, forth = [], -reach + rng.uniform(0, PAD_MM), True
    while off < reach:
        lanes.append(_lane(rng, off, reach, forth))
        off += PAD_MM * rng.uniform(0.62, 1.02)
        forth = not forth
    u, v, radius, middle, half, load = (np.concatenate(part) for part in zip(*lanes, strict=True))
    cos, sin = math.cos(plate.angle), math.sin(plate.angle)
    x0, y0 = plate.centre
    x, y = x0 + u * cos - v * sin, y0 + u * sin + v * cos
    middle = middle + plate.angle
    arcs = Arcs(*(value.astype(F32) for value in (x, y, radius, middle - half, middle + half, load)))
    return Holograms(plate, arcs)


def _lane(rng: Generator, off: float, reach: float, forth: bool) -> tuple[Any, ...]:
    """One walk of the machine: arcs along it, in mm along and across the lanes."""
    pace = rng.uniform(0.85, 1.25)
    along = np.arange(-reach, reach, PITCH_MM * pace)
    n = along.size
    turns = rng.uniform(0, 6.28, 4)
    lean = rng.normal(0, 0.035)
    across = off + lean * along + 9 * np.sin(along / 70 + turns[0]) + 4 * np.sin(along / 23 + turns[1])
    side = 0.0 if forth else math.pi
    # the machine is held at a slowly changing tilt, so another part of the rim is loaded
    middle = side + rng.normal(0, 0.22) + 0.35 * np.sin(along / 48 + turns[2])
    half = rng.uniform(0.70, 1.35) * rng.uniform(0.75, 1.15, n)
    radius = PAD_MM * rng.uniform(0.80, 1.0, n)
    load = (0.62 + 0.38 * np.sin(along / 31 + turns[3])) * rng.uniform(0.6, 1.25) + 0.22 * rng.standard_normal(n)
    return along, across, radius, middle, half, np.clip(load, 0.04, 1.7)


def mask(plan: Holograms, camera: Camera) -> Mask:
    """The region they lie in."""
    return plan.plate.weight(camera.x, camera.y) > 0.5


def lay(plan: Holograms, canvas: Canvas) -> None:
    """Cut the arcs, and the haze of what is too fine to be seen as arcs: most where two lanes overlap."""
    plate, arcs = plan.plate, plan.arcs
    step = 0.7 * canvas.camera.pixel_mm
    single = width_mm(plate.defect.depth_um, ACROSS)
    seen = np.flatnonzero(_in_sight(arcs, canvas.camera))
    for first in range(0, seen.size, GROUP):
        x, y, phi, width = _sampled(arcs, seen[first : first + GROUP], step, canvas.rng)
        if not plate.whole:
            width = width * plate.weight(x, y)
        canvas.grooves.add(
            x, y, phi, step, width * F32(single), ALONG, ACROSS, filled_um=canvas.filled_um, bundle=BUNDLE
        )
    weight = plate.weight(canvas.camera.x, canvas.camera.y)
    patchy = 1 + F32(0.35) * plate.field(30, 160, 5).on(canvas.camera)
    canvas.fogged(0.004 * plate.defect.severity, plate.defect.depth_um, weight * np.clip(patchy, 0.2, 2))


def _in_sight(arcs: Arcs, camera: Camera) -> Mask:
    """Which arcs come into the picture."""
    w, h = camera.size
    angle = arcs.first + (arcs.last - arcs.first) * np.linspace(0, 1, 7, dtype=F32)[:, None]
    px, py = camera.project(arcs.x + arcs.radius * np.cos(angle), arcs.y + arcs.radius * np.sin(angle))
    near = 0.08 * w
    return np.asarray(((px > -near) & (px < w + near) & (py > -near) & (py < h + near)).any(axis=0))


def _sampled(arcs: Arcs, piece: Any, step: float, rng: Generator) -> tuple[Floats, Floats, Floats, Floats]:
    """Place, direction and share of the full width of each sample of some arcs."""
    x, y, radius, first, last, load = (
        value[piece] for value in (arcs.x, arcs.y, arcs.radius, arcs.first, arcs.last, arcs.load)
    )
    k, t = stepped((last - first) * radius, step)
    angle = first[k] + (last - first)[k] * t
    fade = np.sqrt(np.sin(F32(math.pi) * t))
    tremble = F32(0.012) * rng.standard_normal(k.size, dtype=F32)
    phi = angle + F32(math.pi / 2) + tremble
    return x[k] + radius[k] * np.cos(angle), y[k] + radius[k] * np.sin(angle), phi, load[k] * fade


HOLOGRAM: Kind[Holograms] = Kind(plan, mask, lay)
