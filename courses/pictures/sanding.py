"""Sanding marks: straight lines of a block or a hand, pass beside pass in one direction, in a satin patch."""

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
from courses.pictures.strokes import Strokes

__all__ = ["SANDING_MARKS", "Sanding", "lay", "mask", "passes"]

ALONG, ACROSS = 0.040, 0.30
BLOCK_MM = 62.0
"""Width of the block."""


@dataclass(frozen=True)
class Sanding:
    """The lines on their plate."""

    plate: Plate
    strokes: Strokes


def passes(plate: Plate, rng: Generator, phi: float, per_mm2: float) -> Strokes:
    """Strokes of a block led to and fro along ``phi``: each pass a band of lines that share heading and bow."""
    n = max(40, int(plate.area_mm2 * per_mm2))
    x, y = plate.scatter(rng, n)
    across = (y * math.cos(phi) - x * math.sin(phi)) / (BLOCK_MM * 0.55)
    lane = np.floor(across + 0.25 * rng.standard_normal(n)).astype(int)
    lane -= lane.min()
    heading = rng.normal(0, 0.028, lane.max() + 1)
    bow = rng.normal(0, 0.0005, lane.max() + 1)
    turn = phi + heading[lane] + rng.normal(0, 0.012, n)
    length = np.clip(rng.lognormal(3.65, 0.40, n), 12, 130)
    width = width_mm(plate.defect.depth_um, ACROSS) * rng.lognormal(0, 0.35, n)
    bend = bow[lane] + rng.normal(0, 0.00015, n)
    return Strokes(*(np.asarray(value, F32) for value in (x, y, turn, length, width, bend)))


def plan(defect: Defect, plate: Plate, rng: Generator) -> Sanding:
    """Close parallel lines in one direction."""
    return Sanding(plate, passes(plate, rng, plate.angle, 0.008 + 0.026 * defect.severity))


def mask(plan: Sanding, camera: Camera) -> Mask:
    """The region they lie in."""
    return plan.plate.weight(camera.x, camera.y, FEATHER_MM, ROUGH_MM) > 0.5


FEATHER_MM, ROUGH_MM = 13.0, 5.5
"""A block stops within a finger's breadth, not evenly."""


def lay(plan: Sanding, canvas: Canvas) -> None:
    """Cut the lines; between them the finer grains leave a satin ground."""
    plate, defect = plan.plate, plan.plate.defect

    def keep(x: Any, y: Any) -> Floats:
        return plate.weight(x, y, FEATHER_MM, ROUGH_MM)

    plan.strokes.lay(canvas, ALONG, ACROSS, white=0.08, breakup=0.3, keep=None if plate.whole else keep)
    left = canvas.left(defect.depth_um) * plate.weight(canvas.camera.x, canvas.camera.y, FEATHER_MM, ROUGH_MM)
    canvas.roughen(F32(0.004 + 0.016 * defect.severity) * left)
    canvas.halo += F32(0.015 + 0.045 * defect.severity) * left


SANDING_MARKS: Kind[Sanding] = Kind(plan, mask, lay)
