"""The arithmetic every part of a picture shares: types, smooth steps, mixing, blurring. All in float32."""

from __future__ import annotations

import math
from typing import Any

import numpy as np
from numpy.typing import NDArray

__all__ = ["F32", "Floats", "Mask", "blur", "grown", "lerp", "soft"]

F32 = np.float32
Floats = NDArray[np.float32]
Mask = NDArray[np.bool_]


def soft(x: Any) -> Floats:
    """A smooth step from 0 to 1 about ``x`` = 0, all of it within ±1.6.

    >>> [float(value) for value in soft([-1.6, 0.0, 1.6])]
    [0.0, 0.5, 1.0]
    """
    t = np.clip(np.asarray(x, F32) * F32(0.3125) + F32(0.5), 0, 1)
    return np.asarray(t * t * (3 - 2 * t), F32)


def lerp(a: Any, b: Any, t: Any) -> Any:
    """``a`` where ``t`` is 0, ``b`` where it is 1.

    >>> lerp(10.0, 20.0, 0.25)
    12.5
    """
    return a + (b - a) * t


def blur(picture: Floats, sd: float) -> Floats:
    """``picture`` blurred by a Gaussian of ``sd`` pixels, edges held; meant for a small ``sd``.

    >>> round(float(blur(np.eye(9, dtype=F32), 1.0)[4, 4]), 2)
    0.28
    """
    reach = max(1, math.ceil(2.6 * sd))
    weights = np.exp(-0.5 * (np.arange(-reach, reach + 1) / sd) ** 2)
    weights = (weights / weights.sum()).astype(F32)
    for axis in (0, 1):
        picture = _along(picture, weights, axis)
    return picture


def _along(picture: Floats, weights: Floats, axis: int) -> Floats:
    reach, n = len(weights) // 2, picture.shape[axis]
    edges = [(reach, reach) if at == axis else (0, 0) for at in range(picture.ndim)]
    padded = np.moveaxis(np.pad(picture, edges, mode="edge"), axis, 0)
    out = weights[reach] * padded[reach : reach + n]
    for step in range(1, reach + 1):
        near, far = padded[reach - step : reach - step + n], padded[reach + step : reach + step + n]
        out += weights[reach + step] * (near + far)
    return np.moveaxis(out, 0, axis)


def grown(mask: Mask, px: int) -> Mask:
    """``mask`` with every part made ``px`` pixels wider on each side.

    >>> int(grown(np.eye(1, 9, 4, dtype=bool), 2).sum())
    5
    """
    if px < 1:
        return mask
    out = mask
    for axis in (0, 1):
        sums = np.cumsum(np.moveaxis(out, axis, 0).astype(np.int32), axis=0)
        n = sums.shape[0]
        upper = sums[np.minimum(np.arange(n) + px, n - 1)]
        below = np.arange(n) - px - 1
        lower = np.where((below >= 0)[:, None], sums[np.maximum(below, 0)], 0)
        out = np.moveaxis(upper > lower, 0, axis)
    return out
