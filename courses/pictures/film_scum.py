"""Scum at the waterline: level tide lines one below the other, brown above, greener below, with drips and washed
channels."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.random import Generator

from courses.pictures.arrays import F32, Floats, Mask, soft
from courses.pictures.camera import Camera
from courses.pictures.canvas import Canvas
from courses.pictures.kind import Kind
from courses.pictures.plate import Plate
from courses.pictures.runs import Runs, runs
from courses.pictures.scene import Defect
from courses.pictures.turned import Turned, turned

__all__ = ["SCUM_LINE", "Tides"]

BROWN = (0.42, 0.66, 1.25)
GREEN = (0.62, 0.50, 1.10)
"""Optical densities of oily dirt and of algae, by eye."""
DIRT = (0.120, 0.100, 0.064)
"""Linear colour of the dirt itself, by eye."""


@dataclass(frozen=True)
class Tides:
    """Where water stood: the height of each line (mm below the middle), how dark it is, and how far it fades
    downwards."""

    defect: Defect
    plate: Plate
    axes: Turned
    level: Floats
    force: Floats
    fade: Floats
    drips: Runs
    channels: Runs

    def film(self, camera: Camera) -> Floats:
        """Return how much lies at each pixel, 0 to about 1, without its finer grain."""
        u, v = self.axes.of(camera.x, camera.y)
        lap = F32(1.6) * self.plate.field(20, 160, 51).at(u, np.zeros_like(u)) + F32(0.5) * self.plate.field(
            5, 30, 52
        ).at(u, np.full_like(u, 40))
        edge = F32(max(0.9, 0.8 * camera.pixel_mm))
        out = np.zeros(u.shape, F32)
        for level, force, fade in zip(self.level, self.force, self.fade, strict=True):
            below = v - level - lap * F32(0.5 + force)
            out += force * soft(below / edge) * np.exp(-np.maximum(below, 0) / fade)
        out *= soft((F32(self.axes.half_v * 0.86) - v + 5 * lap) / F32(0.16 * self.axes.half_v))
        ends = self.plate.weight(camera.x, camera.y, 30.0, 9.0)
        return np.asarray(out * np.clip(ends * 1.6, 0, 1), F32)


def _plan(defect: Defect, plate: Plate, rng: Generator) -> Tides:
    axes = turned(plate)
    high = axes.half_v
    many = int(rng.integers(4, 8))
    level = np.sort(np.concatenate([[-0.62], rng.uniform(-0.55, 0.55, many)])) * high
    force = rng.uniform(0.10, 0.38, many + 1)
    force[0] = 0.42
    fade = rng.uniform(0.06, 0.45, many + 1) * high
    fade[0] = 0.9 * high
    span = (-1.2 * axes.half_u - 20, 1.2 * axes.half_u + 20)
    count = 6 + int(74 * (plate.box[2] - plate.box[0]))
    drips = runs(rng, span, count, (1.0, 5.0), (0.2 * high, 1.3 * high), (0.15 * high, 0.9 * high), 0.8, 3.0)
    washed = runs(rng, span, count // 3, (1.5, 9.0), (0.0, 0.5 * high), (0.5 * high, 2.0 * high), 1.2, 4.0)
    return Tides(defect, plate, axes, level.astype(F32), force.astype(F32), fade.astype(F32), drips, washed)


def _mask(plan: Tides, camera: Camera) -> Mask:
    return np.asarray(plan.film(camera) > 0.10)


def _lay(plan: Tides, canvas: Canvas) -> None:
    camera = canvas.camera
    u, v = plan.axes.of(camera.x, camera.y)
    film = plan.film(camera)
    top = v + F32(plan.axes.half_v)
    grain = plan.plate.field(1.2, 9, 53).on(camera)
    wear = F32(1) + F32(0.16) * plan.plate.field(30, 200, 54, stretch=(2.0, 1.0)).on(camera) + F32(0.13) * grain
    film *= wear * (1 + F32(0.75) * plan.drips.at(u, top)) * (1 - F32(0.60) * plan.channels.at(u, top))
    film = np.clip(film, 0, 1.6) * F32(plan.defect.severity)
    green = np.clip((v / F32(plan.axes.half_v) + F32(0.15)) * F32(0.9) + F32(0.2) * grain, 0, 1)
    canvas.cover(DIRT, np.clip(F32(0.12) * film, 0, 1))
    canvas.stain(BROWN, F32(1.85) * film * (1 - green))
    canvas.stain(GREEN, F32(1.85) * film * green)
    canvas.coat *= np.exp(F32(-0.40) * film)
    canvas.roughen(F32(0.05) * film)


SCUM_LINE = Kind(_plan, _mask, _lay)
