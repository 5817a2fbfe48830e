"""What sets kinds apart in the picture: numbers worked out from the change a defect makes, about the lamp's image.

They need the twin without the defect, which no trainee sees: they show that pictures differ, not that people can
tell them apart.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from courses.pictures.arrays import F32, Floats, blur

__all__ = ["Centre", "band_energy", "centroid", "glint_geometry", "glints"]

Centre = tuple[float, float]
"""A place in a picture, fractions from the upper left."""
RING = (50 / 960, 260 / 960)
"""Inner and outer radius about the lamp's image that is looked at, in widths of the picture."""
SECTORS = 24


@dataclass(frozen=True)
class _Polar:
    """Distance from the lamp's image in pixels, direction from it, and the ring that is looked at."""

    r: Floats
    x: Floats
    y: Floats
    ring: np.ndarray[tuple[int, ...], np.dtype[np.bool_]]


def _polar(shape: tuple[int, int], centre: Centre) -> _Polar:
    h, w = shape
    x, y = (np.arange(w) - centre[0] * w)[None, :], (np.arange(h) - centre[1] * h)[:, None]
    x, y = (np.broadcast_to(one, shape).astype(F32) for one in (x, y))
    r = np.hypot(x, y)
    return _Polar(r, x, y, (r > RING[0] * w) & (r < RING[1] * w))


def glints(change: Floats) -> Floats:
    """The fine part of a change of L*: what is left when slow changes, as of a veil, are taken away."""
    scale = change.shape[1] / 960
    return change - blur(change, max(1.0, 5 * scale))


def glint_geometry(change: Floats, centre: Centre) -> tuple[float, float]:
    """(tangency, evenness) of the fine marks in a change of L* about the lamp's image.

    Tangency: the mean of cos 2(angle between gradient and radius), weighted by energy: 1 where every mark runs round
    the lamp. Evenness: entropy of the energy over 24 sectors, 1 where every direction from the lamp glints alike.
    """
    polar = _polar((change.shape[0], change.shape[1]), centre)
    gy, gx = np.gradient(blur(glints(change), 0.8))
    gx, gy, x, y = (np.asarray(one)[polar.ring] for one in (gx, gy, polar.x, polar.y))
    energy = gx * gx + gy * gy
    turn = 2 * (np.arctan2(gy, gx) - np.arctan2(y, x))
    sector = ((np.arctan2(y, x) + np.pi) / (2 * np.pi) * SECTORS).astype(int) % SECTORS
    capped = np.minimum(energy, np.percentile(energy, 99.8))
    share = np.bincount(sector, capped, SECTORS) / np.maximum(np.bincount(sector, minlength=SECTORS), 1)
    share = share / max(float(share.sum()), 1e-12)
    entropy = -(share * np.log(share + 1e-12)).sum() / np.log(SECTORS)
    return float((energy * np.cos(turn)).sum() / max(float(energy.sum()), 1e-12)), float(entropy)


def band_energy(change: Floats, centre: Centre) -> float:
    """How patchy the glints are once their mean round the lamp is taken out: spread over mean, in the ring.

    Rings of hair lines are alike all round; the trails of a machine are bright here and dark there.
    """
    h, w = change.shape
    polar = _polar((h, w), centre)
    local = blur(np.abs(glints(change)), 8 * w / 960)
    step = np.minimum((polar.r * (48 / w)).astype(int), 95)
    rings = np.bincount(step.ravel(), local.ravel(), 96) / np.maximum(np.bincount(step.ravel(), minlength=96), 1)
    mean = rings[step].astype(F32)
    relative = (local - mean)[polar.ring] / np.maximum(mean[polar.ring], 1e-3)
    return float(np.sqrt((relative**2).mean()))


def centroid(change: Floats) -> Centre:
    """Where the energy of a change of L* lies, fractions of the picture."""
    h, w = change.shape
    energy = np.square(glints(change).astype(np.float64))
    energy[energy < 25 * np.median(energy)] = 0
    total = max(float(energy.sum()), 1e-12)
    x = (energy.sum(axis=0) * (np.arange(w) + 0.5)).sum() / (w * total)
    y = (energy.sum(axis=1) * (np.arange(h) + 0.5)).sum() / (h * total)
    return float(x), float(y)
