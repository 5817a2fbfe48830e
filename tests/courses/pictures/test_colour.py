"""Colour held against colour-science, an independent library of the CIE formulas."""

import warnings

import numpy as np
import pytest

from courses.pictures.colour import LUMA, lightness, to_linear

with warnings.catch_warnings():
    warnings.simplefilter("ignore")  # it says at import that SciPy is missing
    import colour

GREYS = np.arange(256, dtype=np.uint8)
PATCHES = np.random.default_rng(8).integers(0, 256, (40, 3)).astype(np.uint8)


def test_linear_light_is_that_of_the_srgb_standard() -> None:
    assert to_linear(GREYS) == pytest.approx(colour.models.eotf_sRGB(GREYS / 255.0), abs=1e-6)


def test_luminance_is_the_second_row_of_the_srgb_matrix() -> None:
    assert pytest.approx(colour.models.RGB_COLOURSPACE_sRGB.matrix_RGB_to_XYZ[1], abs=2e-4) == LUMA


def test_lightness_is_that_of_the_cie() -> None:
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        y = colour.sRGB_to_XYZ(PATCHES / 255.0)[:, 1] * 100
        wanted = colour.lightness(y, method="CIE 1976")
    assert lightness(PATCHES) == pytest.approx(wanted, abs=0.05)


def test_black_and_white_are_the_ends() -> None:
    assert lightness([[0, 0, 0], [255, 255, 255]]) == pytest.approx([0, 100], abs=1e-3)
