"""Dual-action haze:

marks of a pad that spins and orbits, short, fine and in every direction, so that they merge to a fog.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.random import Generator

from courses.pictures.arrays import F32, Mask
from courses.pictures.camera import Camera
from courses.pictures.canvas import Canvas
from courses.pictures.grooves import width_mm
from courses.pictures.kind import Kind
from courses.pictures.plate import Plate
from courses.pictures.scene import Defect
from courses.pictures.strokes import Strokes

__all__ = ["DA_HAZE", "Marring"]

ALONG, ACROSS = 0.030, 0.30


@dataclass(frozen=True)
class Marring:
    """The coarsest of the marks; the rest are a fog."""

    plate: Plate
    strokes: Strokes


def plan(defect: Defect, plate: Plate, rng: Generator) -> Marring:
    """Short arcs of the orbit, evenly spread, all directions alike."""
    n = int(plate.area_mm2 * (0.05 + 0.12 * defect.severity))
    x, y = plate.scatter(rng, n)
    length = rng.uniform(1.2, 4.5, n)
    bend = rng.choice([-1, 1], n) * rng.uniform(0.15, 0.45, n)
    width = width_mm(defect.depth_um, ACROSS) * rng.lognormal(0, 0.3, n)
    phi = rng.uniform(0, np.pi, n)
    return Marring(plate, Strokes(*(np.asarray(value, F32) for value in (x, y, phi, length, width, bend))))


def mask(plan: Marring, camera: Camera) -> Mask:
    """The region they lie in."""
    return plan.plate.weight(camera.x, camera.y) > 0.5


def lay(plan: Marring, canvas: Canvas) -> None:
    """Cut the arcs, lay the fog; even, with the slow clouding of one pass beside another."""
    plate, defect = plan.plate, plan.plate.defect
    keep = None if plate.whole else plate.weight
    plan.strokes.lay(canvas, ALONG, ACROSS, keep=keep, filled_um=canvas.filled_um, bundle=5.0)
    cloud = 1 + F32(0.12) * plate.field(25, 140, 5).on(canvas.camera)
    weight = plate.weight(canvas.camera.x, canvas.camera.y) * cloud
    canvas.fogged(0.016 + 0.078 * defect.severity, defect.depth_um, weight)
    canvas.roughen(F32(0.006 * defect.severity) * weight * canvas.left(defect.depth_um))


DA_HAZE: Kind[Marring] = Kind(plan, mask, lay)
