"""Residue of compound: white smears that follow the cloth, a bead left along an edge, and specks slung by the pad."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.random import Generator

from courses.pictures.arrays import F32, Floats, Mask, soft
from courses.pictures.blots import Reals
from courses.pictures.camera import Camera
from courses.pictures.canvas import Canvas
from courses.pictures.kind import Kind
from courses.pictures.plate import Plate
from courses.pictures.runs import Runs, runs
from courses.pictures.scene import Defect
from courses.pictures.turned import Turned, turned

__all__ = ["RESIDUE", "Smear", "Smears"]

PASTE = (0.80, 0.79, 0.76)
"""Linear colour of dried compound, by eye."""


@dataclass(frozen=True)
class Smear:
    """One pass of a cloth: its axes about its own middle, half its length and width (mm), how much it bends, its
    threads."""

    axes: Turned
    bow: float
    force: float
    threads: Runs

    def at(self, x: Floats, y: Floats) -> Floats:
        """Return how much it left at places on the panel, 0 to 1."""
        u, v = self.axes.of(x, y)
        v = v - F32(self.bow) * u * u
        hu, hv = F32(self.axes.half_u), F32(self.axes.half_v)
        side = soft((hv - np.abs(v)) / F32(0.16 * self.axes.half_v))
        ends = soft((hu - np.abs(u) + F32(0.4) * v) / F32(0.10 * self.axes.half_u))
        # where the cloth turned it put down what it had gathered
        turn = np.exp(-(((u - hu * F32(0.86)) / F32(8.0)) ** 2))
        film = self.threads.at(v, u + hu) + F32(0.05) + F32(0.22) * turn
        return np.asarray(F32(self.force) * side * ends * film, F32)


@dataclass(frozen=True)
class Smears:
    """The passes of a cloth over a region, the bead along its lower edge, and specks (mm)."""

    defect: Defect
    plate: Plate
    axes: Turned
    smears: tuple[Smear, ...]
    edge: float
    specks: tuple[Reals, Reals, Reals]

    def film(self, camera: Camera) -> Floats:
        """Return how much dried paste each pixel holds, 0 to about 1, without its grain."""
        x, y = camera.x, camera.y
        out = np.zeros(x.shape, F32)
        for smear in self.smears:
            out = np.maximum(out, smear.at(x, y)) + F32(0.2) * np.minimum(out, smear.at(x, y))
        return np.asarray(out * self.plate.weight(x, y, 14.0, 5.0), F32)

    def bead(self, camera: Camera) -> Floats:
        """Return the line of paste along an edge, 0 to 1: crumbly, thicker here and there, wiped away in places."""
        u, v = self.axes.of(camera.x, camera.y)
        zero = np.zeros_like(u)
        wide = F32(0.6) + F32(0.45) * self.plate.field(5, 40, 91).at(u, zero)
        there = soft((self.plate.field(30, 200, 92).at(u, zero) + F32(0.15)) * F32(1.6))
        off = v - F32(self.edge)
        line = soft((wide - np.abs(off)) / F32(max(0.5, 0.5 * camera.pixel_mm)))
        dust = F32(0.30) * np.exp(-np.maximum(-off, 0) / F32(7.0)) * (off < 0)
        return np.asarray((line + dust) * there * self.plate.weight(camera.x, camera.y, 8.0, 2.0), F32)


def _plan(defect: Defect, plate: Plate, rng: Generator) -> Smears:
    axes = turned(plate)
    left, top, right, low = plate.box
    many = int(np.clip(round(13 * (right - left) * (low - top)), 2, 9))
    x, y = plate.at(*rng.uniform(0.08, 0.92, (2, many)))
    smears = []
    for nth in range(many):
        long, wide = rng.uniform(55, 150), rng.uniform(16, 48)
        own = Turned(float(x[nth]), float(y[nth]), axes.angle + rng.normal(0, 0.16) + np.pi * (nth % 2), long, wide)
        threads = runs(
            rng, (-wide, wide), int(wide * 0.9), (0.7, 6.0), (-10, 0.8 * long), (0.6 * long, 2.0 * long), 0.7, 2.6, 0.6
        )
        smears.append(Smear(own, float(rng.normal(0, 0.0011)), float(rng.uniform(0.4, 1.0)), threads))
    most = int(plate.area_mm2 * 0.0016)
    sx, sy = (np.asarray(value, float) for value in plate.scatter(rng, most))
    size = np.clip(rng.lognormal(-1.0, 0.6, most), 0.12, 1.8)
    kept = rng.random(most) < np.asarray(plate.weight(sx, sy, 14.0, 5.0))
    kept &= np.arange(most) < most * (0.08 + 0.92 * defect.severity)
    edge = float(rng.uniform(0.45, 0.75)) * axes.half_v
    return Smears(defect, plate, axes, tuple(smears), edge, (sx[kept], sy[kept], size[kept]))


def _mask(plan: Smears, camera: Camera) -> Mask:
    return np.asarray(plan.plate.weight(camera.x, camera.y, 14.0, 5.0) > 0.4)


def _lay(plan: Smears, canvas: Canvas) -> None:
    camera, severity = canvas.camera, F32(plan.defect.severity)
    grain = np.clip(F32(0.9) + F32(0.16) * plan.plate.field(1.2, 7, 93).on(camera), 0.2, 1.6)
    film = plan.film(camera) * grain * (F32(0.15) + F32(0.85) * severity)
    bead = plan.bead(camera) * np.clip(grain, 0.4, 1) * (F32(0.25) + F32(0.75) * severity)
    thick = _specked(plan, camera) * (F32(0.4) + F32(0.6) * severity)
    solid = np.clip(np.maximum(F32(0.85) * bead, F32(0.9) * thick), 0, 1)
    canvas.cover(PASTE, np.clip(F32(0.30) * film + solid * (1 - F32(0.30) * film), 0, 1))
    canvas.coat *= (1 - np.clip(F32(0.55) * film, 0, 0.9)) * (1 - F32(0.9) * solid)
    canvas.roughen(F32(0.05) * film + F32(0.20) * solid)
    canvas.halo += F32(0.10) * film
    canvas.raise_um(F32(60.0) * solid)


def _specked(plan: Smears, camera: Camera) -> Floats:
    """Cover of the specks: each a small round crumb, less than a pixel most times."""
    out = np.zeros(camera.x.shape, F32)
    for x, y, size in zip(*plan.specks, strict=True):
        window = camera.window(float(x), float(y), float(size) + 2 * camera.pixel_mm)
        if window is None:
            continue
        away = np.sqrt(window.dx**2 + window.dy**2)
        edge = F32(max(0.25, 0.5 * camera.pixel_mm))
        cover = soft((F32(size) - away) / edge) * F32(min(1.0, (float(size) / camera.pixel_mm) * 1.4))
        out[window.at] = np.maximum(out[window.at], cover)
    return out


RESIDUE = Kind(_plan, _mask, _lay)
