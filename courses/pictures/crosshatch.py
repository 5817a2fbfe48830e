"""Crosshatch: two directions of block sanding left over one another."""

from __future__ import annotations

from numpy.random import Generator

from courses.pictures.kind import Kind
from courses.pictures.plate import Plate
from courses.pictures.sanding import Sanding, lay, mask, passes
from courses.pictures.scene import Defect

__all__ = ["CROSSHATCH"]

HALF_ANGLE = 0.62
"""Half the angle between the two directions, radians; by eye."""


def plan(defect: Defect, plate: Plate, rng: Generator) -> Sanding:
    """Passes of a block one way and the other; the later way is a little stronger."""
    density = 0.006 + 0.020 * defect.severity
    first = passes(plate, rng, plate.angle - HALF_ANGLE, density * 0.45)
    second = passes(plate, rng, plate.angle + HALF_ANGLE, density * 0.55)
    return Sanding(plate, first.joined(second))


CROSSHATCH: Kind[Sanding] = Kind(plan, mask, lay)
