"""Chips: film knocked out down to what lies below, with a bevelled wall, a bright rim and short cracks about it."""

from __future__ import annotations

from dataclasses import dataclass
from math import pi

import numpy as np
from numpy.random import Generator

from courses.pictures.arrays import F32, Floats, Mask, soft
from courses.pictures.camera import Camera
from courses.pictures.canvas import Canvas
from courses.pictures.fractures import Reals
from courses.pictures.kind import Kind
from courses.pictures.layers import Beneath
from courses.pictures.plate import Plate
from courses.pictures.scene import Defect

__all__ = ["CHIP", "Chip", "Chips"]

CORNERS = 720
"""Places round an outline at which its reach is known."""


@dataclass(frozen=True)
class Chip:
    """One chip: middle and mean radius (mm), reach by angle (1 on average), bevel, depth in films, lean of the blow."""

    x: float
    y: float
    radius: float
    outline: Reals
    bevel: float
    depth: float
    lean: float

    def rim(self, dx: Floats, dy: Floats) -> Floats:
        """Return the distance from the middle, 1 on the outline."""
        turn = np.arctan2(dy, dx)
        at = np.mod(turn * F32(CORNERS / (2 * pi)), CORNERS).astype(int) % CORNERS
        return np.asarray(np.hypot(dx, dy) / (F32(self.radius) * self.outline[at].astype(F32)), F32)

    def bed(self, q: Floats, turn: Floats) -> Floats:
        """Return how deep the film is knocked out, in films: a bevel that widens away from the blow, then a floor."""
        wide = F32(self.bevel) * (1 + F32(0.7) * np.cos(turn - F32(self.lean)))
        return np.asarray(F32(self.depth) * np.clip((1 - q) / wide, 0, 1) ** F32(0.8), F32)


@dataclass(frozen=True)
class Chips:
    """The chips of one region, the biggest first."""

    plate: Plate
    chips: tuple[Chip, ...]


def _plan(defect: Defect, plate: Plate, rng: Generator) -> Chips:
    room = min(plate.half)
    biggest = float(np.clip(0.72 * room, 1.5, 7 + 21 * defect.severity))
    x, y = plate.at(0.5 + rng.uniform(-0.05, 0.05), 0.5 + rng.uniform(-0.05, 0.05))
    chips = [_chip(rng, (float(x), float(y)), biggest, defect.severity)]
    more = 2 + round(5 * defect.severity)
    away = biggest * rng.uniform(1.25, 3.2, more)
    turn = rng.uniform(0, 2 * pi, more)
    small = np.clip(biggest * rng.lognormal(-2.0, 0.5, more), 0.5, 0.3 * biggest)
    for far, angle, radius in zip(away, turn, small, strict=True):
        place = (chips[0].x + far * float(np.cos(angle)), chips[0].y + far * float(np.sin(angle)))
        if plate.weight(np.array(place[0]), np.array(place[1]), feather_mm=2.0, rough_mm=0.0) > 0.9:
            chips.append(_chip(rng, place, float(radius), 0.6 * defect.severity))
    return Chips(plate, tuple(chips))


def _chip(rng: Generator, place: tuple[float, float], radius: float, severity: float) -> Chip:
    return Chip(
        *place,
        radius=radius,
        outline=_outline(rng),
        bevel=float(rng.uniform(0.34, 0.52)),
        depth=1.15 + 1.2 * severity,
        lean=float(rng.uniform(0, 2 * pi)),
    )


def _outline(rng: Generator) -> Reals:
    """Return the reach of a broken edge: a few scallops that meet in corners, with fine teeth."""
    turn = np.linspace(0, 2 * pi, CORNERS, endpoint=False)
    count = int(rng.integers(4, 9))
    corners = np.sort(rng.uniform(0, 0.8, count) + np.arange(count)) / count * 2 * pi
    reach = rng.uniform(0.64, 1.34, count)
    straight = np.interp(turn, corners, reach, period=2 * pi)
    gap = np.diff(np.append(corners, corners[0] + 2 * pi))
    nth = np.searchsorted(corners, turn, side="right") - 1
    within = np.mod(turn - corners[nth], 2 * pi) / gap[nth]
    scallop = 0.16 * gap[nth] * np.sin(pi * np.clip(within, 0, 1)) * rng.uniform(-0.7, 0.9, count)[nth]
    teeth = np.convolve(np.tile(rng.normal(0, 1, CORNERS), 3), np.hanning(31), "same")[CORNERS : 2 * CORNERS]
    return straight + scallop + 0.006 * teeth


