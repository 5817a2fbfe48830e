"""What a clear film does with light: how much its surface reflects, and the colours of a thin film on it."""

from __future__ import annotations

import math
from typing import Any

import numpy as np

from courses.pictures.arrays import F32, Floats

__all__ = ["fresnel", "interference"]

WAVES_UM = np.array([0.610, 0.545, 0.455], F32)
"""Middle wavelengths of red, green and blue, µm."""
FILM_INDEX = 1.45
"""Refractive index of a cured coating."""


def fresnel(cos: Any, index: float) -> Any:
    """The share of unpolarised light mirrored by a film of refractive ``index``, ``cos`` of the angle from square on.

    Fresnel's equations for a dielectric.

    >>> round(float(fresnel(np.float64(1.0), 1.5)), 4)
    0.04
    """
    inside = np.sqrt(1 - (1 - cos * cos) * (1 / index**2))
    s = (cos - index * inside) / (cos + index * inside)
    p = (inside - index * cos) / (inside + index * cos)
    return (s * s + p * p) / 2


def interference(film_um: Floats, share: Floats, cos: Floats) -> Floats:
    """By how much a thin film changes what each of red, green and blue is mirrored, (…, 3).

    Two beams, from the upper and lower side of the film; thicker films lose their colours, as the wavelengths of each
    primary spread. The swing is larger than two such indices give: an eye searches for it, a picture is glanced at.
    """
    inside = np.sqrt(1 - (1 - cos * cos) / FILM_INDEX**2)
    phase = (4 * math.pi * FILM_INDEX) * (film_um * inside)[..., None] / WAVES_UM
    sharp = np.exp(F32(-0.405) * film_um * film_um)
    swing = (F32(0.34) * share * sharp)[..., None] * np.cos(phase)
    return np.asarray(1 + swing - (F32(0.22) * share)[..., None], F32)
