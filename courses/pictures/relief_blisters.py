"""Domes under the film, from pinheads to a big coin, in clusters; a few of them broken and weeping."""

from __future__ import annotations

from dataclasses import dataclass
from math import pi

import numpy as np
from numpy.random import Generator

from courses.pictures.arrays import F32, Floats, Mask, soft
from courses.pictures.camera import Camera, Window
from courses.pictures.canvas import Canvas
from courses.pictures.fractures import Reals
from courses.pictures.kind import Kind
from courses.pictures.layers import Beneath
from courses.pictures.plate import Plate
from courses.pictures.scene import Defect

__all__ = ["BLISTERS", "Blisters"]


@dataclass(frozen=True)
class Blisters:
    """Domes on the panel: places and radii in mm, steepest slopes, out-of-round, and which of them are broken.

    Diameters run from 1.6 to 40 mm: 5 to 40 are reported of hulls, and hard pinheads (one blog, one survey page).
    """

    plate: Plate
    x: Reals
    y: Reals
    radius: Reals
    steep: Reals
    oval: Reals
    lean: Reals
    broken: Reals
    beneath: Beneath

    def rim(self, nth: int, dx: Floats, dy: Floats) -> Floats:
        """Return the distance from the middle of dome `nth`, 1 on its rim."""
        turn = np.arctan2(dy, dx)
        shape: Floats = 1 + F32(self.oval[nth]) * np.cos(2 * (turn - F32(self.lean[nth])))
        shape += F32(0.5 * self.oval[nth]) * np.cos(3 * turn + F32(5 * self.lean[nth]))
        return np.asarray(np.hypot(dx, dy) / (F32(self.radius[nth]) * shape), F32)


def _plan(defect: Defect, plate: Plate, rng: Generator) -> Blisters:
    count = int(np.clip(plate.area_mm2 * (0.0004 + 0.0011 * defect.severity), 5, 420))
    x, y = _clustered(plate, rng, count)
    radius = np.clip(rng.lognormal(1.15 + 0.60 * defect.severity, 0.75, count), 0.8, 20.0)
    inside = plate.weight(x, y, feather_mm=6.0, rough_mm=4.0) > 0.5
    keep = _apart(x, y, np.where(inside, radius, -1.0))
    x, y, radius = x[keep], y[keep], radius[keep]
    n = x.size
    steep = rng.uniform(0.13, 0.26, n) * (0.55 + 0.65 * defect.severity) * (radius / 5) ** -0.15
    broken = np.where((rng.random(n) < 0.02 + 0.07 * defect.severity) & (radius > 3.0), rng.uniform(0.3, 0.6, n), 0.0)
    return Blisters(
        plate, x, y, radius, steep, rng.uniform(0.02, 0.11, n), rng.uniform(0, 2 * pi, n), broken, Beneath(plate)
    )