def _mask(plan: Chips, camera: Camera) -> Mask:
    covered = np.zeros(camera.x.shape, bool)
    for chip in plan.chips:
        window = camera.window(chip.x, chip.y, 1.7 * chip.radius)
        if window is not None:
            covered[window.at] |= chip.rim(window.dx, window.dy) < 1.05
    return covered | camera.drawn(*np.array([(chip.x, chip.y) for chip in plan.chips]).T)


def _lay(plan: Chips, canvas: Canvas) -> None:
    beneath = Beneath(plan.plate)
    for chip in plan.chips:
        _knock_out(beneath, canvas, chip)
        _edge(canvas, chip)


def _knock_out(beneath: Beneath, canvas: Canvas, chip: Chip) -> None:
    pixel = canvas.camera.pixel_mm
    window = canvas.camera.window(chip.x, chip.y, 1.9 * chip.radius + 2 * pixel)
    if window is None:
        return
    at, dx, dy = window.at, window.dx, window.dy
    q, turn = chip.rim(dx, dy), np.arctan2(dy, dx)
    out = soft((1 - q) * F32(chip.radius / max(0.25, 0.5 * pixel)))
    bed = chip.bed(q, turn) * out
    wall = out * soft((F32(0.96 * chip.depth) - bed) * 12)
    floor = np.clip(out - wall, 0, 1)
    away = np.maximum(np.hypot(dx, dy), F32(0.05))
    # the wall falls to the middle in small shells; about the rim the film was lifted and let go
    shells = 1 + F32(0.5) * np.sin(q * F32(22) + 2 * np.sin(turn * 2 + F32(chip.lean)))
    lifted = np.exp(-(((q - 1.10) / 0.09) ** 2)) * (1 - out)
    slope = F32(0.035) * lifted - F32(0.22 + 0.10 * chip.depth) * wall * shells
    strands = beneath.strands(canvas.camera.x[at], canvas.camera.y[at])
    canvas.nx[at] += slope * dx / away - F32(0.14) * floor * np.gradient(strands, axis=1)
    canvas.ny[at] += slope * dy / away - F32(0.14) * floor * np.gradient(strands, axis=0)
    canvas.albedo[at] += F32(0.06) * lifted[..., None] * (F32(0.7) - canvas.albedo[at])
    # torn film is dull and full of cracks, so it scatters a little white
    canvas.albedo[at] += F32(0.07) * wall[..., None] * (F32(0.6) - canvas.albedo[at])
    canvas.coat[at] *= 1 - F32(0.65) * wall
    canvas.alpha[at] = np.hypot(canvas.alpha[at], F32(0.10) * wall)
    beneath.open_to(canvas, bed, at)
    foot = np.exp(-(((bed - F32(chip.depth)) / F32(0.10)) ** 2)) * wall
    canvas.dark[at] = np.maximum(canvas.dark[at], F32(0.5) * foot)


def _edge(canvas: Canvas, chip: Chip) -> None:
    """The broken rim glints piece by piece, and hair cracks run from it."""
    rng = canvas.rng
    step = 0.4 * canvas.camera.pixel_mm
    n = max(24, int(2 * pi * chip.radius / step))
    turn = np.linspace(0, 2 * pi, n, endpoint=False)
    reach = chip.radius * chip.outline[(turn * CORNERS / (2 * pi)).astype(int)]
    x, y = chip.x + reach * np.cos(turn), chip.y + reach * np.sin(turn)
    heading = np.arctan2(np.gradient(y), np.gradient(x))
    bright = np.clip(0.5 + 0.5 * np.sin(turn * 5 + rng.uniform(0, 6)) + rng.normal(0, 0.3, n), 0, 1.3)
    canvas.grooves.add(x, y, heading, step, 0.16 * bright, along=0.12, across=0.45, white=0.30)
    for _ in range(int(min(5, chip.radius / 2.5))):
        begin = int(rng.integers(0, n))
        length = chip.radius * rng.uniform(0.25, 0.8)
        way = np.arange(0, length, step)
        angle = turn[begin] + rng.normal(0, 0.35) + np.cumsum(rng.normal(0, 0.05, way.size))
        hair_x, hair_y = x[begin] + np.cumsum(np.cos(angle)) * step, y[begin] + np.cumsum(np.sin(angle)) * step
        canvas.grooves.add(hair_x, hair_y, angle, step, 0.22 * (1 - way / length), along=9.0, across=9.0, dark=0.8)


CHIP: Kind[Chips] = Kind(_plan, _mask, _lay)
