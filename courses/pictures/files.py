"""Pictures and masks as the bytes of a file, made in memory: this chapter writes nothing."""

from __future__ import annotations

from typing import Any

import numpy as np
from numpy.typing import NDArray
from PIL import Image

from courses.pictures.arrays import Mask

__all__ = ["png", "webp"]


class _Kept:
    """Takes what Pillow writes."""

    def __init__(self) -> None:
        self.pieces: list[bytes] = []

    def write(self, piece: Any) -> int:
        """Keep one piece."""
        self.pieces.append(bytes(piece))
        return len(piece)


def _coded(pixels: NDArray[np.uint8], kind: str, **how: int) -> bytes:
    kept = _Kept()
    Image.fromarray(pixels).save(kept, kind, **how)  # type: ignore[arg-type]  # Pillow asks for no more than `write`
    return b"".join(kept.pieces)


def webp(rgb: NDArray[np.uint8], quality: int) -> bytes:
    """The sRGB pixels (h, w, 3) as a WebP file of a ``quality`` from 1 to 100, with nothing else in it.

    >>> webp(np.zeros((4, 4, 3), np.uint8), 85)[8:12]
    b'WEBP'
    """
    return _coded(rgb, "WEBP", quality=quality)


def png(mask: Mask) -> bytes:
    """The ``mask`` as a PNG file, white where it holds.

    >>> png(np.ones((4, 4), bool))[1:4]
    b'PNG'
    """
    return _coded(mask.astype(np.uint8) * np.uint8(255), "PNG")
