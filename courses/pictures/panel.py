"""A panel under a light: built once, shot at many places of the lamp."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

import numpy as np
from numpy.typing import NDArray

from courses.pictures.camera import Camera, stand_for
from courses.pictures.canvas import Canvas
from courses.pictures.files import webp
from courses.pictures.kinds import kind_of
from courses.pictures.lamps import lamp_for
from courses.pictures.leftovers import leave
from courses.pictures.meter import exposure_for
from courses.pictures.photograph import developed, grain
from courses.pictures.plate import Plate
from courses.pictures.scene import Defect, Scene
from courses.pictures.shading import Still, lit, still

__all__ = ["LAMP", "Panel", "Shot", "planned"]

LAMP = (0.5, 0.42)
"""Where the lamp's image stands if nobody says otherwise, in fractions of the picture."""
HEAVIEST = 40_000 / (960 * 640)
"""Bytes for each pixel that a file may have."""
_PLAN, _LAY = 100, 300


@dataclass(frozen=True)
class Shot:
    """A picture: sRGB pixels (h, w, 3), and the exposure it was taken at."""

    rgb: NDArray[np.uint8]
    exposure: float

    def webp(self, quality: int = 85) -> bytes:
        """The picture as a WebP file, with nothing else in it.

        A picture full of fine marks is coded a little coarser, so that a phone has 960 × 640 pixels in 40 kB.
        """
        most = HEAVIEST * self.rgb.shape[0] * self.rgb.shape[1]
        file = webp(self.rgb, quality)
        while len(file) > most and quality > 65:
            quality -= 5
            file = webp(self.rgb, quality)
        return file


def planned(scene: Scene, defect: Defect, light: str) -> object:
    """The plan of one defect of a scene, as its kind makes it from a random stream of its own."""
    rng = np.random.default_rng([scene.seed, _PLAN + defect.index])
    return kind_of(defect.kind).plan(defect, Plate(scene, defect, light), rng)


class Panel:
    """A scene under a light, ready to be shot: everything the lamp does not change is worked out."""

    def __init__(self, scene: Scene, light: str, canvas: Canvas, room: Still, exposure: float) -> None:
        """Made by `build`."""
        self.scene, self.light, self.canvas, self.room, self.exposure = scene, light, canvas, room, exposure

    @classmethod
    def build(cls, scene: Scene, light: str, without: frozenset[int] = frozenset()) -> Panel:
        """The panel of a ``scene``, its defects laid, those at the places ``without`` left out."""
        camera = Camera(stand_for(light, scene.size), scene.size)
        canvas = Canvas(scene, light, camera)
        canvas.wear()
        for defect in scene.defects:
            if ground := kind_of(defect.kind).ground:
                ground(planned(scene, defect, light), canvas)
        for defect in scene.defects:
            if defect.index not in without:
                canvas.rng = np.random.default_rng([scene.seed, _LAY + defect.index])
                kind_of(defect.kind).lay(planned(scene, defect, light), canvas)
        leave(scene, light, canvas)
        return cls(scene, light, canvas, still(canvas), exposure_for(scene, light))

    @cached_property
    def _grain(self) -> NDArray[np.float16]:
        return grain(self.scene.seed, self.scene.size)

    def shoot(self, lamp: tuple[float, float] = LAMP, without: frozenset[int] = frozenset()) -> Shot:
        """The picture with the lamp's image at ``lamp``, fractions of the picture; ``without`` some defects: their
        twin.

        Without defects means a second panel: build that yourself where more than one shot of it is wanted.
        """
        if without:
            return Panel.build(self.scene, self.light, without).shoot(lamp)
        torch = None if self.light == "diffuse" else lamp_for(self.scene, self.light, self.canvas.camera.stand, lamp)
        radiance = lit(self.canvas, self.room, torch)
        rgb = developed(radiance, self.exposure, self.canvas.camera, self.light, self._grain)
        return Shot(rgb, self.exposure)
