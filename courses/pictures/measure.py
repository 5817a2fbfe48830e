"""How well a defect shows: its picture against the twin without it."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from courses.pictures.arrays import Floats, Mask, blur
from courses.pictures.colour import lightness
from courses.pictures.panel import LAMP, Panel, Shot
from courses.pictures.scene import Scene
from courses.pictures.truth import masks

__all__ = ["Seen", "contrast_of", "measured"]


@dataclass(frozen=True)
class Seen:
    """How one defect shows: contrast over texture, root mean square change of L*, share of the picture it covers."""

    kind: str
    cnr: float
    rms_dl: float
    area: float


def contrast_of(shown: Floats, bare: Floats, mask: Mask) -> tuple[float, float]:
    """Contrast over texture and rms change of L* inside ``mask``, from L* with the defect and without.

    Contrast over texture is the 95th percentile of the change over the robust spread of the bare panel's fine texture.
    """
    if not mask.any():
        return 0.0, 0.0
    change = shown - bare
    texture = blur(bare, 0.8) - blur(bare, 6)
    noise = 1.4826 * float(np.median(np.abs(texture[mask]))) + 0.05
    peak = float(np.percentile(np.abs(blur(change, 0.8))[mask], 95))
    return peak / noise, float(np.sqrt((change[mask] ** 2).mean()))


def measured(scene: Scene, light: str, lamp: tuple[float, float] = LAMP, shot: Shot | None = None) -> tuple[Seen, ...]:
    """How each defect of a scene shows under a light, in the order of the scene; each needs a twin without it.

    ``shot`` is the picture itself, where it was taken before.
    """
    shown = lightness((shot or Panel.build(scene, light).shoot(lamp)).rgb)
    return tuple(_seen(scene, light, lamp, shown, index, mask) for index, mask in enumerate(masks(scene, light)))


def _seen(scene: Scene, light: str, lamp: tuple[float, float], shown: Floats, index: int, mask: Mask) -> Seen:
    bare = lightness(Panel.build(scene, light, frozenset({index})).shoot(lamp).rgb)
    cnr, rms = contrast_of(shown, bare, mask)
    return Seen(scene.defects[index].kind, cnr, rms, float(mask.mean()))
