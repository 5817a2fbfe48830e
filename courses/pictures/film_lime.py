"""Bird-lime: a blot that ate into the film, with a swollen rim; where it went deep, the film within it wrinkled and
broke."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.random import Generator

from courses.pictures.arrays import F32, Floats, Mask, soft
from courses.pictures.blots import Blots, Reals, lobed
from courses.pictures.camera import Camera, Window
from courses.pictures.canvas import Canvas
from courses.pictures.kind import Kind
from courses.pictures.noise import Field
from courses.pictures.plate import Plate
from courses.pictures.scene import Defect

__all__ = ["BIRD_LIME", "Splashes"]

ACID = (0.16, 0.20, 0.34)
"""Optical density of film that acid has dulled and yellowed, by eye."""
CRUST = (0.66, 0.65, 0.60)
"""Linear colour of what is left of the white, by eye."""


@dataclass(frozen=True)
class Splashes:
    """Blots, their satellites, and of each how hard it bit, 0 to 1."""

    defect: Defect
    plate: Plate
    blots: Blots
    force: Reals

    def mask(self, camera: Camera) -> Mask:
        """Return the pixels within the blots."""
        return camera.drawn(*self.blots.filled(0.62 * camera.pixel_mm, 0.8))


def _plan(defect: Defect, plate: Plate, rng: Generator) -> Splashes:
    hx, hy = plate.half
    size = float(np.clip(0.40 * min(hx, hy), 7.0, 24.0))
    left, top, right, low = plate.box
    many = int(np.clip(round(9 * (right - left) * (low - top)), 1, 6))
    u, v = rng.uniform(0.12, 0.88, (2, many))
    if many == 1:
        u, v = np.full(1, 0.5), np.full(1, 0.45)
    x, y = (np.asarray(value, float) for value in plate.at(u, v))
    radius = size * rng.uniform(0.55, 1.0, many)
    radius[0] = size
    large = _flung(rng, lobed(rng, x, y, radius, 5, 0.26, 0.14), radius, plate.angle)
    small = lobed(rng, *_satellites(rng, x, y, radius, 7), 6, 0.25, 0.16)
    columns = large.x.shape[1]
    pad = ((0, 0), (0, columns - small.x.shape[1]))
    both = Blots(
        np.vstack([large.x, np.pad(small.x, pad)]),
        np.vstack([large.y, np.pad(small.y, pad)]),
        np.vstack([large.r, np.pad(small.r, pad)]),
        large.melt,
    )
    within = plate.weight(both.x[:, 0], both.y[:, 0], 4.0, 0.0) > 0.4
    force = np.concatenate([np.ones(many), rng.uniform(0.3, 0.8, small.r.shape[0])])
    return Splashes(defect, plate, both.kept(within), force[within])


def _flung(rng: Generator, shapes: Blots, radius: Reals, angle: float) -> Blots:
    """Add the fingers of a splash, and a drip that ran down from it."""
    n, fingers, links = radius.size, 5, 8
    turn = rng.uniform(0, 2 * np.pi, (n, fingers, 1))
    reach = rng.uniform(1.0, 1.45, (n, fingers, 1)) * np.linspace(0.7, 1, 3)
    wide = rng.uniform(0.10, 0.20, (n, fingers, 1)) * np.array([1.2, 0.9, 1.0])
    fx, fy = (reach * np.cos(turn)).reshape(n, -1), (reach * np.sin(turn)).reshape(n, -1)
    down = np.linspace(0.8, 1, links) * rng.uniform(1.5, 3.2, (n, 1))
    down = 0.8 + (down - 0.8) * np.linspace(0.1, 1, links)
    drip = np.where(rng.random((n, 1)) < 0.7, np.linspace(0.24, 0.13, links), 0.0)
    side = rng.uniform(-0.25, 0.25, (n, 1))
    dx, dy = side * np.cos(angle) - down * np.sin(angle), side * np.sin(angle) + down * np.cos(angle)
    scale = radius[:, None]
    return Blots(
        np.hstack([shapes.x, shapes.x[:, :1] + scale * fx, shapes.x[:, :1] + scale * dx]),
        np.hstack([shapes.y, shapes.y[:, :1] + scale * fy, shapes.y[:, :1] + scale * dy]),
        np.hstack([shapes.r, scale * wide.reshape(n, -1), scale * drip]),
        shapes.melt,
    )


def _satellites(rng: Generator, x: Reals, y: Reals, radius: Reals, each: int) -> tuple[Reals, Reals, Reals]:
    owner = np.repeat(np.arange(radius.size), each)
    turn, away = rng.uniform(0, 2 * np.pi, owner.size), rng.uniform(1.5, 2.8, owner.size) * radius[owner]
    size = radius[owner] * rng.uniform(0.05, 0.16, owner.size)
    return x[owner] + away * np.cos(turn), y[owner] + away * np.sin(turn), np.maximum(size, 0.8)


def _lay(plan: Splashes, canvas: Canvas) -> None:
    camera, reach = canvas.camera, plan.blots.reach
    skin = _Skin.of(plan)
    for nth in range(reach.size):
        x, y = float(plan.blots.x[nth, 0]), float(plan.blots.y[nth, 0])
        window = camera.window(x, y, float(reach[nth]) + 4.0)
        if window is not None:
            share = _bite(plan, canvas, window, nth, skin)
            if skin.broken > 0:
                _wrinkle(canvas, window.at, share * F32(skin.broken), skin)


@dataclass(frozen=True)
class _Skin:
    """The noise of one defect's blots, made once: a ragged outline, patches, and where it broke the ridges of its
    wrinkles."""

    ragged: Field
    patch: Field
    broken: float
    ridges: tuple[Field, ...]

    @classmethod
    def of(cls, plan: Splashes) -> _Skin:
        """The noise as deep as the marks go: below five micrometres nothing breaks."""
        broken = float(np.clip((plan.defect.depth_um - 5.0) / 25.0, 0, 1))
        ridges = plan.plate.field(3.0, 10.0, 84, slope=0.5).slopes() if broken > 0 else ()
        return cls(plan.plate.field(5, 26, 81), plan.plate.field(5, 22, 82), broken, ridges)


def _bite(plan: Splashes, canvas: Canvas, window: Window, nth: int, skin: _Skin) -> Floats:
    """Dish the film within one blot, swell its rim and dull it; return how much of its core was eaten, for it to
    break."""
    camera, at, severity = canvas.camera, window.at, plan.defect.severity
    into = plan.blots.inside(nth, window.dx, window.dy)
    x, y = camera.x[at], camera.y[at]
    deep = into.deep + F32(0.45) * skin.ragged.at(x, y)
    left = canvas.left(max(plan.defect.depth_um, 0.1))[at] * F32(plan.force[nth])
    width = max(1.5, 0.9 * camera.pixel_mm)
    core, bank = soft(deep / F32(0.6 * width)), np.exp(-(((deep - F32(0.4)) / F32(width)) ** 2))
    swell = np.exp(-(((deep + F32(0.9 * width)) / F32(0.7 * width)) ** 2))
    # a dish is seldom steeper than a few degrees at its bank; the swollen film outside it rises a third as much
    tilt = F32(min(0.10, plan.defect.depth_um * 1e-3 / width + 0.004)) * left
    lean = tilt * (bank + F32(0.8) * swell * (deep + F32(0.9 * width)) / F32(width))
    canvas.nx[at] += lean * into.gx
    canvas.ny[at] += lean * into.gy
    dull = left * F32(0.06 + 0.94 * severity)
    cloud = skin.patch.at(x, y)
    patch = F32(1) + F32(0.18) * cloud
    pooled = core * (F32(0.55) + F32(0.45) * bank) + F32(0.25) * bank
    canvas.coat[at] *= 1 - np.clip(F32(0.78) * dull * pooled * patch, 0, 0.95)
    canvas.alpha[at] = np.hypot(canvas.alpha[at], F32(0.30) * dull ** F32(1.4) * core * patch)
    canvas.halo[at] += F32(0.02) * dull * core
    stain = dull * (core * F32(0.55) * patch + F32(0.45) * bank)
    crust = dull * core * np.clip(cloud - F32(0.9), 0, 1) * F32(0.22)
    albedo = canvas.albedo[at] * np.exp(-np.asarray(ACID, F32) * stain[..., None])
    canvas.albedo[at] = albedo + (np.asarray(CRUST, F32) - albedo) * crust[..., None]
    return left * core


def _wrinkle(canvas: Canvas, at: tuple[slice, slice], share: Floats, skin: _Skin) -> None:
    """Ridges a few millimetres apart like the skin on paint, and fine breaks between them."""
    x, y = canvas.camera.x[at], canvas.camera.y[at]
    across, down = skin.ridges
    canvas.nx[at] += F32(0.050) * share * across.at(x, y)
    canvas.ny[at] += F32(0.050) * share * down.at(x, y)
    # coarse pixels see wider breaks, but no more of them
    wide = max(0.09, 0.15 * canvas.camera.pixel_mm)
    lines = (skin.ragged.at(x, y), skin.patch.at(x, y), skin.ragged.at(x, y) - F32(1.0), skin.patch.at(x, y) + F32(1.0))
    near = np.min(np.abs(lines), axis=0)
    broken = np.exp(-((near / F32(wide)) ** 2)) * F32(0.75 * 0.09 / wide)
    canvas.dark[at] = np.maximum(canvas.dark[at], share * broken)


BIRD_LIME = Kind(_plan, Splashes.mask, _lay)
