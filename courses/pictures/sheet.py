"""A sheet of small pictures with words under them, for whoever looks at many kinds at once."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from PIL import Image, ImageDraw, ImageFont

from courses.pictures.files import webp

__all__ = ["Tile", "sheet"]

GAP = 4
LABEL = 15
"""Pixels between tiles, and for the words below each."""
PAPER = (250, 250, 248)
INK = (40, 40, 40)


@dataclass(frozen=True)
class Tile:
    """One picture, sRGB (h, w, 3), and the words under it."""

    words: str
    rgb: NDArray[np.uint8]


def sheet(rows: Sequence[Sequence[Tile]], size: tuple[int, int], quality: int = 78) -> bytes:
    """Return a WebP of `rows` of tiles, each made `size` pixels big (width, height).

    >>> grey = Tile("grey", np.full((20, 30, 3), 128, np.uint8))
    >>> sheet([[grey, grey]], (30, 20))[8:12]
    b'WEBP'
    """
    wide, high = size[0] + GAP, size[1] + LABEL + GAP
    paper = Image.new("RGB", (GAP + wide * max(map(len, rows)), GAP + high * len(rows)), PAPER)
    draw, font = ImageDraw.Draw(paper), ImageFont.load_default(11)
    for down, row in enumerate(rows):
        for across, tile in enumerate(row):
            left, top = GAP + across * wide, GAP + down * high
            picture = Image.fromarray(tile.rgb).resize(size, Image.Resampling.LANCZOS)
            paper.paste(picture, (left, top))
            draw.text((left + 2, top + size[1] + 1), tile.words, fill=INK, font=font)
    return webp(np.asarray(paper), quality)
