"""Stains in the pores of a film: the yellow moustache of plant water at the bow, and rust run down from a fitting."""

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

__all__ = ["RUST_STAIN", "TANNIN_STAIN", "Moustache", "Rust"]

TANNIN = (0.17, 0.52, 1.30)
RUST = (0.20, 0.95, 2.10)
HALO = (0.05, 0.28, 0.80)
"""Optical densities of plant dye, of iron and of the yellow round it, by eye."""


@dataclass(frozen=True)
class Moustache:
    """A bow wave's stain: its axes, its middle (mm along), how wide each wing is and how high it stands, and its
    fingers."""

    defect: Defect
    plate: Plate
    axes: Turned
    middle: float
    wings: tuple[float, float]
    fingers: Runs

    def dye(self, camera: Camera) -> Floats:
        """Return how much dye each pixel holds, 0 to about 1: darkest just above the water, thinning upwards in
        wisps."""
        u, v = self.axes.of(camera.x, camera.y)
        high, half_v = F32(1.45 * self.axes.half_v), F32(self.axes.half_v)
        off = u - F32(self.middle)
        wing = np.abs(off) / np.where(off < 0, F32(self.wings[0]), F32(self.wings[1]))
        rise = high * (F32(0.20) + F32(0.80) * np.exp(-(wing ** F32(1.7)) * F32(1.5)))
        wisp = F32(0.12) * self.plate.field(10, 120, 61, stretch=(1.0, 1.6)).on(camera)
        above = F32(0.66) * half_v - v + F32(1.0) * self.plate.field(20, 140, 62).at(u, np.zeros_like(u))
        share = above / rise + wisp
        body = soft(above / F32(7.0)) * np.exp(-(np.maximum(share, 0) ** F32(1.5)) * F32(2.4))
        ends = soft((F32(1.0) - wing) * F32(4.0)) * np.clip(
            self.plate.weight(camera.x, camera.y, 16.0, 5.0) * 1.5, 0, 1
        )
        return np.asarray(body * ends * (F32(0.55) + F32(0.45) * np.exp(-wing * wing)), F32)


def _plan_moustache(defect: Defect, plate: Plate, rng: Generator) -> Moustache:
    axes = turned(plate)
    middle = float(rng.uniform(-0.35, 0.35)) * axes.half_u
    wings = (axes.half_u + middle, axes.half_u - middle)
    span = (-1.1 * axes.half_u, 1.1 * axes.half_u)
    tall = axes.half_v
    fingers = runs(
        rng,
        span,
        4 + int(64 * (plate.box[2] - plate.box[0])),
        (1.5, 14.0),
        (-0.6 * tall, 0.9 * tall),
        (0.6 * tall, 2.0 * tall),
        1.4,
        2.0,
        1.2,
        25,
    )
    return Moustache(defect, plate, axes, middle, wings, fingers)


def _mask_moustache(plan: Moustache, camera: Camera) -> Mask:
    return np.asarray(plan.dye(camera) > 0.10)


def _lay_moustache(plan: Moustache, canvas: Canvas) -> None:
    camera = canvas.camera
    u, v = plan.axes.of(camera.x, camera.y)
    pores = F32(1) + F32(0.10) * plan.plate.field(0.9, 5, 63).on(camera)
    dye = plan.dye(camera) * pores * (F32(0.88) + F32(0.30) * plan.fingers.at(u, v + F32(plan.axes.half_v)))
    canvas.stain(TANNIN, F32(1.55 * plan.defect.severity) * dye)
    canvas.coat *= 1 - F32(0.03 * plan.defect.severity) * np.clip(dye, 0, 1)


