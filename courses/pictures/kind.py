"""What a kind of defect has to be able to do: plan where it lies, say what it covers, lay itself on a panel."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Generic, TypeVar

from numpy.random import Generator

from courses.pictures.arrays import Mask
from courses.pictures.camera import Camera
from courses.pictures.canvas import Canvas
from courses.pictures.plate import Plate
from courses.pictures.scene import Defect

__all__ = ["Kind"]

P = TypeVar("P")


@dataclass(frozen=True)
class Kind(Generic[P]):
    """Three functions that share a plan: geometry in mm, worked out once from the scene's own chance.

    ``plan`` makes it without any picture, ``mask`` says which pixels of a camera the defect covers, ``lay`` changes
    a canvas. ``ground``, where there is one, is what the defect needs about it to be seen at all (a ghost needs
    weathered film): it is laid first, and stays where the defect is left out.
    """

    plan: Callable[[Defect, Plate, Generator], P]
    mask: Callable[[P, Camera], Mask]
    lay: Callable[[P, Canvas], None]
    ground: Callable[[P, Canvas], None] | None = None
