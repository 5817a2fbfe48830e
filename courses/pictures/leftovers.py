"""What a correction leaves behind: the trail of the machine, and strays of a grade that was not refined."""

from __future__ import annotations

import numpy as np

from courses.pictures import holograms, pigtails
from courses.pictures.canvas import Canvas
from courses.pictures.plate import Plate
from courses.pictures.scene import MOST_DEFECTS, Defect, Scene

__all__ = ["leave"]

DEEPEST_UM = {"hologram": 0.5, "pigtail": 10.0}
"""Depth that counts as severity 1, as the catalogue has it."""
_STREAM = 400


def leave(scene: Scene, light: str, canvas: Canvas) -> None:
    """Lay the trail and the strays of a scene where film was taken off; they are younger than the cut,
    so it spares them.
    """
    taken, canvas.grooves.lost_um = canvas.grooves.lost_um, None
    left = scene.removed_right_of or 0.0
    for at, (kind, depth) in enumerate((("hologram", scene.trail_um), ("pigtail", scene.tail_um))):
        if depth <= 0 or left >= 1:
            continue
        strength = min(1.0, depth / DEEPEST_UM[kind])
        mark = Defect(kind, strength, depth, (left, 0.0, 1.0, 1.0), 15.0, False, MOST_DEFECTS + at)
        rng, canvas.rng = (np.random.default_rng([scene.seed, _STREAM + 10 * at + step]) for step in (0, 1))
        plate = Plate(scene, mark, light)
        if kind == "hologram":
            holograms.lay(holograms.plan(mark, plate, rng), canvas)
        else:
            pigtails.lay(pigtails.plan(mark, plate, rng), canvas)
    canvas.grooves.lost_um = taken
