"""Oxidation and fading: powder and dulled gloss on top, or colour lost in depth with the gloss still there."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.random import Generator

from courses.pictures.arrays import F32, Floats, Mask, soft
from courses.pictures.camera import Camera
from courses.pictures.canvas import Canvas
from courses.pictures.kind import Kind
from courses.pictures.pigment import bleached
from courses.pictures.plate import Plate
from courses.pictures.runs import Runs, runs
from courses.pictures.scene import Defect
from courses.pictures.turned import Turned, turned

__all__ = ["FADING", "OXIDATION", "Rub", "Weather", "chalked", "faded", "weather"]

CHALK = (0.62, 0.625, 0.61)
"""Linear colour of freed pigment and broken binder, by eye."""


@dataclass(frozen=True)
class Rub:
    """A swipe of a hand, a sponge or a fender: an arc about ``x``, ``y`` (mm) of a ``radius``, a width and two ends
    (radians)."""

    x: float
    y: float
    radius: float
    width: float
    middle: float
    half: float
    threads: Runs
    force: float

    def at(self, x: Floats, y: Floats) -> Floats:
        """Return the share of powder it took with it, at places on the panel."""
        dx, dy = x - F32(self.x), y - F32(self.y)
        out = np.sqrt(dx * dx + dy * dy) - F32(self.radius)
        turn = np.arctan2(dy, dx) - F32(self.middle)
        turn = np.abs(turn - F32(2 * np.pi) * np.round(turn / F32(2 * np.pi)))
        band = soft((F32(self.width / 2) - np.abs(out)) / F32(self.width * 0.26))
        ends = soft((F32(self.half) - turn - out * F32(0.0012)) / F32(self.half * 0.30))
        threads = self.threads.at(out, F32(self.radius) * (turn + F32(self.half)))
        return np.asarray(band * ends * F32(self.force) * (F32(0.65) + F32(0.5) * threads), F32)


@dataclass(frozen=True)
class Weather:
    """How weather wore a region: its axes, streaks washed clean, streaks run down pale, and rubs."""

    defect: Defect
    plate: Plate
    axes: Turned
    washed: Runs
    pale: Runs
    rubs: tuple[Rub, ...]

    def edge(self, camera: Camera) -> Floats:
        """Return how much of each pixel lies within the region, which ends softly along a wandering line."""
        if self.plate.whole:
            return np.ones(camera.x.shape, F32)
        right, low = (F32(13) * self.plate.field(45, 220, stream).on(camera) for stream in (14, 15))
        return self.plate.weight(camera.x + right, camera.y + low, 34.0, 2.5)

    def amount(self, camera: Camera) -> Floats:
        """Return how far each pixel is weathered, 0 where the region ends, about 1 in its middle, more in bad places.

        Worse towards the top edge, where sun and standing dew work longest; streaks below where water ran off.
        """
        x, y = camera.x, camera.y
        u, v = self.axes.of(x, y)
        height = np.clip((v / F32(self.axes.half_v) + 1) / 2, 0, 1)
        blotch = self.plate.field(60, 320, 11, stretch=(1.0, 1.4)).on(camera)
        worn = F32(0.78) + F32(0.34) * (1 - height) ** F32(1.6) + F32(0.075) * blotch
        worn += F32(0.022) * self.plate.field(2.5, 14, 12).on(camera)
        top = v + F32(self.axes.half_v)
        worn += F32(0.20) * self.pale.at(u, top)
        worn *= 1 - F32(0.34) * self.washed.at(u, top)
        for rub in self.rubs:
            worn *= 1 - rub.at(x, y)
        edge = self.edge(camera)
        return np.asarray(worn * edge * np.sqrt(edge), F32)


def weather(defect: Defect, plate: Plate, rng: Generator) -> Weather:
    """Plan the wear of a region. How many streaks and rubs, and how strong, is chosen by eye."""
    axes = turned(plate)
    span = (-1.2 * axes.half_u - 20, 1.2 * axes.half_u + 20)
    wide = plate.box[2] - plate.box[0]
    rubs = tuple(_rub(plate, rng) for _ in range(int(rng.integers(1, 4))))
    tall = 2 * axes.half_v
    washed = runs(
        rng, span, 4 + int(18 * wide), (4, 30), (-0.5 * tall, 0.1 * tall), (0.6 * tall, 1.7 * tall), 1.3, 2.0, 1.0, 90
    )
    pale = runs(
        rng, span, 5 + int(27 * wide), (2, 16), (-0.5 * tall, 0.1 * tall), (0.5 * tall, 1.3 * tall), 1.0, 2.0, 1.4, 60
    )
    return Weather(defect, plate, axes, washed, pale, rubs)


def _rub(plate: Plate, rng: Generator) -> Rub:
    x, y = plate.at(*rng.uniform(0.12, 0.88, 2))
    radius, width = rng.uniform(140, 420), rng.uniform(30, 80)
    middle, half = rng.uniform(0, 2 * np.pi), rng.uniform(35, 110) / radius
    away = (x - radius * np.cos(middle), y - radius * np.sin(middle))
    threads = runs(rng, (-width, width), int(width * 0.35), (1.5, 9.0), (-20, 0), (150, 300), 0.3)
    return Rub(float(away[0]), float(away[1]), radius, width, middle, half, threads, rng.uniform(0.08, 0.28))


def chalked(canvas: Canvas, amount: Floats) -> None:
    """Turn the top of a canvas to chalk by an ``amount`` (h, w) of 0..1: the colour pales, the mirror dies, the gloss
    spreads.

    How mirror, slope width and powder follow the amount is chosen so that the lamp's image falls at every step.
    """
    a = np.clip(amount, 0, 1.15)
    canvas.albedo[:] = bleached(canvas.albedo, (F32(0.55) * a)[..., None])
    canvas.cover(CHALK, F32(0.30) * a ** F32(1.4))
    canvas.roughen(F32(0.20) * a ** F32(1.2))
    canvas.coat *= np.exp(F32(-2.4) * a)
    canvas.halo += F32(0.045) * a


def faded(canvas: Canvas, amount: Floats) -> None:
    """Take pigment out of a canvas by an ``amount`` (h, w) of 0..1 and leave the gloss alone."""
    canvas.albedo[:] = bleached(canvas.albedo, (1 - np.exp(F32(-2.6) * np.clip(amount, 0, 1.15)))[..., None])


def _mask(plan: Weather, camera: Camera) -> Mask:
    return np.asarray(plan.edge(camera) > 0.3)


def _lay_oxidation(plan: Weather, canvas: Canvas) -> None:
    worn = plan.amount(canvas.camera)
    deep = np.maximum(worn * F32(max(plan.defect.depth_um, 0.1)), F32(1e-3))
    left = np.clip(1 - canvas.removed_um / deep, 0, 1)
    chalked(canvas, F32(plan.defect.severity) * worn * left)


def _lay_fading(plan: Weather, canvas: Canvas) -> None:
    x, y = canvas.camera.x, canvas.camera.y
    _, v = plan.axes.of(x, y)
    height = np.clip((v / F32(plan.axes.half_v) + 1) / 2, 0, 1)
    lost = F32(0.80) + F32(0.30) * (1 - height) + F32(0.07) * plan.plate.field(80, 400, 13).on(canvas.camera)
    edge = plan.edge(canvas.camera)
    lost *= edge * np.sqrt(edge)
    faded(canvas, F32(plan.defect.severity) * lost)


OXIDATION = Kind(weather, _mask, _lay_oxidation)
FADING = Kind(weather, _mask, _lay_fading)
