"""Pictures and masks as files, held in memory."""

import io

import numpy as np
from PIL import Image

from courses.pictures.files import png, webp

RAMP = np.repeat(np.linspace(0, 255, 96).astype(np.uint8)[None, :, None], 64, 0).repeat(3, 2)


def test_a_picture_reads_back_nearly_as_it_was() -> None:
    with Image.open(io.BytesIO(webp(RAMP, 85))) as read:
        assert (read.format, read.size, len(read.getexif())) == ("WEBP", (96, 64), 0)
        assert np.abs(np.asarray(read, float) - RAMP).mean() < 2


def test_a_lower_quality_is_a_smaller_file() -> None:
    rough = np.random.default_rng(1).integers(0, 255, (64, 96, 3)).astype(np.uint8)
    assert len(webp(rough, 40)) < len(webp(rough, 90))


def test_a_mask_reads_back_as_it_was() -> None:
    mask = RAMP[..., 0] > 100
    with Image.open(io.BytesIO(png(mask))) as read:
        assert ((np.asarray(read) == 255) == mask).all()
