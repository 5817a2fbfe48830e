"""Small panels with one defect, as the tests of relief kinds look at them."""

from dataclasses import dataclass
from functools import lru_cache
from typing import Any

import numpy as np

from courses.pictures import LAMP, Panel, Scene, masks
from courses.pictures.arrays import Floats, Mask, grown
from courses.pictures.colour import lightness
from courses.pictures.measure import contrast_of
from courses.pictures.panel import planned
from tests.courses.pictures.trade import catalogue

BOX = (0.25, 0.2, 0.75, 0.8)
SIZE = (300, 200)


@dataclass(frozen=True)
class Look:
    """A panel with its defect and without: L* of both, and where the defect is."""

    shown: Floats
    bare: Floats
    mask: Mask

    @property
    def change(self) -> Floats:
        """Return what the defect does to L*."""
        return self.shown - self.bare

    @property
    def cnr(self) -> float:
        """Return the contrast over texture of the defect."""
        return contrast_of(self.shown, self.bare, self.mask)[0]

    @property
    def leak(self) -> float:
        """Return the rms change of L* well outside the mask over that inside."""
        outside = ~grown(self.mask, 6)
        inside = float(np.sqrt((self.change[self.mask] ** 2).mean()))
        return float(np.sqrt((self.change[outside] ** 2).mean())) / inside


def scene(kind: str, colour: str = "white", severity: float = 0.6, seed: int = 3, **more: Any) -> Scene:
    """Return a scene of one defect."""
    defect = {"kind": kind, "severity": severity, "region": {"box": list(more.get("box", BOX))}}
    defect["direction"] = more.get("direction", 0.0)
    substrate = more.get("substrate", "gel_coat")
    raw = {"substrate": substrate, "colour": colour, "size": list(SIZE), "seed": seed, "defects": [defect]}
    return Scene.of(raw, catalogue())


def plan(of: Scene, light: str = "diffuse") -> Any:
    """Return the plan of the one defect of a scene."""
    return planned(of, of.defects[0], light)


@lru_cache(maxsize=128)
def look(of: Scene, light: str, lamp: tuple[float, float] = LAMP) -> Look:
    """Return what the defect of a scene does to its picture."""
    shown, bare = (Panel.build(of, light, without).shoot(lamp).rgb for without in (frozenset(), frozenset({0})))
    return Look(lightness(shown), lightness(bare), masks(of, light)[0])
