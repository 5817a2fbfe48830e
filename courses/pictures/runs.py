"""Streaks that begin somewhere and go one way: run-off down a side, drips of rust, smears of a cloth."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.random import Generator

from courses.pictures.arrays import F32, Floats

__all__ = ["Runs", "runs"]

STEP_MM = 0.3
"""Distance between two places of the profile across the streaks."""


@dataclass(frozen=True)
class Runs:
    """Streaks as a profile across them, from ``first`` mm on: how strong, where each begins and how far it reaches,
    mm."""

    first: float
    strength: Floats
    begin: Floats
    reach: Floats
    sway: tuple[float, float, float]
    fade: float
    head: float

    def at(self, across: Any, along: Any) -> Floats:
        """Return how much streak lies at places ``across`` and ``along`` the streaks, mm; 0 where there is none."""
        swing, one, two = self.sway
        shift = swing * (
            np.sin(along / F32(57.0) + F32(one) + across / F32(83.0)) + 0.6 * np.sin(along / F32(19.0) + F32(two))
        )
        nth = ((across + shift - self.first) / STEP_MM).astype(np.int32)
        nth = np.clip(nth, 0, self.strength.size - 1)
        share = (along - self.begin[nth]) / self.reach[nth]
        head = np.clip(share * self.reach[nth] * F32(1 / self.head), 0, 1)
        tail = np.clip(1 - share, 0, 1) ** F32(self.fade)
        return np.asarray(self.strength[nth] * head * tail, F32)


def runs(
    rng: Generator,
    span_mm: tuple[float, float],
    count: int,
    width_mm: tuple[float, float],
    begin_mm: tuple[float, float],
    reach_mm: tuple[float, float],
    sway_mm: float = 0.6,
    sharp: float = 2.0,
    fade: float = 0.8,
    head_mm: float = 4.0,
) -> Runs:
    """Return ``count`` streaks spread by chance over ``span_mm`` across, each of a width, beginning and reach between
    two values.

    ``sharp`` 2 gives soft flanks, 6 nearly square ones; ``sway_mm`` is how far they wander; a small ``fade`` ends late
    and suddenly, ``head_mm`` is how long it takes to come up. How many, how wide and how far is chosen by eye.

    >>> streaks = runs(np.random.default_rng(1), (0.0, 100.0), 12, (2.0, 6.0), (0.0, 5.0), (40.0, 90.0))
    >>> lit = streaks.at(np.arange(100, dtype=F32), np.full(100, 20, F32))
    >>> bool(0 < lit.mean() < lit.max() <= 1)
    True
    """
    low, high = span_mm
    places = np.arange(low, high + STEP_MM, STEP_MM, dtype=F32)
    centre = rng.uniform(low, high, count).astype(F32)
    width = np.exp(rng.uniform(np.log(width_mm[0]), np.log(width_mm[1]), count)).astype(F32)
    force = rng.uniform(0.25, 1.0, count).astype(F32)
    begin, reach = rng.uniform(*begin_mm, count).astype(F32), rng.uniform(*reach_mm, count).astype(F32)
    weight = np.exp(-(np.abs((places[:, None] - centre) / (width / 2)) ** sharp))
    share = weight * weight + F32(1e-9)
    total = share.sum(1)
    return Runs(
        low,
        (weight * force).max(1).astype(F32),
        (share @ begin / total).astype(F32),
        (share @ reach / total).astype(F32),
        (sway_mm, float(rng.uniform(0, 6.28)), float(rng.uniform(0, 6.28))),
        fade,
        head_mm,
    )
