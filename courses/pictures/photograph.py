"""From radiance to a photograph: exposure, focus, bloom, vignette, grain, the curve of the film."""

from __future__ import annotations

import math

import numpy as np
from numpy.typing import NDArray
from PIL import Image

from courses.pictures.arrays import F32, Floats, blur
from courses.pictures.camera import Camera

__all__ = ["developed", "grain", "metered"]

KEYS = {"point": (0.62, 0.0105, 0.85), "raking": (0.57, 0.021, 0.86), "diffuse": (0.95, 0.030, 0.90)}
"""How bright a clean panel is printed in each light, the darkest colour still told from black,
and the contrast between.
"""
_GRAIN = 7
BLOOM = ((0.012, 2.2, 1), (0.006, 2.67, 3), (0.0030, 3.33, 12))
"""Share of light that strays in the lens and how far: pixels of a picture a quarter as wide, taken so much coarser."""


def metered(light: str, base: float, middle: float, high: float) -> float:
    """The exposure for a clean panel of luminance ``base`` whose ``middle`` and ``high`` radiance are these."""
    key, least, contrast = KEYS[light]
    wanted = key * math.pow(max(base, least), contrast) / middle
    return min(wanted, 1.1 / (high + 1e-6))


def grain(seed: int, size: tuple[int, int]) -> NDArray[np.float16]:
    """The noise of the sensor, (h, w, 3), a little blotchy as after demosaicing; from a stream of its own."""
    w, h = size
    rng = np.random.default_rng([seed, _GRAIN])
    colour = rng.standard_normal((h, w, 3), dtype=F32)
    colour += np.roll(colour, 1, 0)
    colour += np.roll(colour, 1, 1)
    colour *= F32(0.45)
    colour += F32(0.75) * rng.standard_normal((h, w, 1), dtype=F32)
    return colour.astype(np.float16)


def developed(
    radiance: Floats, exposure: float, camera: Camera, light: str, noise: NDArray[np.float16]
) -> NDArray[np.uint8]:
    """The sRGB picture (h, w, 3) of a radiance; ``radiance`` is used up."""
    picture = radiance
    picture *= F32(exposure)
    if light == "raking":
        picture = _focused(picture, camera)
    h, w = picture.shape[:2]
    across = np.square(np.arange(w, dtype=F32) / w - F32(0.5))[None, :]
    down = np.square((np.arange(h, dtype=F32) / h - F32(0.5)) * F32(h / w))[:, None]
    r2 = (across + down) * F32(1 / 0.36)
    vignette = 1 - F32(0.36) * r2 + F32(0.05) * r2 * r2
    for channel in range(3):
        plane = picture[..., channel]
        glow = _glow(plane)
        plane *= F32(0.97)
        plane += glow
        plane *= vignette
    np.maximum(picture, 0, out=picture)
    for start in range(0, h, 64):
        rows = slice(start, start + 64)
        picture[rows] += np.sqrt(picture[rows] * F32(0.00004) + F32(0.0000003)) * noise[rows]
    index = np.sqrt(np.clip(picture, 0, F32(15.9), out=picture), out=picture)
    index *= F32(1024)
    return np.asarray(TONE[index.astype(np.uint16)])


def _focused(picture: Floats, camera: Camera) -> Floats:
    """Soft away from the middle: low along the panel, near and far are out of focus."""
    h, w = picture.shape[:2]
    _vx, _vy, _vz, distance = camera.view(slice(0, h))
    off = np.abs(distance[:, w // 2] / np.median(distance) - 1)
    share = np.clip((off - 0.06) * 5.5, 0, 1).astype(F32)[:, None]
    for channel in range(3):
        plane = picture[..., channel]
        small = blur(_resized(plane, (max(8, w // 2), max(8, h // 2)), Image.Resampling.BOX), 0.9 * w / 960)
        plane += share * (_resized(small, (w, h)) - plane)
    return picture


def _glow(plane: Floats) -> Floats:
    """What strays in the lens from one colour of a picture:
    a tight, a middle and a wide bloom, each worked out coarser.
    """
    h, w = plane.shape
    small = np.minimum(_resized(plane, (max(8, w // 4), max(8, h // 4)), Image.Resampling.BOX), F32(40))
    coarser = []
    for share, sd, factor in BLOOM:
        size = max(4, small.shape[1] // factor), max(4, small.shape[0] // factor)
        level = _resized(small, size, Image.Resampling.BOX) if factor > 1 else small
        coarser.append(F32(share) * blur(level, sd * w / 960))
    glow = coarser[0]
    for level in coarser[1:]:
        glow = glow + _resized(level, (small.shape[1], small.shape[0]))
    return np.maximum(_resized(glow, (w, h)), 0)


def _resized(plane: Floats, size: tuple[int, int], how: Image.Resampling = Image.Resampling.BICUBIC) -> Floats:
    return np.asarray(Image.fromarray(np.ascontiguousarray(plane)).resize(size, how), F32)


def _tone() -> NDArray[np.uint8]:
    """A film-like curve with a toe and a long shoulder, then sRGB; indexed by 1024 times the root of linear light."""
    light = (np.arange(4097) / 1024.0) ** 2
    a = 1.9
    y = np.clip(light * (a * light + 0.06) / (light * (a * light + 0.62) + 0.11) * 1.02, 0, 1)
    coded = np.where(y <= 0.0031308, 12.92 * y, 1.055 * np.power(np.maximum(y, 1e-9), 1 / 2.4) - 0.055)
    return (np.clip(coded, 0, 1) * 255 + 0.5).astype(np.uint8)


TONE = _tone()
