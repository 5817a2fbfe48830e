"""How well a defect shows."""

import numpy as np
import pytest

from courses.pictures import measured
from courses.pictures.arrays import F32
from courses.pictures.measure import contrast_of
from tests.courses.pictures.panels import MIDDLE, marked, scene

TEXTURE = np.random.default_rng(4).normal(50, 1, (120, 160)).astype(F32)
HALF = np.zeros((120, 160), bool)
HALF[:, 80:] = True


def test_an_even_change_is_its_own_rms() -> None:
    cnr, rms = contrast_of(TEXTURE + 3 * HALF, TEXTURE, HALF)
    assert rms == pytest.approx(3, rel=1e-4)
    assert cnr > 5


def test_texture_hides_a_change() -> None:
    rough = 50 + 4 * (TEXTURE - 50)
    assert contrast_of(rough + 3 * HALF, rough, HALF)[0] < 0.5 * contrast_of(TEXTURE + 3 * HALF, TEXTURE, HALF)[0]


def test_no_change_and_no_mask_are_nothing() -> None:
    assert contrast_of(TEXTURE, TEXTURE, HALF) == (0, 0)
    assert contrast_of(TEXTURE + 1, TEXTURE, np.zeros_like(HALF)) == (0, 0)


def test_swirls_show_on_black_and_vanish_on_white() -> None:
    black, white = (measured(marked("swirl", colour=colour, size=MIDDLE), "point")[0] for colour in ("black", "white"))
    assert (black.kind, black.area, black.cnr > 5, black.rms_dl > 1.5) == ("swirl", 1, True, True)
    assert white.cnr < 2


def test_each_defect_is_measured_against_its_own_twin() -> None:
    box = {"box": [0.3, 0.3, 0.7, 0.7]}
    first, second = measured(scene({"kind": "scratch"}, {"kind": "swirl", "region": box}, size=MIDDLE), "point")
    assert (first.kind, second.kind) == ("scratch", "swirl")
    assert first.area < 0.05 < second.area < 0.2
