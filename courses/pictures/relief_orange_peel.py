"""Orange peel: film that never flowed out. Nothing but slope: what is seen is the mirror of the room, wobbling."""

from __future__ import annotations

from dataclasses import dataclass

from numpy.random import Generator

from courses.pictures.arrays import F32, Mask
from courses.pictures.camera import Camera
from courses.pictures.canvas import Canvas
from courses.pictures.kind import Kind
from courses.pictures.plate import Plate
from courses.pictures.scene import Defect

__all__ = ["ORANGE_PEEL", "Peel"]


@dataclass(frozen=True)
class Peel:
    """The region, and the root mean square of the slopes in it.

    Waves of 5 to 16 mm displace a mirror image, those of 2.4 to 6 mm break its edge (J. Coat. Technol. Res. 2023,
    doi 10.1007/s11998-023-00775-6); slopes from 0.0015 to 0.0095 are chosen by eye.
    """

    plate: Plate
    slope: float


def _plan(defect: Defect, plate: Plate, rng: Generator) -> Peel:
    del rng  # the texture has streams of its own
    return Peel(plate, 0.0015 + 0.0080 * defect.severity)


def _mask(plan: Peel, camera: Camera) -> Mask:
    return plan.plate.weight(camera.x, camera.y) > 0.5


def _lay(plan: Peel, canvas: Canvas) -> None:
    plate, camera = plan.plate, canvas.camera
    amount = plate.weight(camera.x, camera.y) * F32(plan.slope)
    # sprayed in passes: here wetter, there drier
    amount *= 1 + F32(0.18) * plate.field(40, 200, 1, stretch=(3.0, 1.0)).on(camera)
    for share, low, high, stream in ((1.0, 5.0, 16.0, 2), (0.35, 2.4, 6.0, 3)):
        right, down = plate.field(low, high, stream, slope=0.5).slopes()
        canvas.nx += F32(share) * amount * right.on(camera)
        canvas.ny += F32(share) * amount * down.on(camera)


ORANGE_PEEL: Kind[Peel] = Kind(_plan, _mask, _lay)
