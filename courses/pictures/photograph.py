"""From radiance to a photograph: exposure, focus, bloom, vignette, grain, the curve of the film."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray
from PIL import Image

from courses.pictures.arrays import F32, Floats, blur, lerp
from courses.pictures.camera import Camera

__all__ = ["developed", "grain", "metered"]

KEYS = {"point": (0.56, 0.006, 0.72), "raking": (0.60, 0.016, 0.70), "diffuse": (0.60, 0.030, 0.62)}
"""How bright a clean panel is printed in each light, the darkest colour still told from black, and the contrast between."""
_GRAIN = 7
_BLOOM = ((0.012, 2.2), (0.006, 8.0), (0.0030, 40.0))
"""Share of light that strays in the lens, and how far, in pixels of a picture a quarter as wide."""


def metered(light: str, base: float, middle: float, high: float) -> float:
    """The exposure for a clean panel of luminance ``base`` whose ``middle`` and ``high`` radiance are these."""
    key, least, contrast = KEYS[light]
    return min(key * max(base, least) ** contrast / middle, 1.1 / (high + 1e-6))


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
    picture *= F32(0.97)
    picture += _glow(picture)
    h, w = picture.shape[:2]
    across = np.square(np.arange(w, dtype=F32) / w - F32(0.5))[None, :]
    down = np.square((np.arange(h, dtype=F32) / h - F32(0.5)) * F32(h / w))[:, None]
    r2 = (across + down) * F32(1 / 0.36)
    picture *= (1 - F32(0.36) * r2 + F32(0.05) * r2 * r2)[..., None]
    np.maximum(picture, 0, out=picture)
    for start in range(0, h, 64):
        rows = slice(start, start + 64)
        picture[rows] += np.sqrt(picture[rows] * F32(0.00007) + F32(0.0000004)) * noise[rows]
    index = np.sqrt(np.clip(picture, 0, F32(15.9), out=picture), out=picture)
    index *= F32(1024)
    return TONE[index.astype(np.uint16)]


def _focused(picture: Floats, camera: Camera) -> Floats:
    """Soft away from the middle: low along the panel, near and far are out of focus."""
    h, w = picture.shape[:2]
    _vx, _vy, _vz, distance = camera.view(slice(0, h))
    off = np.abs(distance[:, w // 2] / np.median(distance) - 1)
    soft_share = np.clip((off - 0.06) * 5.5, 0, 1).astype(F32)[:, None, None]
    return np.asarray(lerp(picture, blur(picture, 2.0 * w / 960), soft_share), F32)


def _glow(picture: Floats) -> Floats:
    h, w = picture.shape[:2]
    small_w, small_h = max(8, w // 4), max(8, h // 4)
    scale = w / 960
    out = np.empty_like(picture)
    tables = [(share, _spread(small_h, sd * scale), _spread(small_w, sd * scale)) for share, sd in _BLOOM]
    for channel in range(3):
        plane = Image.fromarray(np.minimum(picture[..., channel], F32(40)))
        small = np.asarray(plane.resize((small_w, small_h), Image.Resampling.BOX))
        glow = sum((F32(share) * (down @ small @ across) for share, down, across in tables), np.zeros_like(small))
        out[..., channel] = np.asarray(Image.fromarray(glow).resize((w, h), Image.Resampling.BICUBIC))
    return out


def _spread(n: int, sd: float) -> Floats:
    i = np.arange(n)
    table = np.exp(-0.5 * ((i[:, None] - i) / max(sd, 0.3)) ** 2)
    return (table / table.sum(1, keepdims=True)).astype(F32)


def _tone() -> NDArray[np.uint8]:
    """A film-like curve with a toe and a long shoulder, then sRGB; indexed by 1024 times the root of linear light."""
    light = (np.arange(4097) / 1024.0) ** 2
    a = 1.9
    y = np.clip(light * (a * light + 0.06) / (light * (a * light + 0.62) + 0.11) * 1.02, 0, 1)
    coded = np.where(y <= 0.0031308, 12.92 * y, 1.055 * np.power(np.maximum(y, 1e-9), 1 / 2.4) - 0.055)
    return (np.clip(coded, 0, 1) * 255 + 0.5).astype(np.uint8)


TONE = _tone()
