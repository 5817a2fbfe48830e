"""The lamp: a torch held over the panel by a hand, aimed near the middle, with a bright face, a dark rim and a beam."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Any

import numpy as np

from courses.pictures.arrays import F32, Floats, soft
from courses.pictures.camera import PANEL, Stand
from courses.pictures.canvas import CURVATURE
from courses.pictures.scene import Scene

__all__ = ["COLD", "Lamp", "lamp_for"]

COLD = (0.97, 1.0, 1.06)
"""Colour of the lamp's light."""
FACE_MM = 15.0
RIM_MM = 23.0
DEFOCUS_MM = 15.0
"""How soft the hand is: the lens is focused on the panel, not on what it mirrors."""
USUAL_MM = 520.0
"""Distance at which the middle of the beam gives an irradiance of 1."""
HEIGHTS = {"point": 520.0, "raking": 190.0}
_STREAM = 20


@dataclass(frozen=True)
class Lamp:
    """A torch at ``place`` (mm),
    pointing along ``aim``; ``arm`` is the direction of the hand in the plane of its face.
    """

    place: tuple[float, float, float]
    aim: tuple[float, float, float]
    arm: float

    def beam(self, lx: Any, ly: Any, lz: Any, distance: Any) -> Floats:
        """Irradiance on a surface that faces the lamp: bright middle, long shoulder, falling with distance."""
        off = 1 + (lx * F32(self.aim[0]) + ly * F32(self.aim[1]) + lz * F32(self.aim[2]))
        shape = F32(0.16) + F32(0.84) * np.exp(off * F32(-1 / 0.085))
        return np.asarray(shape * np.square(F32(USUAL_MM) / distance), F32)

    def face(self, place: tuple[Floats, Floats], ray: tuple[Floats, ...], alpha: Floats) -> tuple[Floats, Floats]:
        """What mirrored rays meet at the lamp:
        how much of its bright face, and how much room its body leaves to see.
        """
        ax, ay, az = (F32(value) for value in self.aim)
        x0, y0, z0 = (F32(value) for value in self.place)
        rx, ry, rz = ray
        ox, oy = x0 - place[0], y0 - place[1]
        reach = (ox * ax + oy * ay + z0 * az) / np.minimum(rx * ax + ry * ay + rz * az, F32(-0.02))
        reach = np.clip(reach, 0, 9000)
        ox, oy, oz = reach * rx - ox, reach * ry - oy, reach * rz - z0
        r = np.sqrt(ox * ox + oy * oy + oz * oz)
        smear = np.maximum(F32(0.9), F32(1.25) * alpha * reach)
        bright = (F32(0.5) + F32(0.5) * np.tanh((F32(FACE_MM) - r) / (F32(1.1) * smear))) / (
            1 + np.square(smear * F32(1 / FACE_MM))
        )
        return bright, 1 - F32(0.62) * self._body(ox, oy, r, smear)

    def _body(self, ox: Floats, oy: Floats, r: Floats, smear: Floats) -> Any:
        """The rim, the barrel and the hand that hide the room behind them, 0 to 1."""
        edge = smear + F32(DEFOCUS_MM)
        cos, sin = F32(math.cos(self.arm)), F32(math.sin(self.arm))
        out, side = ox * cos + oy * sin, oy * cos - ox * sin
        rim = soft((F32(RIM_MM) - r) / edge)
        barrel = soft((F32(17) - np.abs(side)) / edge) * soft(out / edge) * soft((F32(120) - out) / edge)
        # a fist round the barrel, and a sleeve that bends away at the wrist
        fist = soft((1 - np.hypot((out - 74) * F32(1 / 50), (side - 6) * F32(1 / 40))) * 44 / edge)
        past = np.maximum(out - 90, 0)
        bent = side - F32(0.0011) * past * np.minimum(past, 160)
        sleeve = soft((F32(29) + out * F32(0.06) - np.abs(bent)) / edge) * soft((out - F32(95)) / edge)
        return np.maximum(np.maximum(rim, barrel), np.maximum(fist, sleeve))


def lamp_for(scene: Scene, light: str, stand: Stand, at: tuple[float, float]) -> Lamp:
    """The lamp whose image stands ``at`` fractions of the picture in a clean panel of this scene."""
    x, y = (float(value) for value in stand.to_panel(at[0], at[1]))
    eye = np.array(stand.eye)
    view = eye - (x, y, 0.0)
    view /= np.linalg.norm(view)
    across, down = CURVATURE[scene.curve]
    normal = np.array([(x - PANEL[0] / 2) / across, (y - PANEL[1] / 2) / down, 1.0])
    normal /= np.linalg.norm(normal)
    ray = 2 * (normal @ view) * normal - view
    place = np.array([x, y, 0.0]) + ray * (HEIGHTS[light] / max(ray[2], 0.05))
    rng = np.random.default_rng([scene.seed, _STREAM])
    # the hand aims a little beside what the eye looks at
    spot = np.array([PANEL[0] / 2, PANEL[1] / 2, 0.0]) * 0.55 + np.array([x, y, 0.0]) * 0.45
    spot[:2] += rng.normal(0, 22, 2)
    aim = spot - place
    aim /= np.linalg.norm(aim)
    return Lamp(_three(place), _three(aim), float(rng.uniform(0.5, 2.4)))


def _three(vector: Any) -> tuple[float, float, float]:
    x, y, z = (float(value) for value in vector)
    return x, y, z
