"""Noise that lies on the panel: cloudy, streaky or grainy, always at the same place for the same random stream."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np
from PIL import Image

from courses.pictures.arrays import F32, Floats, lerp
from courses.pictures.camera import Camera

__all__ = ["Field", "field"]

PERIOD = 768.0
"""Mm after which the noise repeats."""


@dataclass(frozen=True)
class Field:
    """A square of periodic values, one `PERIOD` wide, laid on the panel again and again."""

    tile: Floats

    def on(self, camera: Camera) -> Floats:
        """The values under each pixel, (h, w)."""
        n, w = len(self.tile), camera.size[0]
        per_mm = n / PERIOD
        x, y = camera.stand.to_panel(np.array([0.0, 1.0, 0.0, 1.0]), np.array([0.0, 0.0, 1.0, 1.0]))
        left, top = (int(np.floor(at.min() * per_mm)) - 3 for at in (x, y))
        right, low = (int(np.ceil(at.max() * per_mm)) + 4 for at in (x, y))
        laid = self.tile[np.arange(top, low)[:, None] % n, np.arange(left, right)[None, :] % n]
        a, b, c, d, e, f, g, h = camera.stand.homography(w)
        # the first value stands for the place (0, 0) mm; Pillow counts from the corner of a pixel
        dx, dy = 0.5 - left, 0.5 - top
        turn = [
            *(a * per_mm + g * dx, b * per_mm + h * dx, c * per_mm + dx),
            *(d * per_mm + g * dy, e * per_mm + h * dy, f * per_mm + dy),
            *(g, h),
        ]
        source = Image.fromarray(np.ascontiguousarray(laid, F32))
        seen = source.transform(camera.size, Image.Transform.PERSPECTIVE, turn, Image.Resampling.BICUBIC)
        return np.array(seen, F32)

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
    n = 128
    while n < 1024 and PERIOD / n > lo_mm / 4:
        n *= 2
    white = np.random.default_rng(list(stream)).standard_normal((n, n), dtype=F32)
    across = (np.fft.rfftfreq(n, PERIOD / n) * stretch[0])[None, :]
    down = (np.fft.fftfreq(n, PERIOD / n) * stretch[1])[:, None]
    k2 = (across**2 + down**2).astype(F32)
    gain = np.exp(k2 * F32(-1.2 * lo_mm**2)) * -np.expm1(k2 * F32(-1.2 * hi_mm**2))
    gain *= np.maximum(k2, F32(1e-6)) ** F32(-0.5 * slope)
    tile = np.fft.irfft2(np.fft.rfft2(white) * gain, (n, n))
    return Field((tile / (tile.std() + 1e-9)).astype(F32))
