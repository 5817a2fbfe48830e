"""A single scratch:

one event drew one line, deep and rough enough to show from most sides, with its chatter and skips.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.random import Generator

from courses.pictures.arrays import F32, Floats, Mask
from courses.pictures.camera import Camera
from courses.pictures.canvas import Canvas
from courses.pictures.grooves import width_mm
from courses.pictures.kind import Kind
from courses.pictures.plate import Plate
from courses.pictures.scene import Defect

__all__ = ["SCRATCH", "Scratch"]

ALONG, ACROSS = 0.16, 0.40
TORN = 2.6
"""How much wider the torn edges are than the cut itself; by eye."""


@dataclass(frozen=True)
class Scratch:
    """The line and its companions, each a chain of places 0.5 mm apart (mm), with the pressure at each, 0 to 1."""

    plate: Plate
    x: Floats
    y: Floats
    phi: Floats
    press: Floats


def plan(defect: Defect, plate: Plate, rng: Generator) -> Scratch:
    """One line through the region; a strong one has one or two fainter lines close beside it."""
    half = min(plate.half[0], 160.0), min(plate.half[1], 160.0)
    cos, sin = np.cos(plate.angle), np.sin(plate.angle)
    fits = 1 / max(abs(cos) / half[0], abs(sin) / half[1])
    length = 2 * fits * rng.uniform(0.62, 0.92)
    cx, cy = plate.at(*(0.5 + rng.uniform(-0.10, 0.10, 2)))
    lines = [_line(rng, (float(cx), float(cy)), plate.angle, length, 1.0)]
    for _ in range(int(defect.severity > 0.45) + int(defect.severity > 0.8)):
        side, along = rng.uniform(1.6, 4.5) * rng.choice([-1, 1]), rng.uniform(-0.2, 0.2) * length
        middle = float(cx) + along * cos - side * sin, float(cy) + along * sin + side * cos
        turn = plate.angle + rng.normal(0, 0.02)
        lines.append(_line(rng, middle, turn, length * rng.uniform(0.2, 0.5), rng.uniform(0.25, 0.5)))
    x, y, phi, press = (np.concatenate(part).astype(F32) for part in zip(*lines, strict=True))
    return Scratch(plate, x, y, phi, press)


def _line(
    rng: Generator, middle: tuple[float, float], phi: float, length: float, press: float
) -> tuple[Floats, Floats, Floats, Floats]:
    s = np.arange(-length / 2, length / 2, 0.5)
    t = s / length + 0.5
    turns = rng.uniform(0, 6.28, 4)
    drift = rng.normal(0, 0.0011) * s + 0.012 * np.sin(s / 9 + turns[0]) + 0.03 * np.sin(s / 60 + turns[1])
    way = phi + drift
    x, y = np.cumsum(np.cos(way)) * 0.5, np.cumsum(np.sin(way)) * 0.5
    x, y = x - x[x.size // 2] + middle[0], y - y[y.size // 2] + middle[1]
    # it bites at once, tails off slowly, and chatters
    chatter = 0.75 + 0.25 * np.sin(s / 6 + turns[2]) * np.sin(s / 2.3 + turns[3])
    skips = (np.sin(s / 3.1 + turns[0]) + rng.normal(0, 0.5, s.size)) > -1.45
    force = press * np.clip(t * 11, 0, 1) * np.clip((1 - t) * 2.4, 0, 1) * chatter * skips
    return x, y, way, force


def mask(plan: Scratch, camera: Camera) -> Mask:
    """The pixels the lines run over."""
    there = plan.press > 0.02
    return camera.drawn(plan.x[there], plan.y[there])


def lay(plan: Scratch, canvas: Canvas) -> None:
    """Cut the line, a torn whitish edge, and the shadow of its lip on one side."""
    step = 0.35 * canvas.camera.pixel_mm
    n = max(1, round(0.5 / step))
    x, y, phi, press = (np.repeat(value, n) for value in (plan.x, plan.y, plan.phi, plan.press))
    into = (np.tile(np.arange(n), plan.x.size) / n * 0.5).astype(F32)
    x, y = x + into * np.cos(phi), y + into * np.sin(phi)
    width = F32(width_mm(plan.plate.defect.depth_um, ACROSS)) * press
    rough = phi + F32(0.05) * canvas.rng.standard_normal(x.size, dtype=F32)
    stands = 0.5 / n
    canvas.grooves.add(x, y, rough, stands, width, ALONG, ACROSS, white=0.55, bundle=TORN)
    lip = F32(0.9 * canvas.camera.pixel_mm)
    canvas.grooves.add(
        x - np.sin(phi) * lip, y + np.cos(phi) * lip, phi, stands, width * F32(TORN), 9.0, 9.0, dark=0.55
    )


SCRATCH: Kind[Scratch] = Kind(plan, mask, lay)
