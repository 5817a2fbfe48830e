"""Colour by the formulas of the CIE: sRGB to linear light, luminance, lightness L*."""

from __future__ import annotations

from typing import Any

import numpy as np

from courses.pictures.arrays import F32, Floats

__all__ = ["LUMA", "lightness", "to_linear"]

LUMA = np.array([0.2126, 0.7152, 0.0722], F32)
"""Share of each sRGB primary in luminance (IEC 61966-2-1)."""


def _linear_table() -> Floats:
    c = np.arange(256) / 255
    return np.where(c <= 0.04045, c / 12.92, ((c + 0.055) / 1.055) ** 2.4).astype(F32)


_LINEAR = _linear_table()


def to_linear(srgb: Any) -> Floats:
    """Linear light 0..1 of sRGB values 0..255, by IEC 61966-2-1; fractions of a level are dropped.

    >>> [round(float(value), 4) for value in to_linear([0, 128, 255])]
    [0.0, 0.2159, 1.0]
    """
    return _LINEAR[np.asarray(srgb).astype(np.uint8)]


def lightness(srgb: Any) -> Floats:
    """L* (CIE 1976) 0..100 of sRGB pixels 0..255, whose last axis is red, green, blue.

    >>> round(float(lightness([119, 119, 119])), 1)
    50.0
    """
    y = to_linear(srgb) @ LUMA
    return np.where(y > 216 / 24389, 116 * np.cbrt(y) - 16, F32(24389 / 27) * y).astype(F32)
