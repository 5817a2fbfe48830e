"""The exposure of a picture: metered on the clean panel, so that no defect changes the exposure it is judged at."""

from __future__ import annotations

import math

import numpy as np

from courses.pictures.arrays import F32
from courses.pictures.camera import PANEL, Camera, stand_for
from courses.pictures.canvas import CURVATURE
from courses.pictures.colour import LUMA, to_linear
from courses.pictures.lamps import lamp_for
from courses.pictures.optics import fresnel
from courses.pictures.photograph import metered
from courses.pictures.room import AMBIENT, mirrored
from courses.pictures.scene import Scene

__all__ = ["exposure_for"]

_SIZE = 48
_LAMP = (0.5, 0.42)


def exposure_for(scene: Scene, light: str) -> float:
    """One exposure for all lamp places: that of the clean, smooth panel with the lamp where it stands by default."""
    w, h = _SIZE, max(8, round(_SIZE * scene.size[1] / scene.size[0]))
    camera = Camera(stand_for(light, scene.size), (w, h))
    across, down = CURVATURE[scene.curve]
    nx, ny = (camera.x - F32(PANEL[0] / 2)) / F32(across), (camera.y - F32(PANEL[1] / 2)) / F32(down)
    nz = 1 / np.sqrt(1 + nx * nx + ny * ny)
    nx, ny = nx * nz, ny * nz
    vx, vy, vz, _distance = camera.view(slice(0, h))
    cos = np.clip(nx * vx + ny * vy + nz * vz, F32(0.03), 1)
    ray = (2 * cos * nx - vx, 2 * cos * ny - vy, 2 * cos * nz - vz)
    room = fresnel(cos, scene.index) * mirrored(light, (camera.x, camera.y), ray, F32(0.006))
    falling = np.full_like(cos, AMBIENT[light])
    if light != "diffuse":
        lamp = lamp_for(scene, light, camera.stand, _LAMP)
        lx, ly = F32(lamp.place[0]) - camera.x, F32(lamp.place[1]) - camera.y
        far = np.sqrt(lx * lx + ly * ly + F32(lamp.place[2] ** 2))
        lx, ly, lz = lx / far, ly / far, F32(lamp.place[2]) / far
        falling = falling + lamp.beam(lx, ly, lz, far) * np.clip(nx * lx + ny * ly + nz * lz, 0, 1)
    base = float(to_linear(scene.rgb) @ LUMA)
    seen = falling * (base / math.pi) + room
    return metered(light, base, float(np.median(seen)), float(np.percentile(seen, 93)))
