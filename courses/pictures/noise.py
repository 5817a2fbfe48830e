"""Noise that lies on the panel: cloudy, streaky or grainy, always at the same place for the same random stream."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

import numpy as np

from courses.pictures.arrays import F32, Floats, lerp
from courses.pictures.camera import Camera

__all__ = ["Field", "field"]

PERIOD = 768.0
"""Mm after which the noise repeats."""
KEPT = 6
"""Fields kept in memory, at most 4 MB each: a twin lies on the same noise as its panel."""


@dataclass(frozen=True, eq=False)
class Field:
    """A square of periodic values, one `PERIOD` wide, laid on the panel again and again."""

    tile: Floats

    def on(self, camera: Camera) -> Floats:
        """The values under each pixel, (h, w)."""
        n, per_mm = len(self.tile), F32(len(self.tile) / PERIOD)
        # rows of pixels lie level on the panel: mix two rows of values first, then go along each
        down = camera.y[:, 0] * per_mm
        row = np.floor(down).astype(np.int32)
        laid = np.asarray(lerp(self.tile[row % n], self.tile[(row + 1) % n], (down - row)[:, None]), F32)
        across = camera.x * per_mm
        left = np.floor(across)
        across -= left
        first, last = int(left.min()), int(left.max())
        laid = np.take(laid, np.arange(first, last + 2) % n, axis=1)
        index = left.astype(np.int32) - np.int32(first)
        index += (np.arange(len(index), dtype=np.int32) * np.int32(laid.shape[1]))[:, None]
        flat = laid.reshape(-1)
        out = flat[index]
        index += 1
        out += (flat[index] - out) * across
        return np.asarray(out, F32)

    def at(self, x: Any, y: Any) -> Floats:
        """The values at any places on the panel."""
        n = len(self.tile)
        fx, fy = np.asarray(x) * (n / PERIOD), np.asarray(y) * (n / PERIOD)
        i, j = np.floor(fx).astype(int), np.floor(fy).astype(int)
        wx, wy = fx - i, fy - j
        right, low = (i + 1) % n, (j + 1) % n
        i, j = i % n, j % n
        upper = lerp(self.tile[j, i], self.tile[j, right], wx)
        return np.asarray(lerp(upper, lerp(self.tile[low, i], self.tile[low, right], wx), wy), F32)

    @lru_cache(maxsize=2)  # noqa: B019  a field is a value, and at most two are held
    def slopes(self) -> tuple[Field, Field]:
        """How steeply the values rise to the right and down, each scaled to a root mean square of 1 over both axes."""
        n = len(self.tile)
        spectrum = np.fft.rfft2(self.tile)
        right = np.fft.irfft2(spectrum * (2j * np.pi * np.fft.rfftfreq(n)[None, :]), (n, n))
        down = np.fft.irfft2(spectrum * (2j * np.pi * np.fft.fftfreq(n)[:, None]), (n, n))
        norm = np.sqrt((right**2 + down**2).mean() / 2) + 1e-12
        return Field((right / norm).astype(F32)), Field((down / norm).astype(F32))


def field(
    stream: Sequence[int], lo_mm: float, hi_mm: float, stretch: tuple[float, float] = (1.0, 1.0), slope: float = 1.3
) -> Field:
    """Noise with waves between ``lo_mm`` and ``hi_mm``, mean 0, spread 1; longer waves are stronger by ``slope``.

    ``stretch`` makes its features so many times longer to the right and down. ``stream`` seeds it.

    >>> round(float(field([1, 2], 20, 100).tile.std()), 3)
    1.0
    """
    return _made(tuple(stream), lo_mm, hi_mm, stretch, slope)


@lru_cache(maxsize=KEPT)
def _made(stream: tuple[int, ...], lo_mm: float, hi_mm: float, stretch: tuple[float, float], slope: float) -> Field:
    n = 128
    while n < 1024 and PERIOD / n > lo_mm / 3.3:
        n *= 2
    white = np.random.default_rng(stream).standard_normal((n, n), dtype=F32)
    across = (np.fft.rfftfreq(n, PERIOD / n) * stretch[0])[None, :]
    down = (np.fft.fftfreq(n, PERIOD / n) * stretch[1])[:, None]
    k2 = (across**2 + down**2).astype(F32)
    gain = np.exp(k2 * F32(-1.2 * lo_mm**2)) * -np.expm1(k2 * F32(-1.2 * hi_mm**2))
    gain *= np.maximum(k2, F32(1e-6)) ** F32(-0.5 * slope)
    tile = np.fft.irfft2(np.fft.rfft2(white) * gain, (n, n))
    return Field((tile / (tile.std() + 1e-9)).astype(F32))
