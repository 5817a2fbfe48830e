"""Water spots: mineral that stands proud in rings, or craters etched into the film."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from courses.pictures.arrays import F32, Floats, soft
from courses.pictures.blots import Inside
from courses.pictures.camera import Window
from courses.pictures.canvas import Canvas
from courses.pictures.drops import Drops, drops
from courses.pictures.kind import Kind

__all__ = ["WATER_SPOTS_ETCHED", "WATER_SPOTS_MINERAL", "Rim"]

LIME = (0.72, 0.715, 0.70)
"""Linear colour of dried hard-water salts, by eye."""


@dataclass(frozen=True)
class Rim:
    """A ridge along the edge of a dried drop at places of a window: 0..1 of its height, and the slope of it per mm."""

    height: Floats
    slope: Floats

    @classmethod
    def of(cls, deep: Floats, middle: float, width: float) -> Rim:
        """Return the ridge whose crest lies ``middle`` mm inside the edge, ``width`` mm wide inwards and half that
        outwards.

        >>> ridge = Rim.of(np.array([-1.0, 0.3, 1.0], F32), 0.3, 0.4)
        >>> [round(float(value), 2) for value in ridge.height]
        [0.0, 1.0, 0.05]
        """
        off = deep - F32(middle)
        flank = np.where(off > 0, F32(width), F32(0.5 * width))
        height = np.exp(-((off / flank) ** 2))
        return cls(height, -2 * off / (flank * flank) * height)


def _rims(plan: Drops, nth: int, window: Window, pixel_mm: float, chance: Floats) -> tuple[Inside, Rim, Floats]:
    """How deep the window lies in a drop, its rim, and the share of deposit at each place, heavier on the low side."""
    into = plan.blots.inside(nth, window.dx, window.dy)
    radius = float(plan.blots.r[nth, 0])
    width = max(0.10 * radius * (0.6 + 0.8 * chance[0]) + 0.10, 0.55 * pixel_mm)
    rim = Rim.of(into.deep, 0.5 * width, width)
    low = F32(0.55) + F32(0.45) * np.clip(-into.gy, -1, 1)
    inner = Rim.of(into.deep, radius * (0.25 + 0.35 * chance[1]), max(0.8 * width, 0.5 * pixel_mm))
    film = soft(into.deep / F32(max(0.35 * width, 0.4 * pixel_mm)))
    share = (
        rim.height * low + F32(0.45 * max(0.0, chance[2] - 0.35)) * inner.height + F32(0.04 + 0.16 * chance[3]) * film
    )
    return into, rim, share * F32(min(1.0, (radius / pixel_mm) ** 1.0))


def _lay_mineral(plan: Drops, canvas: Canvas) -> None:
    """White salts that scatter, lift the surface along the rim and glint from the facets of their crystals."""
    camera, severity = canvas.camera, F32(plan.defect.severity)
    left = np.zeros(camera.x.shape, F32)
    high_mm = F32(max(plan.defect.depth_um, 0.1) * 1e-3)
    reach = plan.blots.reach
    chances = canvas.rng.random((reach.size, 4)).astype(F32)
    for nth in range(reach.size):
        x, y = float(plan.blots.x[nth, 0]), float(plan.blots.y[nth, 0])
        window = camera.window(x, y, float(reach[nth]) + 1.5)
        if window is None:
            continue
        into, rim, share = _rims(plan, nth, window, camera.pixel_mm, chances[nth])
        force = F32(plan.force[nth])
        left[window.at] = np.maximum(left[window.at], force * share)
        steep = high_mm * force * rim.slope
        canvas.nx[window.at] -= steep * into.gx
        canvas.ny[window.at] -= steep * into.gy
    crust = np.clip(left * (F32(0.80) + F32(0.22) * plan.plate.field(0.9, 4, 31).on(camera)), 0, 1)
    amount = crust * (F32(0.30) + F32(0.70) * severity)
    canvas.cover(LIME, F32(0.34) * amount)
    canvas.coat *= 1 - F32(0.75) * amount
    canvas.roughen(F32(0.09) * amount)
    canvas.halo += F32(0.10) * amount
    _crystals(canvas, amount)


def _crystals(canvas: Canvas, amount: Floats) -> None:
    """Sparks: facets that lie every way, more of them where the crust is thick."""
    camera, rng = canvas.camera, canvas.rng
    rows, columns = np.nonzero(rng.random(amount.shape, dtype=F32) < amount * F32(0.55 * camera.pixel_mm**2))
    if rows.size == 0:
        return
    jitter = rng.uniform(-0.4, 0.4, (2, rows.size)) * camera.pixel_mm
    size = rng.lognormal(-2.1, 0.4, rows.size)
    canvas.grooves.add(
        camera.x[rows, columns] + jitter[0],
        camera.y[rows, columns] + jitter[1],
        rng.uniform(0, np.pi, rows.size),
        size,
        size,
        along=0.25,
        across=0.35,
    )


def _lay_etched(plan: Drops, canvas: Canvas) -> None:
    """Shallow dishes with a steep wall, dull at the bottom; no colour of their own."""
    camera, severity = canvas.camera, F32(plan.defect.severity)
    floor = np.zeros(camera.x.shape, F32)
    wall = np.zeros(camera.x.shape, F32)
    left = canvas.left(plan.defect.depth_um)
    deep_mm = F32(max(plan.defect.depth_um, 0.1) * 1e-3)
    reach = plan.blots.reach
    chances = canvas.rng.random(reach.size)
    for nth in range(reach.size):
        x, y = float(plan.blots.x[nth, 0]), float(plan.blots.y[nth, 0])
        window = camera.window(x, y, float(reach[nth]) + 1.5)
        if window is None:
            continue
        into = plan.blots.inside(nth, window.dx, window.dy)
        force, low = F32(0.45 + 0.55 * plan.force[nth]), F32(0.70) + F32(0.30) * np.clip(-into.gy, -1, 1)
        width = max(0.10 * float(plan.blots.r[nth, 0]) * (0.7 + 0.6 * chances[nth]) + 0.15, 0.6 * camera.pixel_mm)
        bank = Rim.of(into.deep, 0.5 * width, 0.7 * width)
        steep = deep_mm / F32(0.93 * width) * force * bank.height * left[window.at]
        canvas.nx[window.at] += steep * into.gx
        canvas.ny[window.at] += steep * into.gy
        floor[window.at] = np.maximum(floor[window.at], force * soft(into.deep / F32(0.5 * width)))
        wall[window.at] = np.maximum(wall[window.at], force * low * bank.height)
    severe = left * (F32(0.25) + F32(0.75) * severity)
    canvas.roughen(severe * (F32(0.014) * floor + F32(0.026) * wall))
    canvas.halo += severe * (F32(0.012) * floor + F32(0.030) * wall)
    canvas.coat *= 1 - severe * (F32(0.10) * floor + F32(0.26) * wall)


WATER_SPOTS_MINERAL = Kind(drops, Drops.mask, _lay_mineral)
WATER_SPOTS_ETCHED = Kind(drops, Drops.mask, _lay_etched)
