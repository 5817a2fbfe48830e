"""Die-back: fresh film that shrank after polishing. Gloss is down, and the sanding below stands up again as a ghost."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.random import Generator

from courses.pictures.arrays import F32, Floats, Mask
from courses.pictures.camera import Camera
from courses.pictures.canvas import Canvas
from courses.pictures.kind import Kind
from courses.pictures.plate import Plate
from courses.pictures.scene import Defect
from courses.pictures.strokes import Strokes

__all__ = ["DIE_BACK", "DieBack"]


@dataclass(frozen=True)
class DieBack:
    """Old sanding strokes below the film: places, headings, lengths, widths in mm; how much gloss has gone, 0 to 1."""

    plate: Plate
    amount: float
    x: Floats
    y: Floats
    heading: Floats
    length: Floats
    width: Floats


def _plan(defect: Defect, plate: Plate, rng: Generator) -> DieBack:
    n = int(plate.area_mm2 * (0.0030 + 0.0100 * defect.severity))
    x, y = plate.scatter(rng, n)
    # blocked by hand in two directions; film that shrinks bridges a scratch, so what shows is shallow and rounded
    way = plate.angle + np.where(rng.random(n) < 0.62, 0.52, -0.55) + rng.normal(0, 0.05, n)
    length, width = np.clip(rng.lognormal(3.5, 0.4, n), 8, 120), rng.lognormal(-3.4, 0.4, n)
    return DieBack(plate, defect.severity, x, y, way.astype(F32), length.astype(F32), width.astype(F32))


def _mask(plan: DieBack, camera: Camera) -> Mask:
    return plan.plate.weight(camera.x, camera.y) > 0.5


def _lay(plan: DieBack, canvas: Canvas) -> None:
    plate, camera = plan.plate, canvas.camera
    patchy = np.clip(F32(0.85) + F32(0.16) * plate.field(25, 140, 1).on(camera), 0.3, 1.2)
    amount = F32(plan.amount) * plate.weight(camera.x, camera.y) * patchy
    canvas.roughen(F32(0.013) * amount)
    canvas.halo += F32(0.045) * amount
    canvas.coat *= 1 - F32(0.22) * amount
    right, down = plate.field(0.8, 4, 2, slope=0.3).slopes()
    canvas.nx += F32(0.0035) * amount * right.on(camera)
    canvas.ny += F32(0.0035) * amount * down.on(camera)
    marks = Strokes(plan.x, plan.y, plan.heading, plan.length, plan.width, np.full(plan.x.size, 0.0008))
    marks.lay(canvas, along=0.05, across=0.12, keep=plate.weight, breakup=0.7)
    _map_edge(plan, canvas)


def _map_edge(plan: DieBack, canvas: Canvas) -> None:
    """The feathered edge of an old repair shows as a faint contour."""
    plate, camera = plan.plate, canvas.camera
    reach = 0.62 * min(plate.half)
    window = camera.window(*plate.centre, 1.6 * reach)
    if window is None:
        return
    turn = np.arctan2(window.dy, window.dx)
    shape = 1 + F32(0.10) * np.sin(2 * turn + F32(plan.x[0] if plan.x.size else 0)) + F32(0.06) * np.sin(3 * turn + 1)
    off = np.hypot(window.dx, window.dy) - F32(reach) * shape
    slope = F32(0.010 * plan.amount) * np.exp(-((off / F32(2.2)) ** 2)) * (off / F32(2.2))
    canvas.nx[window.at] += slope * np.cos(turn)
    canvas.ny[window.at] += slope * np.sin(turn)


DIE_BACK: Kind[DieBack] = Kind(_plan, _mask, _lay)
