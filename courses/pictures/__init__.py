"""Panels under a lamp: a scene in, a picture and the mask of each defect out. Plain Python, numpy and Pillow."""

from courses.pictures.measure import Seen, measured
from courses.pictures.panel import LAMP, Panel, Shot
from courses.pictures.scene import LIGHTS, Defect, Scene, SceneRefused
from courses.pictures.truth import CELLS, cell_shares, mask_files, masks, required_and_allowed

__all__ = [
    "CELLS",
    "LAMP",
    "LIGHTS",
    "RENDERER",
    "Defect",
    "Panel",
    "Scene",
    "SceneRefused",
    "Seen",
    "Shot",
    "cell_shares",
    "mask_files",
    "masks",
    "measured",
    "required_and_allowed",
]

RENDERER = 1
"""Raised whenever a pixel of any scene changes."""
