"""Swirl marks: hair lines of grit under a mitt, in every direction, in loose clusters of wiping arcs."""

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

__all__ = ["SWIRL", "Swirls"]

ALONG, ACROSS = 0.011, 0.34
"""Spread of slope along a hair line, and of its flanks across:
by eye, and that of a scratch ten times as wide as deep.
"""
BUNDLE = 1.8
"""A hair line is seldom one furrow."""


@dataclass(frozen=True)
class Swirls:
    """Where the hair lines lie."""

    plate: Plate
    strokes: Strokes


def plan(defect: Defect, plate: Plate, rng: Generator) -> Swirls:
    """Hair lines of a wash: a third in wipes of a dozen that bend alike, the rest alone; all directions alike."""
    n = int(plate.area_mm2 * (0.010 + 0.085 * defect.severity))
    wipes = max(6, n // 36)
    of = rng.integers(0, wipes, n)
    alone = rng.random(n) < 0.62
    x, y = plate.scatter(rng, n)
    wipe_x, wipe_y = plate.scatter(rng, wipes)
    near = rng.normal(0, 13, (2, n)).astype(F32)
    x, y = np.where(alone, x, wipe_x[of] + near[0]), np.where(alone, y, wipe_y[of] + near[1])
    turn = rng.uniform(0, np.pi, wipes)
    phi = np.where(alone, rng.uniform(0, np.pi, n), turn[of] + rng.normal(0, 0.16, n))
    bend = np.where(alone, rng.normal(0, 0.008, n), rng.normal(0, 0.012, wipes)[of] + rng.normal(0, 0.002, n))
    length = np.clip(rng.lognormal(3.1, 0.65, n), 6, 170)
    width = width_mm(defect.depth_um, ACROSS) * rng.lognormal(0.35, 0.6, n)
    strokes = Strokes(*(value.astype(F32) for value in (x, y, phi, length, width, bend)))
    return Swirls(plate, strokes)


def mask(plan: Swirls, camera: Camera) -> Mask:
    """The region they lie in."""
    return plan.plate.weight(camera.x, camera.y) > 0.5


def lay(plan: Swirls, canvas: Canvas) -> None:
    """Cut the lines, and the faint veil of those too fine to be told apart."""
    plate = plan.plate
    keep = None if plate.whole else plate.weight
    plan.strokes.lay(canvas, ALONG, ACROSS, keep=keep, filled_um=canvas.filled_um, bundle=BUNDLE)
    canvas.fogged(0.004 * plate.defect.severity, plate.defect.depth_um, plate.weight(canvas.camera.x, canvas.camera.y))


SWIRL: Kind[Swirls] = Kind(plan, mask, lay)
