"""The table of kinds."""

import numpy as np
import pytest

from courses.pictures.kinds import KINDS, kind_of
from courses.pictures.scene import LIGHTS
from tests.courses.pictures.panels import marked, mask_of
from tests.courses.pictures.trade import catalogue


def test_every_kind_of_the_catalogue_can_be_pictured() -> None:
    assert set(KINDS) == set(catalogue().kinds)


@pytest.mark.parametrize("code", sorted(KINDS))
def test_a_mask_is_a_mask_of_any_size_in_any_light(code: str) -> None:
    for light in LIGHTS:
        mask = mask_of(marked(code, box=(0.2, 0.2, 0.8, 0.8)), light, (120, 80))
        assert (mask.shape, mask.dtype) == ((80, 120), np.bool_)
        assert mask.any()
        assert kind_of(code) is KINDS[code]
