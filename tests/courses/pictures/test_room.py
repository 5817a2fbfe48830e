"""What the gloss mirrors besides the lamp."""

import numpy as np
import pytest

from courses.pictures.arrays import F32, Floats
from courses.pictures.room import AMBIENT, TINTS, mirrored, mirrored_widely
from courses.pictures.scene import LIGHTS


def across(light: str, alpha: float) -> Floats:
    x = np.linspace(-2000, 2600, 400, dtype=F32)
    y, up = np.full(400, -1500, F32), np.full(400, 1, F32)
    return mirrored(light, (x, y), (np.zeros(400, F32), np.zeros(400, F32), up), F32(alpha))


def test_each_light_has_its_room() -> None:
    assert set(AMBIENT) == set(TINTS) == set(LIGHTS)


def test_a_tent_is_far_brighter_than_a_workshop() -> None:
    assert across("diffuse", 0.004).mean() > 20 * across("point", 0.004).mean()
    assert mirrored_widely("diffuse") > 10 * mirrored_widely("point")


def test_a_rough_film_softens_what_it_mirrors() -> None:
    sharp, dull = (np.abs(np.diff(across("diffuse", alpha))).max() for alpha in (0.004, 0.08))
    assert sharp > 2 * dull


def test_nothing_mirrored_is_negative() -> None:
    assert min(across(light, 0.02).min() for light in LIGHTS) > 0


def test_rays_that_run_level_end_in_the_dark() -> None:
    level = (np.full(1, 1, F32), np.zeros(1, F32), np.full(1, 0.0, F32))
    assert mirrored("diffuse", (np.zeros(1, F32), np.zeros(1, F32)), level, F32(0.004)) == pytest.approx(
        [0.035], abs=0.02
    )
