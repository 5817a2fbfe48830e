"""Scenes, panels and twins for tests of single marks, small enough to be quick."""

from functools import lru_cache
from typing import Any

import numpy as np
from numpy.typing import NDArray

from courses.pictures import Panel, Scene
from courses.pictures.camera import Camera, stand_for
from courses.pictures.canvas import Canvas
from courses.pictures.colour import lightness
from courses.pictures.kinds import kind_of
from courses.pictures.panel import planned
from tests.courses.pictures.trade import catalogue

SMALL, MIDDLE, FULL = (240, 160), (480, 320), (960, 640)


def scene(*defects: dict[str, Any], size: tuple[int, int] = SMALL, **more: Any) -> Scene:
    """Return a black clear-coated panel with these defects."""
    raw = {
        "substrate": "clear_coat",
        "colour": "black",
        "size": list(size),
        "seed": 3,
        "defects": list(defects),
        **more,
    }
    return Scene.of(raw, catalogue())


def marked(kind: str, severity: float = 0.6, box: tuple[float, ...] = (0, 0, 1, 1), **more: Any) -> Scene:
    """Return a panel with one defect; what is no key of a defect goes to the scene."""
    direction = more.pop("direction", 20)
    defect = {"kind": kind, "severity": severity, "region": {"box": list(box)}, "direction": direction}
    return scene(defect, **more)


def change(shown: Scene, light: str = "point", lamp: tuple[float, float] = (0.5, 0.42)) -> NDArray[np.float32]:
    """Return by how much L* of each pixel differs from the twin without the first defect."""
    return changes(shown, light, lamp)[0]


@lru_cache(maxsize=6)
def changes(shown: Scene, light: str, *lamps: tuple[float, float]) -> tuple[NDArray[np.float32], ...]:
    """Return the change of L* by the first defect at each of these places of the lamp."""
    panel, twin = Panel.build(shown, light), Panel.build(shown, light, frozenset({0}))
    return tuple(lightness(panel.shoot(lamp).rgb) - lightness(twin.shoot(lamp).rgb) for lamp in lamps)


def mask_of(shown: Scene, light: str = "point", size: tuple[int, int] | None = None) -> NDArray[np.bool_]:
    """Return the mask of the first defect, at any size of the picture."""
    camera = Camera(stand_for(light, shown.size), size or shown.size)
    first = shown.defects[0]
    return kind_of(first.kind).mask(planned(shown, first, light), camera)


def laid(shown: Scene, light: str = "point") -> Canvas:
    """Return a canvas with the first defect laid and nothing else."""
    canvas = Canvas(shown, light, Camera(stand_for(light, shown.size), shown.size))
    canvas.rng = np.random.default_rng(1)
    first = shown.defects[0]
    kind_of(first.kind).lay(planned(shown, first, light), canvas)
    return canvas


def cover_left(kind: str, removed_um: float, **more: Any) -> float:
    """Return how much of the cover of a kind's marks is left after so much film was taken off."""
    whole, cut = (laid(marked(kind, removed_um=taken, **more)).grooves.cover.sum() for taken in (0, removed_um))
    return float(cut / whole)


def outside(shown: Scene, light: str = "point", near_px: int = 10) -> float:
    """Return the rms change outside the mask and its surroundings over that inside it."""
    from courses.pictures.arrays import grown

    inside = mask_of(shown, light)
    by = change(shown, light)
    far = ~grown(inside, near_px)
    return float(np.sqrt((by[far] ** 2).mean()) / np.sqrt((by[inside] ** 2).mean()))
