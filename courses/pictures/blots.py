"""Round-edged shapes of several lobes that flow into one another: dried drops, splashes, blots."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.random import Generator
from numpy.typing import NDArray

from courses.pictures.arrays import F32, Floats

__all__ = ["Blots", "Inside", "lobed"]

Reals = NDArray[np.float64]


@dataclass(frozen=True)
class Inside:
    """How deep places lie within a blot: ``deep`` mm (below 0 outside), and the way in, ``gx`` and ``gy``, of length
    up to 1."""

    deep: Floats
    gx: Floats
    gy: Floats


@dataclass(frozen=True)
class Blots:
    """Many blots at once: lobes ``x``, ``y``, ``r`` (n, lobes) in mm on the panel, and how far each reaches from its
    first lobe.

    A lobe of radius 0 is none. ``melt`` is how softly lobes flow together, as a share of the first lobe's radius.
    """

    x: Reals
    y: Reals
    r: Reals
    melt: float

    @property
    def reach(self) -> Reals:
        """How far each blot goes from the middle of its first lobe, mm."""
        far = np.hypot(self.x - self.x[:, :1], self.y - self.y[:, :1]) + self.r
        return np.asarray(np.where(self.r > 0, far, 0).max(1) + self.melt * self.r[:, 0])

    def inside(self, nth: int, dx: Any, dy: Any) -> Inside:
        """Return how deep places lie in blot ``nth``; ``dx`` and ``dy`` are mm from the middle of its first lobe."""
        soft_mm = F32(max(0.05, self.melt * float(self.r[nth, 0])))
        total = np.zeros(np.shape(dx), F32)
        gx, gy = np.zeros_like(total), np.zeros_like(total)
        for lobe in np.flatnonzero(self.r[nth] > 0):
            ox = dx - F32(self.x[nth, lobe] - self.x[nth, 0])
            oy = dy - F32(self.y[nth, lobe] - self.y[nth, 0])
            away = np.sqrt(ox * ox + oy * oy) + F32(1e-3)
            pull = np.exp(np.clip((F32(self.r[nth, lobe]) - away) / soft_mm, -40, 40))
            total += pull
            gx -= pull * ox / away
            gy -= pull * oy / away
        return Inside(soft_mm * np.log(total), np.asarray(gx / total, F32), np.asarray(gy / total, F32))

    def filled(self, spacing_mm: float, grow_mm: float = 0.0) -> tuple[Reals, Reals]:
        """Return places that fill every lobe, made ``grow_mm`` wider, no further apart than about ``spacing_mm``."""
        used = self.r > 0
        x, y, r = self.x[used], self.y[used], self.r[used] + grow_mm
        many = np.maximum(1, np.ceil(4.5 * (r / spacing_mm) ** 2 + 3 * r / spacing_mm).astype(int))
        lobe = np.repeat(np.arange(r.size), many)
        nth = np.arange(lobe.size) - np.repeat(np.cumsum(many) - many, many)
        out = r[lobe] * np.sqrt((nth + 0.5) / many[lobe])
        turn = nth * 2.399963
        return x[lobe] + out * np.cos(turn), y[lobe] + out * np.sin(turn)

    def kept(self, which: NDArray[np.bool_]) -> Blots:
        """Return those of them that ``which`` (n) marks."""
        return Blots(self.x[which], self.y[which], self.r[which], self.melt)


def lobed(rng: Generator, x: Any, y: Any, radius_mm: Any, lobes: int, uneven: float, melt: float) -> Blots:
    """Return a blot of about ``radius_mm`` at each place: one round lobe and ``lobes`` smaller ones that bulge its
    edge.

    ``uneven`` is how far the bulges stand out, as a share of the radius.

    >>> blots = lobed(np.random.default_rng(1), [10.0, 40.0], [10.0, 10.0], [5.0, 2.0], 4, 0.3, 0.2)
    >>> blots.r.shape, float(blots.inside(0, np.zeros(1, F32), np.zeros(1, F32)).deep[0]) > 3
    ((2, 5), True)
    """
    x, y, radius = (np.asarray(value, float) for value in (x, y, radius_mm))
    n = radius.size
    turn = rng.uniform(0, 2 * np.pi, (n, lobes))
    size = rng.uniform(0.45, 0.8, (n, lobes))
    away = np.maximum(0.0, 1 - size + uneven * rng.uniform(-0.6, 1.0, (n, lobes)))
    ones = np.ones((n, 1))
    return Blots(
        np.hstack([x[:, None] * ones, x[:, None] + radius[:, None] * away * np.cos(turn)]),
        np.hstack([y[:, None] * ones, y[:, None] + radius[:, None] * away * np.sin(turn)]),
        radius[:, None] * np.hstack([ones * 0.92, size]),
        melt,
    )