def _clustered(plate: Plate, rng: Generator, count: int) -> tuple[Reals, Reals]:
    """Return places of which three in four crowd about a few others."""
    x, y = (np.asarray(part, float) for part in plate.scatter(rng, count))
    parents = max(1, count // 12)
    child = rng.random(count) < 0.75
    child[:parents] = False
    mother = rng.integers(0, parents, count)
    spread = rng.lognormal(2.35, 0.35, count)
    x = np.where(child, x[mother] + spread * rng.standard_normal(count), x)
    return x, np.where(child, y[mother] + spread * rng.standard_normal(count), y)


def _apart(x: Reals, y: Reals, radius: Reals) -> Reals:
    """Return which domes to keep, the biggest first, so that few run into one another."""
    kept: list[int] = []
    for nth in np.argsort(-radius):
        if radius[nth] <= 0:
            break
        others = np.array(kept, int)
        gap = np.hypot(x[others] - x[nth], y[others] - y[nth])
        if not (gap < 0.92 * (radius[others] + radius[nth])).any():
            kept.append(int(nth))
    return np.sort(np.array(kept, int))


def _mask(plan: Blisters, camera: Camera) -> Mask:
    covered = np.zeros(camera.x.shape, bool)
    for nth in range(plan.x.size):
        window = _window(plan, camera, nth, 1.3)
        if window is not None:
            covered[window.at] |= plan.rim(nth, window.dx, window.dy) < 1.0
    small = plan.radius < 1.5 * camera.pixel_mm
    return covered | camera.drawn(plan.x[small], plan.y[small])


def _lay(plan: Blisters, canvas: Canvas) -> None:
    for nth in range(plan.x.size):
        window = _window(plan, canvas.camera, nth, 1.5)
        if window is None:
            continue
        q = plan.rim(nth, window.dx, window.dy)
        lift = np.ones(q.shape, F32)
        if plan.broken[nth] > 0:
            lift = _break(plan, canvas, nth, window, q)
        # a dome (1 - q²)^1.5 with a shallow trough about its foot, where the film was drawn up
        slope = np.where(q < 1, q * np.sqrt(np.clip(1 - q * q, 0, 1)) * 2, -0.10 * np.exp(-(((q - 1.12) / 0.12) ** 2)))
        tilt = F32(plan.steep[nth]) * slope * lift / np.maximum(np.hypot(window.dx, window.dy), F32(0.05))
        canvas.nx[window.at] += tilt * window.dx
        canvas.ny[window.at] += tilt * window.dy


def _break(plan: Blisters, canvas: Canvas, nth: int, window: Window, q: Floats) -> Floats:
    """Open a dome to what lies below, with a torn edge and a dried run; return how much of the dome still stands."""
    rng, at, radius = canvas.rng, window.at, F32(plan.radius[nth])
    turn = np.arctan2(window.dy, window.dx)
    wave = rng.uniform(0, 2 * pi, 4)
    torn = F32(plan.broken[nth]) * (
        1
        + F32(0.22) * np.sin(3 * turn + wave[0])
        + F32(0.13) * np.sin(7 * turn + wave[1])
        + F32(0.07) * np.sin(13 * turn)
    )
    hole = soft((torn - q) * radius / F32(max(0.5, 0.6 * canvas.camera.pixel_mm)))
    plan.beneath.open_to(canvas, F32(1.5) * hole, at)
    shade = np.clip(0.5 - window.dy / (radius * F32(plan.broken[nth])), 0, 1)
    canvas.dark[at] = np.maximum(canvas.dark[at], hole * (F32(0.25) + F32(0.5) * shade))
    _weep(plan, canvas, nth)
    edge = rng.uniform(0, 2 * pi, 90)
    reach = radius * plan.broken[nth] * (1 + 0.15 * np.sin(2 * edge + wave[0]) + 0.08 * np.sin(5 * edge + wave[1]))
    canvas.grooves.add(
        plan.x[nth] + reach * np.cos(edge), plan.y[nth] + reach * np.sin(edge), edge + pi / 2,
        0.07 * radius, rng.uniform(0.05, 0.3, 90), along=0.15, across=0.40, white=0.25,
    )  # fmt: skip
    return np.asarray(1 - hole, F32)


def _weep(plan: Blisters, canvas: Canvas, nth: int) -> None:
    """A dried, brownish run below the hole."""
    length = canvas.rng.uniform(1.5, 4.5) * plan.radius[nth]
    window = canvas.camera.window(plan.x[nth], plan.y[nth] + 0.5 * length, 0.5 * length + 2.0)
    if window is None:
        return
    down = np.clip((window.dy + F32(0.5 * length)) / F32(length), 0, 1)
    aside = window.dx - F32(0.6) * np.sin(window.dy / F32(5.0) + F32(nth))
    wide = F32(0.22 * plan.radius[nth]) * (1 - F32(0.55) * down) + F32(0.3)
    amount = np.exp(-((aside / wide) ** 2)) * soft(down * 12 - 1.6) * (1 - down) ** 0.7
    density = np.array([0.55, 0.85, 1.25], F32)
    canvas.albedo[window.at] *= np.exp(-density * (F32(0.55) * amount)[..., None])


def _window(plan: Blisters, camera: Camera, nth: int, reach: float) -> Window | None:
    return camera.window(plan.x[nth], plan.y[nth], reach * plan.radius[nth] + camera.pixel_mm)


BLISTERS: Kind[Blisters] = Kind(_plan, _mask, _lay)
