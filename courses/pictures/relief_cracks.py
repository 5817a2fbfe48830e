"""Cracks through the film: a star, rings, near-parallel lines. Dark with dirt from every side, with a lifted lip."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from math import cos, sin

import numpy as np

from courses.pictures.arrays import F32, Floats, Mask, blur
from courses.pictures.camera import Camera
from courses.pictures.canvas import Canvas
from courses.pictures.fractures import Fracture, Reals, parallel, rings, star
from courses.pictures.kind import Kind
from courses.pictures.plate import Plate
from courses.pictures.scene import Defect

__all__ = ["CRACK_PARALLEL", "CRACK_RING", "CRACK_STAR", "Cracks"]

Pattern = Callable[[np.random.Generator, tuple[float, float], float], tuple[Fracture, ...]]


@dataclass(frozen=True)
class Cracks:
    """The lines on the panel, and how wide in mm the widest of them gapes (chosen by eye, 0.28 to 1 mm)."""

    plate: Plate
    lines: tuple[Fracture, ...]
    width_mm: float

    def places(self, step_mm: float) -> tuple[Reals, Reals, Reals, Reals]:
        """Return x, y, heading and gape of every line, sampled every `step_mm`."""
        sampled = [_sampled(line, step_mm) for line in self.lines] or [(np.zeros(0),) * 4]
        x, y, heading, gape = (np.concatenate(part) for part in zip(*sampled, strict=True))
        return x, y, heading, gape


def _planned(pattern: Pattern, turned: bool) -> Callable[[Defect, Plate, np.random.Generator], Cracks]:
    def plan(defect: Defect, plate: Plate, rng: np.random.Generator) -> Cracks:
        half_x, half_y = plate.half
        c, s = (cos(plate.angle), sin(plate.angle)) if turned else (1.0, 0.0)
        half = (half_x * abs(c) + half_y * abs(s), half_x * abs(s) + half_y * abs(c))
        x0, y0 = plate.centre
        lines: list[Fracture] = []
        for line in pattern(rng, half, defect.severity):
            placed = Fracture(x0 + c * line.x - s * line.y, y0 + s * line.x + c * line.y, line.gape)
            lines.extend(_inside(placed, plate))
        return Cracks(plate, tuple(lines), 0.28 + 0.72 * defect.severity)

    return plan


def _mask(plan: Cracks, camera: Camera) -> Mask:
    x, y, _, _ = plan.places(0.6 * camera.pixel_mm)
    return camera.drawn(x, y)


def _lay(plan: Cracks, canvas: Canvas) -> None:
    camera, rng = canvas.camera, canvas.rng
    step = 0.4 * camera.pixel_mm
    x, y, heading, gape = plan.places(step)
    width = plan.width_mm * gape * (0.75 + 0.5 * rng.random(x.size))
    dirt = np.clip(0.78 + 0.22 * plan.plate.field(3, 40, 1).at(x, y), 0.25, 1.0)
    # Dirt is not black: on a black panel the line is a little paler than the film beside it.
    canvas.grooves.add(x, y, heading, step, width * dirt, along=9.0, across=9.0, white=0.05, dark=0.92)
    for side in (-1.0, 1.0):
        off = side * (0.5 * width + 0.12)
        lip = 0.03 * np.clip(rng.normal(0.4, 0.5, x.size), 0, 1.5) * gape
        canvas.grooves.add(
            x - off * np.sin(heading), y + off * np.cos(heading), heading, step, lip, along=0.08, across=0.30
        )
    chipped = rng.random(x.size) < 0.012 * step / 0.25
    size = rng.uniform(0.3, 0.9, int(chipped.sum())) * (plan.width_mm + 0.2)
    canvas.grooves.add(
        x[chipped], y[chipped], heading[chipped], size, size, along=0.5, across=0.5, white=0.1, dark=0.55
    )
    _bruise(plan, canvas, x, y, gape)


def _bruise(plan: Cracks, canvas: Canvas, x: Reals, y: Reals, gape: Reals) -> None:
    """Dirt wiped into the pores beside the line, and film that has lifted a little on both sides of it."""
    camera = canvas.camera
    drawn = np.zeros(camera.x.shape, F32)
    strong = gape > 0.25
    drawn[camera.drawn(x[strong], y[strong])] = 1
    beside = _about(drawn, 1.1 / camera.pixel_mm)
    patchy = np.clip(0.7 + 0.4 * plan.plate.field(4, 50, 2).on(camera), 0, 1.5)
    canvas.stain((0.40, 0.46, 0.56), 0.62 * beside * patchy * plan.width_mm)
    canvas.coat *= 1 - F32(0.25) * beside
    canvas.raise_um(F32(9.0 * plan.width_mm) * _about(drawn, 2.2 / camera.pixel_mm))


def _about(drawn: Floats, pixels: float) -> Floats:
    """Return lines softened over so many pixels, 1 on a line that stands alone."""
    sd = max(pixels, 0.8)
    return np.asarray(np.clip(blur(drawn, sd) * F32(2.2 * sd), 0, 1), F32)


def _inside(line: Fracture, plate: Plate) -> Iterator[Fracture]:
    """Yield the stretches of a line that lie in the region; each closes where the region ends."""
    inside = plate.weight(line.x, line.y, feather_mm=2.0, rough_mm=3.0) > 0.5
    edges = np.flatnonzero(np.diff(np.concatenate([[False], inside, [False]])))
    for begin, end in zip(edges[::2], edges[1::2], strict=True):
        if end - begin > 3:
            piece = Fracture(line.x[begin:end], line.y[begin:end], line.gape[begin:end])
            yield piece if end == line.x.size else piece.up_to(int(end - begin))


def _sampled(line: Fracture, step_mm: float) -> tuple[Reals, Reals, Reals, Reals]:
    way = np.concatenate([[0.0], np.cumsum(np.hypot(np.diff(line.x), np.diff(line.y)))])
    at = np.linspace(0, way[-1], max(4, int(way[-1] / step_mm)))
    x, y = np.interp(at, way, line.x), np.interp(at, way, line.y)
    return x, y, np.arctan2(np.gradient(y), np.gradient(x)), np.interp(at, way, line.gape)


CRACK_STAR: Kind[Cracks] = Kind(_planned(star, turned=False), _mask, _lay)
CRACK_RING: Kind[Cracks] = Kind(_planned(rings, turned=False), _mask, _lay)
CRACK_PARALLEL: Kind[Cracks] = Kind(_planned(parallel, turned=True), _mask, _lay)
