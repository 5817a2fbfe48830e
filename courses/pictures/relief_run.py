"""Runs and sags: paint put on too wet, hanging as a curtain with drips that end in a fat tear."""

from __future__ import annotations

from dataclasses import dataclass
from math import pi

import numpy as np
from numpy.random import Generator

from courses.pictures.arrays import F32, Floats, Mask, soft
from courses.pictures.camera import Camera, Window
from courses.pictures.canvas import Canvas
from courses.pictures.kind import Kind
from courses.pictures.noise import Field
from courses.pictures.plate import Plate
from courses.pictures.scene import Defect

__all__ = ["RUN", "Drip", "Run"]


@dataclass(frozen=True)
class Drip:
    """One drip: where it leaves the curtain, how far it fell, half its width at the tear, height, sway; mm, um."""

    x: float
    top: float
    length: float
    half: float
    height_um: float
    sway: float
    phase: float

    def height(self, dx: Floats, down: Floats) -> Floats:
        """Return its height in um, `dx` mm aside of its middle, `down` 0 at its top to 1 at its tip."""
        inside = np.clip(down, 0, 1)
        tear = np.exp(-(((inside - 0.90) / 0.13) ** 2))
        wide = F32(self.half) * (F32(0.60) + F32(0.12) * (1 - inside) ** 2 + F32(0.40) * tear)
        middle = F32(self.sway) * np.sin(inside * F32(3.0) + F32(self.phase))
        aside = np.clip(1 - ((dx - middle) / wide) ** 2, 0, 1)
        tip = np.clip((1.0 - down) * F32(self.length / (0.8 * self.half)), 0, 1)
        crest = (
            F32(self.height_um) * (F32(1.4) + F32(0.5) * (1 - inside) ** 2 + F32(2.6) * tear) * np.sqrt(tip * (2 - tip))
        )
        return np.asarray(crest * aside**1.5 * soft(down * 9), F32)


@dataclass(frozen=True)
class Run:
    """A curtain (its line from left to right, mm) and its drips. Proud by 20 to 200 um [common practice, no source]."""

    plate: Plate
    drips: tuple[Drip, ...]
    height_um: float
    line: tuple[float, float, float, float]
    hang: float
    loops: float
    uneven: Field

    def curtain(self, x: Floats, y: Floats) -> Floats:
        """Return the height in um of the hems of the curtain: folds that hang in loops, the lowest the fattest."""
        left, right, level, phase = self.line
        across = (x - F32(left)) / F32(right - left)
        ends = soft(across * 14 - 1.6) * soft((1 - across) * 14 - 1.6)
        rag = F32(0.5 * self.hang) * self.uneven.at(x, np.zeros_like(y))
        height = np.zeros(np.shape(x), F32)
        for nth, fat in enumerate((2.8, 1.9, 1.2)):
            swing = np.sin(F32(pi) * (across * F32(self.loops + nth) + F32(phase + 0.37 * nth)))
            loops = np.sqrt(swing * swing + F32(0.03))
            hem = F32(level - 2.1 * nth * self.hang) + F32(1.3 * self.hang) * loops + rag
            below = (y - hem) / F32(self.hang)
            # a fold thickens slowly from above and ends in a steep front
            profile = np.where(below < 0, np.exp(-((below / 1.1) ** 2)), np.exp(-((below / 0.40) ** 2)))
            height = np.maximum(height, F32(fat * self.height_um) * profile)
        return np.asarray(height * ends, F32)


def _plan(defect: Defect, plate: Plate, rng: Generator) -> Run:
    count = 2 + round(defect.severity * 3) + round(plate.half[0] / 60)
    (left, right), (level, _) = plate.at([0.06, 0.94], [0.24, 0.24])
    _, low = plate.at(0.5, 0.95)
    room = float(low - level)
    height = max(defect.depth_um, 15.0)
    at = np.clip((np.arange(count) + rng.uniform(0.15, 0.85, count)) / count, 0.06, 0.94)
    fall = rng.beta(1.6, 1.3, count) * 0.75 + 0.2
    fall[int(rng.integers(0, count))] = 0.97
    half = rng.uniform(2.6, 4.6, count) * (0.75 + 0.5 * defect.severity)
    drips = tuple(
        Drip(
            x=float(left + (right - left) * where),
            top=float(level),
            length=float(min(room * share, 260.0)),
            half=float(wide),
            height_um=float(height * rng.uniform(0.7, 1.0)),
            sway=float(rng.uniform(0.2, 1.8)),
            phase=float(rng.uniform(0, 2 * pi)),
        )
        for where, share, wide in zip(at, fall, half, strict=True)
    )
    line = (float(left), float(right), float(level), float(rng.uniform(0, 2 * pi)))
    hang, loops = float(rng.uniform(4.5, 7.0)), float(rng.uniform(1.4, 2.6)) + plate.half[0] / 110
    return Run(plate, drips, height, line, hang, loops, plate.field(14, 90, 1))


def _mask(plan: Run, camera: Camera) -> Mask:
    window = _hem(plan, camera)
    covered = np.zeros(camera.x.shape, bool)
    if window is not None:
        covered[window.at] = plan.curtain(camera.x[window.at], camera.y[window.at]) > 0.12 * plan.height_um
    for drip in plan.drips:
        window = _about(drip, camera)
        if window is not None:
            covered[window.at] |= drip.height(window.dx, _down(drip, window)) > 0.08 * drip.height_um
    return covered


def _lay(plan: Run, canvas: Canvas) -> None:
    camera = canvas.camera
    height = np.zeros(camera.x.shape, F32)
    window = _hem(plan, camera)
    if window is not None:
        height[window.at] = plan.curtain(camera.x[window.at], camera.y[window.at])
    for drip in plan.drips:
        window = _about(drip, camera)
        if window is not None:
            own = drip.height(window.dx, _down(drip, window))
            # where a drip leaves the curtain the two flow into one
            height[window.at] = (height[window.at] ** 3 + own**3) ** F32(1 / 3)
    canvas.raise_um(height)


def _hem(plan: Run, camera: Camera) -> Window | None:
    left, right, level, _ = plan.line
    return camera.window((left + right) / 2, level, (right - left) / 2 + 8 * plan.hang)


def _about(drip: Drip, camera: Camera) -> Window | None:
    return camera.window(drip.x, drip.top + drip.length / 2, drip.length / 2 + 3 * drip.half)


def _down(drip: Drip, window: Window) -> Floats:
    return np.asarray(window.dy / F32(drip.length) + F32(0.5), F32)


RUN: Kind[Run] = Kind(_plan, _mask, _lay)
