"""What lies under the top of the film, from the outside in: thin film, base colour, primer, laminate or metal."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np

from courses.pictures.arrays import F32, Floats, lerp, soft
from courses.pictures.canvas import Canvas
from courses.pictures.plate import Plate

__all__ = ["BARE", "open_to"]

RESIN = np.array([0.235, 0.220, 0.130], F32)
GLASS = np.array([0.470, 0.450, 0.340], F32)
PRIMER = np.array([0.300, 0.300, 0.290], F32)
BUFF = np.array([0.400, 0.370, 0.300], F32)
ECOAT = np.array([0.030, 0.031, 0.032], F32)
METAL = np.array([0.300, 0.300, 0.305], F32)
"""Linear colours set by eye: polyester with glass, grey and buff primer, dark dip coat, sanded steel."""
BARE = 1.0
"""Depth at which the top of the film is gone; below it, the layers of a substrate follow."""


@dataclass(frozen=True)
class _Layer:
    """A layer reached at `begins` (depth, in films), and how sharply; its `colour`, mirror share and slope width."""

    begins: float
    edge: float
    colour: Any
    coat: float
    rough: float


def open_to(canvas: Canvas, plate: Plate, depth: Floats, at: tuple[slice, slice], stream: int = 80) -> None:
    """Open the film of the window `at` to `depth` there, in films: below 1 it only thins, above it layers show.

    Gel coat thins to the tone of the laminate before it is through (it hides less the thinner it is); a clear coat
    shows nothing until it is gone, then dull base colour, primer, dip coat, metal.
    """
    x, y = canvas.camera.x[at], canvas.camera.y[at]
    depth = depth + F32(0.035) * plate.field(2, 18, stream).at(x, y) * np.clip(depth * 2, 0, 1)
    albedo = canvas.albedo[at]
    layers = _stack(canvas, plate, albedo, (x, y), stream)
    coat, rough = np.ones(depth.shape, F32), np.zeros(depth.shape, F32)
    for layer in layers:
        share = soft((depth - F32(layer.begins)) / F32(layer.edge))
        albedo = lerp(albedo, layer.colour, share[..., None])
        coat, rough = lerp(coat, F32(layer.coat), share), lerp(rough, F32(layer.rough), share)
    canvas.albedo[at] = albedo
    canvas.coat[at] *= coat
    canvas.alpha[at] = np.hypot(canvas.alpha[at], rough)


def _stack(
    canvas: Canvas, plate: Plate, film: Floats, places: tuple[Floats, Floats], stream: int
) -> tuple[_Layer, ...]:
    substrate = canvas.scene.substrate
    if substrate == "clear_coat":
        base = film * F32(0.92) + F32(0.012)
        metal = METAL * (1 + F32(0.10) * plate.field(1, 6, stream + 1, stretch=(7.0, 1.0)).at(*places))[..., None]
        return (
            _Layer(BARE, 0.035, base, 0.22, 0.16),
            _Layer(1.32, 0.030, PRIMER, 0.07, 0.30),
            _Layer(1.95, 0.030, ECOAT, 0.25, 0.14),
            _Layer(2.20, 0.030, metal, 0.40, 0.10),
        )
    laminate = _laminate(plate, places, stream + 1)
    if substrate == "topcoat_2k":
        return (
            _Layer(0.90, 0.060, lerp(film, BUFF, 0.35), 0.60, 0.06),
            _Layer(BARE, 0.030, BUFF, 0.08, 0.28),
            _Layer(1.75, 0.050, laminate, 0.12, 0.24),
        )
    tone = lerp(RESIN, GLASS, F32(0.35))
    return (
        _Layer(0.55, 0.200, lerp(film, tone, 0.10), 0.90, 0.02),
        _Layer(0.84, 0.070, lerp(film, tone, 0.42), 0.60, 0.06),
        _Layer(BARE, 0.045, lerp(tone, film, F32(0.10)), 0.20, 0.20),
        _Layer(1.18, 0.060, laminate, 0.13, 0.24),
    )


def _laminate(plate: Plate, places: tuple[Floats, Floats], stream: int) -> Floats:
    """Chopped glass in resin: strands that cross in two directions."""
    one = plate.field(1.0, 9, stream, stretch=(6.0, 1.0), slope=0.4).at(*places)
    other = plate.field(1.0, 9, stream + 1, stretch=(1.0, 6.0), slope=0.4).at(*places)
    strands = soft(np.maximum(one, other) - F32(0.4))
    laminate: Floats = lerp(RESIN, GLASS, strands[..., None])
    return laminate
