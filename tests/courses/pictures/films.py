"""What the tests of films share:

small scenes with one defect, their lightness with it and without, the lamp's radiance.
"""

from functools import lru_cache
from typing import Any

import numpy as np
from numpy.random import Generator, default_rng

from courses.pictures.arrays import Floats, Mask
from courses.pictures.canvas import Canvas
from courses.pictures.colour import LUMA, lightness
from courses.pictures.lamps import lamp_for
from courses.pictures.panel import LAMP, Panel
from courses.pictures.plate import Plate
from courses.pictures.scene import Scene
from courses.pictures.shading import lit
from courses.pictures.truth import masks
from tests.courses.pictures.trade import catalogue

PATCH = (0.2, 0.2, 0.8, 0.8)
WHOLE = (0.0, 0.0, 1.0, 1.0)


def film(kind: str, severity: float = 0.6, colour: str = "navy", box: Any = PATCH, **more: Any) -> Scene:
    """Return a small scene of gel coat with one defect; `more` are keys of the scene, or `direction`."""
    defect = {"kind": kind, "severity": severity, "region": {"box": list(box)}, "direction": more.pop("direction", 0)}
    raw = {"substrate": "gel_coat", "colour": colour, "size": [240, 160], "seed": 31, "defects": [defect]}
    return Scene.of({**raw, **more}, catalogue())


def plate_of(scene: Scene, light: str = "point") -> Plate:
    """Return the region of the scene's defect."""
    return Plate(scene, scene.defects[0], light)


def chance(seed: int = 5) -> Generator:
    """Return a random stream."""
    return default_rng(seed)


@lru_cache(maxsize=256)
def shown(scene: Scene, light: str, without: bool = False) -> Floats:
    """Return the lightness of the picture, 0 to 100; without its defect where asked."""
    return lightness(Panel.build(scene, light, frozenset({0}) if without else frozenset()).shoot().rgb)


def change(scene: Scene, light: str) -> Floats:
    """Return what the defect changes in lightness, pixel by pixel."""
    return shown(scene, light) - shown(scene, light, True)


def rms(values: Floats) -> float:
    """Return the root of the mean square."""
    return float(np.sqrt((values**2).mean()))


def leak(scene: Scene, light: str) -> float:
    """Return how much the picture changes outside the mask, as a share of the change within."""
    inside: Mask = masks(scene, light)[0]
    changed = change(scene, light)
    return rms(changed[~inside]) / rms(changed[inside])


@lru_cache(maxsize=64)
def canvas_of(scene: Scene, light: str = "point") -> Canvas:
    """Return the surface of the panel, its defect laid; not to be changed, others look at it too."""
    return Panel.build(scene, light).canvas


def lamp_peak(scene: Scene) -> float:
    """Return the brightest radiance of the point lamp's image, against nothing but itself at another severity."""
    panel = Panel.build(scene, "point")
    lamp = lamp_for(scene, "point", panel.canvas.camera.stand, LAMP)
    return float(np.percentile(lit(panel.canvas, panel.room, lamp) @ LUMA, 99.9))
