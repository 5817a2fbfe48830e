"""Haze: marring too fine to see as lines, left by a pad in overlapping passes; a veil beside the lamp, grey in soft
light."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.random import Generator

from courses.pictures.arrays import F32, Floats, Mask, soft
from courses.pictures.camera import Camera
from courses.pictures.canvas import Canvas
from courses.pictures.kind import Kind
from courses.pictures.plate import Plate
from courses.pictures.scene import Defect
from courses.pictures.turned import Turned, turned

__all__ = ["HAZE", "Passes"]

PAD_MM = 130.0
"""Width of the pad that left it, by eye."""


@dataclass(frozen=True)
class Passes:
    """The passes of a pad over a region: the middle of each across the direction, mm, how hard it pressed, and its
    sway."""

    defect: Defect
    plate: Plate
    axes: Turned
    middle: Floats
    press: Floats
    sway: Floats

    def veil(self, camera: Camera) -> Floats:
        """Return how hazed each pixel is, 0 to about 1: doubled where passes overlap, weaker under the pad's middle."""
        u, v = self.axes.of(camera.x, camera.y)
        out = np.zeros(u.shape, F32)
        for middle, press, sway in zip(self.middle, self.press, self.sway, strict=True):
            off = np.abs(v - middle + F32(7.0) * np.sin(u / F32(110.0) + sway)) / F32(PAD_MM / 2)
            out += press * soft((1 - off) * F32(5.0)) * (F32(0.62) + F32(0.38) * off * off)
        cloud = F32(1) + F32(0.08) * self.plate.field(14, 120, 21).on(camera)
        return np.asarray(out * cloud * self.plate.weight(camera.x, camera.y, 24.0, 7.0), F32)


def _plan(defect: Defect, plate: Plate, rng: Generator) -> Passes:
    axes = turned(plate)
    step = PAD_MM * 0.62
    reach = axes.half_v + PAD_MM
    middle = np.arange(-reach, reach + step, step) + rng.uniform(-0.5, 0.5) * step
    middle = middle + rng.normal(0, 7, middle.size)
    press = rng.uniform(0.42, 0.72, middle.size)
    return Passes(
        defect, plate, axes, middle.astype(F32), press.astype(F32), rng.uniform(0, 6.28, middle.size).astype(F32)
    )


def _mask(plan: Passes, camera: Camera) -> Mask:
    return np.asarray(plan.plate.weight(camera.x, camera.y, 24.0, 7.0) > 0.4)


def _lay(plan: Passes, canvas: Canvas) -> None:
    veil = F32(plan.defect.severity) * plan.veil(canvas.camera) * canvas.left(plan.defect.depth_um)
    canvas.roughen(F32(0.030) * veil)
    canvas.halo += F32(0.13) * veil
    canvas.coat *= 1 - F32(0.30) * np.clip(veil, 0, 1.2)


HAZE = Kind(_plan, _mask, _lay)
