"""What weather does to colour: pigment that is lost."""

from __future__ import annotations

from typing import Any

import numpy as np

from courses.pictures.arrays import F32, Floats

__all__ = ["bleached"]


def bleached(albedo: Floats, loss: Any) -> Floats:
    """Return the colour of a paint that lost a share ``loss`` (0..1) of its colouring pigment, white pigment left
    alone.

    Kubelka and Munk for an opaque film: absorption over scattering is (1 - R)² / 2R, and absorption falls with the
    pigment that is gone (from memory). White hardly changes; red turns pink, navy turns a milky blue.

    >>> red = np.array([0.40, 0.02, 0.02], F32)
    >>> [round(float(value), 2) for value in bleached(red, 0.8)]
    [0.66, 0.09, 0.09]
    >>> round(float(bleached(np.array([0.85], F32), 0.8)[0]), 2)
    0.93
    """
    base = np.clip(albedo, F32(0.004), F32(0.996))
    ratio = (1 - base) ** 2 / (2 * base) * (1 - np.asarray(loss, F32))
    return np.asarray(1 + ratio - np.sqrt(ratio * ratio + 2 * ratio), F32)
