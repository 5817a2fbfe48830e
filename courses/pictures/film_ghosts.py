"""Ghosts of old lettering: under the vinyl the film kept its colour, its gloss and its thickness while the rest
weathered."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.random import Generator

from courses.pictures.arrays import F32, Floats, Mask, lerp, soft
from courses.pictures.camera import Camera
from courses.pictures.canvas import Canvas
from courses.pictures.colour import to_linear
from courses.pictures.film_oxidation import Weather, chalked, faded, weather
from courses.pictures.kind import Kind
from courses.pictures.lettering import Lettering, lettered
from courses.pictures.plate import Plate
from courses.pictures.scene import Defect
from courses.pictures.turned import turned

__all__ = ["DECAL_GHOST", "Ghost"]

GRIME = (0.55, 0.62, 0.80)
"""Optical density of what the edge of the glue held, by eye."""
GROUND_UM = 14.0
"""Thickness of the chalk round the letters at its worst, by eye: moderate oxidation."""


@dataclass(frozen=True)
class Ghost:
    """Letters on a panel whose other film weathered, and how well each place under them was kept."""

    defect: Defect
    plate: Plate
    signs: Lettering
    worn: Weather

    def kept(self, camera: Camera, inside: Floats) -> Floats:
        """Return the share of weather each pixel was spared, 0 outside the letters; their edges crept a little."""
        crept = F32(0.35) * self.plate.field(5, 40, 41).on(camera)
        edge = F32(max(0.45, 0.45 * camera.pixel_mm))
        patchy = F32(0.90) + F32(0.02) * self.plate.field(10, 80, 42).on(camera)
        return (soft((inside + crept) / edge) * patchy).astype(F32)


def _plan(defect: Defect, plate: Plate, rng: Generator) -> Ghost:
    left, top, right, low = plate.box
    wide, high = plate.scene.size
    signs = lettered(rng, turned(plate), (right - left) * wide / ((low - top) * high))
    open_sky = Defect("oxidation", defect.severity, GROUND_UM, (0.0, 0.0, 1.0, 1.0), 0.0, False, defect.index)
    return Ghost(defect, plate, signs, weather(open_sky, Plate(plate.scene, open_sky, plate.light), rng))


def _mask(plan: Ghost, camera: Camera) -> Mask:
    return np.asarray(plan.signs.inside(camera, 3.0) > 0)


def _ground(plan: Ghost, canvas: Canvas) -> None:
    """Weather the whole panel, as long as the scene brings no weather of its own."""
    if any(other.kind in ("oxidation", "fading") for other in canvas.scene.defects):
        return
    worn = F32(plan.defect.severity) * plan.worn.amount(canvas.camera)
    left = np.clip(1 - canvas.removed_um / np.maximum(worn * F32(GROUND_UM), F32(1e-3)), 0, 1)
    faded(canvas, F32(0.95) * worn)
    chalked(canvas, F32(0.30) * worn * left)


def _lay(plan: Ghost, canvas: Canvas) -> None:
    """Give the letters back what weather took, raise them by the film they kept, and line them with grime."""
    camera = canvas.camera
    inside = plan.signs.inside(camera, 4.0)
    kept = plan.kept(camera, inside)
    canvas.albedo = lerp(canvas.albedo, to_linear(canvas.scene.rgb), kept[..., None]).astype(F32)
    canvas.alpha = lerp(canvas.alpha, np.minimum(canvas.alpha, F32(0.012)), kept)
    canvas.coat = lerp(canvas.coat, np.maximum(canvas.coat, F32(0.97)), kept)
    canvas.halo = lerp(canvas.halo, np.minimum(canvas.halo, F32(0.006)), kept)
    step = soft((inside + F32(0.2)) / F32(max(0.4, 0.6 * camera.pixel_mm)))
    canvas.raise_um(F32(plan.defect.depth_um) * step * canvas.left(max(plan.defect.depth_um, 0.1)))
    held = np.clip(F32(0.35) + F32(0.40) * plan.plate.field(5, 50, 43).on(camera), 0, 1)
    line = np.exp(-(((inside + F32(0.5)) / F32(max(0.55, 0.6 * camera.pixel_mm))) ** 2)) * held
    canvas.stain(GRIME, F32(0.15 + 0.35 * plan.defect.severity) * line)


DECAL_GHOST = Kind(_plan, _mask, _lay, _ground)
