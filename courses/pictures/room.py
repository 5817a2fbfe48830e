"""What the gloss mirrors besides the lamp: a tent of soft boxes by daylight, a dim workshop by lamplight."""

from __future__ import annotations

from typing import Any

import numpy as np

from courses.pictures.arrays import F32, Floats, soft

__all__ = ["AMBIENT", "TINTS", "mirrored", "mirrored_widely"]

CEILING = 2300.0
"""Height of everything bright, mm above the panel."""
TINTS = {"diffuse": (1.0, 0.99, 0.965), "point": (1.0, 0.93, 0.82), "raking": (1.0, 0.93, 0.82)}
"""Colour of the room's light."""
AMBIENT = {"diffuse": 1.7, "point": 0.030, "raking": 0.040}
"""How much of it falls on the panel, against 1 for the lamp at its usual distance."""

# middle x, y and half width, height in mm on the ceiling; how bright; how soft its edge is
_TENT = (
    (-520, -1500, 620, 1350, 1.05, 2.5),
    (1150, -1450, 620, 1300, 0.95, 2.5),
    *tuple((330, -2600 + 640 * step, 30, 250, 2.1, 1.0) for step in range(4)),
)
_SHOP = (
    *tuple((-700 + 1500 * step, -3000, 26, 520, 0.10, 1.5) for step in range(3)),
    (200, 700, 900, 600, 0.012, 10.0),
    (-900, -700, 170, 240, 0.020, 1.3),
    (-900, -160, 170, 240, 0.016, 1.3),
)


def _rect(qx: Any, qy: Any, edge: Any, box: tuple[float, ...]) -> Floats:
    cx, cy, half_x, half_y, bright, softness = box
    soften = edge * F32(softness)
    across = soft((F32(half_x) - np.abs(qx - F32(cx))) / soften)
    return F32(bright) * across * soft((F32(half_y) - np.abs(qy - F32(cy))) / soften)


def mirrored(light: str, place: tuple[Floats, Floats], ray: tuple[Floats, Floats, Floats], alpha: Any) -> Floats:
    """The radiance of the room where mirrored rays end, blurred by the gloss ``alpha``."""
    rx, ry, rz = ray
    rz = np.maximum(rz, F32(0.05))
    reach = F32(CEILING) / rz
    qx, qy = place[0] + rx * reach, place[1] + ry * reach
    edge = F32(34) + 2 * alpha * reach
    horizon = soft((rz - F32(0.42)) / (F32(0.05) + 2 * alpha))
    if light == "diffuse":
        seen = F32(0.035) + F32(0.10) * horizon
        for box in _TENT:
            seen += _rect(qx, qy, edge, box)
        body = np.exp(-(((qx - F32(700)) * F32(1 / 330)) ** 2 + ((qy + F32(250)) * F32(1 / 420)) ** 2))
        return seen * (1 - F32(0.72) * body)
    seen = F32(0.004) + F32(0.008) * horizon
    for box in _SHOP:
        seen += _rect(qx, qy, edge, box)
    return seen


def mirrored_widely(light: str) -> float:
    """The radiance that steep flanks of fine marks throw to the eye: an average over the room."""
    return 0.24 if light == "diffuse" else 0.012