@dataclass(frozen=True)
class Rust:
    """Rust from one point: its axes, the point along and below the middle (mm), and its trails, the first the widest.

    Of each trail: how far aside it begins, where it leans to, how far down it reaches, half its width at the top and
    at the end (mm), how dark it is and the phases of its sway.
    """

    defect: Defect
    plate: Plate
    axes: Turned
    source: tuple[float, float]
    trails: tuple[tuple[float, ...], ...]

    def iron(self, camera: Camera) -> tuple[Floats, Floats]:
        """Return the iron of each pixel and the yellow that crept out round it, each 0 to about 1."""
        u, v = self.axes.of(camera.x, camera.y)
        du, dv = u - F32(self.source[0]), v - F32(self.source[1])
        sharp = F32(max(0.5, 0.6 * camera.pixel_mm))
        spot = np.exp(-(du * du + F32(0.6) * dv * dv) / F32(18.0))
        iron, glow = F32(0.9) * spot, F32(0.7) * np.exp(-(du * du + F32(0.4) * dv * dv) / F32(150.0))
        for start, lean, reach, first, last, force, one, two in self.trails:
            share = np.clip(dv / F32(reach), 0, 1)
            path = (
                start
                + F32(lean) * share
                + F32(1.5) * np.sin(dv / 31 + F32(one))
                + F32(0.5) * np.sin(dv / 11 + F32(two))
            )
            half = F32(first) + F32(last - first) * share ** F32(0.7)
            aside = np.abs(du - path * np.clip(dv / 7, 0, 1))
            inside = half - aside
            there = soft((dv + 2) / 2) * np.clip((1 - dv / F32(reach)) * 3.0, 0, 1) ** F32(0.8)
            body = soft(inside / np.maximum(sharp, half * F32(0.55)))
            rim = np.exp(-(((inside - F32(0.3)) / np.maximum(sharp, F32(0.6))) ** 2))
            thin = F32(0.30) + F32(0.70) * np.exp(-share * F32(2.0))
            iron = np.maximum(iron, F32(force) * there * thin * (F32(0.72) * body + F32(0.30) * rim))
            glow = np.maximum(glow, F32(force) * there * thin * np.exp(-((aside / (half + 4)) ** 2)))
        bound = np.clip(self.plate.weight(camera.x, camera.y, 10.0, 3.0) * 1.8, 0, 1)
        return np.asarray(iron * bound, F32), np.asarray(glow * bound, F32)


def _plan_rust(defect: Defect, plate: Plate, rng: Generator) -> Rust:
    axes = turned(plate)
    source = (float(rng.uniform(-0.25, 0.25)) * axes.half_u, -0.80 * axes.half_v)
    room, tall = min(0.75 * axes.half_u, 90.0), 1.70 * axes.half_v
    trails = [(0.0, rng.normal(0, 5.0), tall * rng.uniform(0.75, 1.0), 2.6, rng.uniform(3.5, 7), 1.0)]
    for _ in range(4 + int(rng.integers(2, 6) + 4 * defect.severity)):
        start = rng.normal(0, min(6.5, 0.3 * room))
        lean = 0.7 * start + rng.normal(0, min(5.0, 0.10 * room))
        trails.append(
            (
                start,
                lean,
                tall * rng.beta(1.4, 2.2),
                rng.uniform(0.7, 2.2),
                rng.uniform(0.6, 3.4),
                rng.uniform(0.3, 0.9),
            )
        )
    return Rust(defect, plate, axes, source, tuple((*trail, *rng.uniform(0, 6.28, 2)) for trail in trails))


def _mask_rust(plan: Rust, camera: Camera) -> Mask:
    iron, glow = plan.iron(camera)
    return np.asarray(np.maximum(iron, glow) > 0.12)


def _lay_rust(plan: Rust, canvas: Canvas) -> None:
    camera = canvas.camera
    iron, glow = plan.iron(camera)
    grain = F32(1) + F32(0.13) * plan.plate.field(1, 10, 71, stretch=(1.0, 2.5)).on(camera)
    force = F32(0.25 + 1.25 * plan.defect.severity)
    canvas.stain(RUST, force * iron * grain)
    canvas.stain(HALO, force * F32(0.7) * glow)
    u, v = plan.axes.of(camera.x, camera.y)
    away = np.hypot(u - F32(plan.source[0]), v - F32(plan.source[1]))
    canvas.dark += F32(0.75) * soft((F32(1.1 + plan.defect.severity) - away) / F32(max(0.5, 0.6 * camera.pixel_mm)))
    canvas.coat *= 1 - F32(0.10) * np.clip(force * iron, 0, 1)


TANNIN_STAIN = Kind(_plan_moustache, _mask_moustache, _lay_moustache)
RUST_STAIN = Kind(_plan_rust, _mask_rust, _lay_rust)
