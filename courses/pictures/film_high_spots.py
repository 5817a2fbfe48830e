"""High spots of a coating: excess that set before it was levelled, a darker smear with the colours of a thin film."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.random import Generator

from courses.pictures.arrays import F32, Floats, Mask, soft
from courses.pictures.blots import Blots, Reals
from courses.pictures.camera import Camera
from courses.pictures.canvas import Canvas
from courses.pictures.kind import Kind
from courses.pictures.plate import Plate
from courses.pictures.runs import Runs, runs
from courses.pictures.scene import Defect
from courses.pictures.turned import Turned, turned

__all__ = ["HIGH_SPOT", "Excess"]

WET = (0.30, 0.29, 0.27)
"""Optical density of the wet look it gives the colour under it, by eye."""
THINNEST_UM = 0.05


@dataclass(frozen=True)
class Excess:
    """A puddle pulled out by a cloth: its axes, its lobes (mm along and across), and the threads of the cloth."""

    defect: Defect
    plate: Plate
    axes: Turned
    lobes: Blots
    force: Reals
    threads: Runs

    def body(self, camera: Camera) -> tuple[Floats, Floats]:
        """Return how thick the excess is, 0 to about 1 of the thickest, and the share of each pixel it covers."""
        u, v = self.axes.of(camera.x, camera.y)
        v = v + F32(3.5) * np.sin(u / F32(46.0)) + F32(1.6) * self.plate.field(25, 120, 101).on(camera)
        thick, share = np.zeros(u.shape, F32), np.zeros(u.shape, F32)
        reach = self.lobes.reach
        for nth in range(self.force.size):
            # pulled out along the cloth's way: measured in a space squeezed along it
            du, dv = (u - F32(self.lobes.x[nth, 0])) * F32(0.42), v - F32(self.lobes.y[nth, 0])
            near = np.nonzero((np.abs(du) < F32(reach[nth] + 4)) & (np.abs(dv) < F32(reach[nth] + 4)))
            deep = self.lobes.inside(nth, du[near], dv[near]).deep
            size = float(self.lobes.r[nth, 0])
            inside = soft(deep / F32(0.16 * size + 0.8))
            dome = np.sqrt(np.clip(deep / F32(size), 0, 1))
            thick[near] = np.maximum(thick[near], F32(self.force[nth]) * inside * (F32(0.30) + F32(0.70) * dome))
            share[near] = np.maximum(share[near], inside)
        bound = self.plate.weight(camera.x, camera.y, 10.0, 4.0)
        return (thick * bound).astype(F32), (share * bound).astype(F32)


def _plan(defect: Defect, plate: Plate, rng: Generator) -> Excess:
    axes = turned(plate)
    across = min(axes.half_v, 0.8 * axes.half_u)
    left, top, right, low = plate.box
    many = int(np.clip(round(7 * (right - left) * (low - top)), 1, 6))
    size = np.clip(across * rng.uniform(0.34, 0.62, many), 8, 46)
    cu = rng.uniform(-0.55, 0.55, many) * axes.half_u
    cv = rng.uniform(-0.55, 0.55, many) * axes.half_v
    if many == 1:
        cu, cv, size = np.zeros(1), np.zeros(1), np.clip(np.array([0.62 * across]), 8, 46)
    force, turn = rng.uniform(0.6, 1.0, many), rng.uniform(0, 2 * np.pi, (many, 5))
    away = rng.uniform(0.45, 0.95, (many, 5))
    lobes = Blots(
        np.hstack([cu[:, None], cu[:, None] + size[:, None] * away * np.cos(turn)]),
        np.hstack([cv[:, None], cv[:, None] + 0.7 * size[:, None] * away * np.sin(turn)]),
        size[:, None] * np.hstack([np.full((many, 1), 0.72), rng.uniform(0.25, 0.6, (many, 5))]),
        0.14,
    )
    span = (-1.3 * axes.half_v - 20, 1.3 * axes.half_v + 20)
    threads = runs(
        rng,
        span,
        20 + int(70 * (low - top)),
        (1.0, 9.0),
        (-1.4 * axes.half_u, 0.0),
        (axes.half_u, 3 * axes.half_u),
        1.5,
    )
    return Excess(defect, plate, axes, lobes, force, threads)


def _optical_um(depth_um: float) -> F32:
    """How much thicker than the levelled coat its middle is, as colours show it: half a µm at most, or no colours are
    left."""
    return F32(0.48 * (1 - np.exp(-depth_um / 0.6)))


def _mask(plan: Excess, camera: Camera) -> Mask:
    return np.asarray(plan.body(camera)[1] > 0.3)


def _lay(plan: Excess, canvas: Canvas) -> None:
    camera, severity = canvas.camera, F32(plan.defect.severity)
    u, v = plan.axes.of(camera.x, camera.y)
    thick, share = plan.body(camera)
    threads = plan.threads.at(v + F32(3.5) * np.sin(u / F32(46.0)), u)
    wave = F32(1) + F32(0.09) * plan.plate.field(35, 160, 102).on(camera)
    film = F32(THINNEST_UM) + _optical_um(plan.defect.depth_um) * thick * wave * (F32(1.0) - F32(0.22) * threads)
    seen = share * np.clip(F32(0.10) + F32(1.30) * severity, 0, 1)
    if canvas.film_um is not None and canvas.film_share is not None:
        older = canvas.film_share > seen
        film, seen = np.where(older, canvas.film_um, film), np.maximum(seen, canvas.film_share)
    canvas.film(film, seen)
    canvas.stain(WET, severity * share * (F32(0.5) + F32(0.5) * thick))
    canvas.raise_um(F32(plan.defect.depth_um) * thick)
    canvas.roughen(F32(0.012) * severity * share * (F32(0.3) + threads))
    canvas.halo += F32(0.010) * severity * share * threads


HIGH_SPOT = Kind(_plan, _mask, _lay)
