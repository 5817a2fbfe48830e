"""Sheets of pictures with words under them."""

import io

import numpy as np
from PIL import Image

from courses.pictures.sheet import Tile, sheet


def test_tiles_stand_in_rows_with_words_below_each():
    red = Tile("red, point", np.full((40, 60, 3), (200, 20, 20), np.uint8))
    blue = Tile("blue", np.full((40, 60, 3), (20, 20, 200), np.uint8))
    picture = Image.open(io.BytesIO(sheet([[red, blue], [blue]], (60, 40), quality=90)))
    assert (picture.format, picture.size) == ("WEBP", (4 + 2 * 64, 4 + 2 * 59))
    pixels = np.asarray(picture.convert("RGB")).astype(int)
    assert pixels[24, 34, 0] > 150 > pixels[24, 34, 2]
    assert pixels[24, 98, 2] > 150 > pixels[24, 98, 0]
    assert pixels[44:59, 4:64].min() < 120, "no words"
    assert pixels[63:, 68:].min() > 200, "a tile where there is none"
