"""What lies under the top of the film, from the outside in: thin film, base colour, primer, laminate or metal."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property
from typing import Any

import numpy as np

from courses.pictures.arrays import F32, Floats, lerp, soft
from courses.pictures.canvas import Canvas
from courses.pictures.noise import Field
from courses.pictures.plate import Plate

__all__ = ["BARE", "Beneath"]

RESIN = np.array([0.240, 0.225, 0.150], F32)
GLASS = np.array([0.400, 0.385, 0.300], F32)
PRIMER = np.array([0.300, 0.300, 0.290], F32)
BUFF = np.array([0.400, 0.370, 0.300], F32)
ECOAT = np.array([0.030, 0.031, 0.032], F32)
METAL = np.array([0.250, 0.250, 0.255], F32)
"""Linear colours set by eye: polyester with glass, grey and buff primer, dark dip coat, sanded steel."""
BARE = 1.0
"""Depth at which the top of the film is gone; below it, the layers of a substrate follow."""


@dataclass(frozen=True)
class _Layer:
    """A layer half reached at `begins` (depth, in films), how sharply, its `colour`, mirror share and slope width."""

    begins: float
    edge: float
    colour: Any
    coat: float
    rough: float


@dataclass(frozen=True)
class Beneath:
    """The layers below one defect; `blunt` makes every border so many times softer, as sanding does."""

    plate: Plate
    blunt: float = 1.0

    @cached_property
    def _uneven(self) -> Field:
        return self.plate.field(6, 40, 80)

    @cached_property
    def _strands(self) -> Field:
        return self.plate.field(1.2, 10, 81, stretch=(6.0, 1.0), slope=0.4)

    def strands(self, x: Floats, y: Floats) -> Floats:
        """Return 0 to 1 at places, mm: glass that crosses in two directions and stands out of its resin."""
        return soft(np.maximum(self._strands.at(x, y), self._strands.at(y + F32(211), x)) - F32(0.3))

    def open_to(self, canvas: Canvas, depth: Floats, at: tuple[slice, slice]) -> None:
        """Open the film of the window `at` to `depth` there, in films: below 1 it only thins, above it layers show.

        Gel coat takes on the tone of the laminate before it is through, for it hides less the thinner it is; a clear
        coat shows nothing until it is gone, then dull base colour, primer, dip coat, metal.
        """
        x, y = canvas.camera.x[at], canvas.camera.y[at]
        depth = depth + F32(0.05) * self._uneven.at(x, y) * np.clip(depth * 2, 0, 1)
        albedo = canvas.albedo[at]
        coat, rough = np.ones(depth.shape, F32), np.zeros(depth.shape, F32)
        for layer in self._stack(canvas.scene.substrate, albedo, (x, y)):
            share = soft((depth - F32(layer.begins)) / F32(self.blunt * layer.edge))
            albedo = lerp(albedo, layer.colour, share[..., None])
            coat, rough = lerp(coat, F32(layer.coat), share), lerp(rough, F32(layer.rough), share)
        canvas.albedo[at] = albedo
        canvas.coat[at] *= coat
        canvas.alpha[at] = np.hypot(canvas.alpha[at], rough)

    def _stack(self, substrate: str, film: Floats, places: tuple[Floats, Floats]) -> tuple[_Layer, ...]:
        if substrate == "clear_coat":
            return (
                _Layer(BARE, 0.03, film * F32(0.92) + F32(0.010), 0.20, 0.16),
                _Layer(1.35, 0.05, PRIMER, 0.06, 0.30),
                _Layer(2.05, 0.03, ECOAT, 0.22, 0.14),
                _Layer(2.22, 0.03, METAL * (F32(0.85) + F32(0.3) * self.strands(*places)[..., None]), 0.40, 0.10),
            )
        strands = self.strands(*places)[..., None]
        laminate = lerp(RESIN, GLASS, strands)
        if substrate == "topcoat_2k":
            return (
                _Layer(0.88, 0.06, lerp(film, BUFF, F32(0.35)), 0.60, 0.06),
                _Layer(BARE, 0.03, BUFF, 0.08, 0.28),
                _Layer(1.80, 0.05, laminate, 0.12, 0.24),
            )
        tone = lerp(RESIN, GLASS, F32(0.4))
        return (
            _Layer(0.62, 0.16, lerp(film, tone, F32(0.16)), 0.80, 0.03),
            _Layer(0.88, 0.08, lerp(film, tone, F32(0.55)), 0.45, 0.08),
            _Layer(BARE, 0.04, lerp(tone, film, F32(0.06)) * F32(0.94), 0.22, 0.18),
            _Layer(1.22, 0.10, laminate, 0.12, 0.24),
        )
