"""Where drops of water stood and dried: round ones, drops that ran together, and some that broke and ran down."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.random import Generator

from courses.pictures.arrays import Mask
from courses.pictures.blots import Blots, Reals, lobed
from courses.pictures.camera import Camera
from courses.pictures.plate import Plate
from courses.pictures.scene import Defect

__all__ = ["Drops", "drops"]

CLUSTERS = 7
"""Bursts of spray over a whole panel, by eye."""
NEAR_MM = 1.0
"""The panel round a spot that belongs to it."""


@dataclass(frozen=True)
class Drops:
    """Dried drops on a region: their shapes, and of each how much it left behind, 0 to 1."""

    defect: Defect
    plate: Plate
    blots: Blots
    force: Reals

    def mask(self, camera: Camera) -> Mask:
        """Return the pixels of the spots."""
        return camera.drawn(*self.blots.filled(0.62 * camera.pixel_mm, NEAR_MM))


def drops(defect: Defect, plate: Plate, rng: Generator) -> Drops:
    """Plan the drops of a region; more severe means more of them, larger, and heavier.

    Sizes are log-normal with a median of 2.2 to 3 mm; a fifth has run into a neighbour, a tenth of the large ones has
    run
    down. All of it is chosen by eye.
    """
    most = int(plate.area_mm2 * 0.0040)
    x, y = _sprayed(plate, rng, most)
    radius = np.clip(rng.lognormal(0.80, 0.50, most), 0.8, 9.0) * (0.85 + 0.35 * defect.severity)
    force = rng.uniform(0.25, 1.0, most) * rng.uniform(0.6, 1.0, most)
    shapes = _run_down(rng, _merged(rng, lobed(rng, x, y, radius, 3, 0.16, 0.10), radius), radius, plate.angle)
    chosen = rng.random(most) < np.asarray(plate.weight(x, y, 16.0, 8.0))
    chosen &= np.arange(most) < most * (0.10 + 0.90 * defect.severity)
    return Drops(defect, plate, shapes.kept(chosen), force[chosen])


def _sprayed(plate: Plate, rng: Generator, most: int) -> tuple[Reals, Reals]:
    """Places of which two in five stand in bursts, each burst wider than high."""
    x, y = (np.asarray(value, float) for value in plate.scatter(rng, most))
    cx, cy = plate.scatter(rng, CLUSTERS)
    which = rng.integers(0, CLUSTERS, most)
    burst = rng.random(most) < 0.4
    half = plate.half
    bx = cx[which] + rng.normal(0, 0.22, most) * min(half[0], 220)
    by = cy[which] + rng.normal(0, 0.16, most) * min(half[1], 220)
    return np.where(burst, bx, x), np.where(burst, by, y)


def _merged(rng: Generator, shapes: Blots, radius: Reals) -> Blots:
    """Let a fifth of them flow together with another drop, some with two."""
    n = radius.size
    turn, size = rng.uniform(0, 2 * np.pi, (n, 2)), rng.uniform(0.55, 0.95, (n, 2))
    met = np.stack([rng.random(n) < 0.20, rng.random(n) < 0.06], 1)
    away = radius[:, None] * (1 + size) * rng.uniform(0.62, 0.88, (n, 2))
    return Blots(
        np.hstack([shapes.x, shapes.x[:, :1] + away * np.cos(turn)]),
        np.hstack([shapes.y, shapes.y[:, :1] + away * np.sin(turn)]),
        np.hstack([shapes.r, np.where(met, radius[:, None] * size, 0.0)]),
        shapes.melt,
    )


def _run_down(rng: Generator, shapes: Blots, radius: Reals, angle: float) -> Blots:
    """Let some of the large ones have come down: the trail above them thins and wavers, as a drop loses water on its
    way."""
    n, links = radius.size, 22
    ran = (radius > 2.8) & (rng.random(n) < 0.11)
    long = radius * rng.uniform(3.0, 8.0, n)
    share = np.linspace(0.06, 1, links)
    width = (0.62 - 0.42 * share**0.6) * rng.uniform(0.8, 1.15, (n, links))
    sway = np.cumsum(rng.normal(0, 0.045, (n, links)), 1) * radius[:, None]
    up = -long[:, None] * share
    return Blots(
        np.hstack([shapes.x, shapes.x[:, :1] + sway * np.cos(angle) - up * np.sin(angle)]),
        np.hstack([shapes.y, shapes.y[:, :1] + sway * np.sin(angle) + up * np.cos(angle)]),
        np.hstack([shapes.r, np.where(ran[:, None], radius[:, None] * width, 0.0)]),
        shapes.melt,
    )
