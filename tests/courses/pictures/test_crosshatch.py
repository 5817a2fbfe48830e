"""Crosshatch: two directions, a steady angle apart."""

import numpy as np
import pytest

from courses.pictures.crosshatch import HALF_ANGLE
from courses.pictures.panel import planned
from courses.pictures.sanding import Sanding
from tests.courses.pictures.panels import MIDDLE, changes, marked


@pytest.mark.parametrize("direction", [0, 60])
def test_there_are_two_directions_and_nothing_between(direction: float) -> None:
    shown = marked("crosshatch", direction=direction, seed=4761)
    plan = planned(shown, shown.defects[0], "point")
    assert isinstance(plan, Sanding)
    off = plan.strokes.phi + np.radians(direction)
    assert np.abs(np.abs(off) - HALF_ANGLE).max() < 0.2
    assert 0.35 < (off > 0).mean() < 0.65


def test_the_lamp_lights_two_crossing_fans() -> None:
    (by,) = changes(marked("crosshatch", 0.4, direction=0, seed=4762, size=MIDDLE), "point", (0.5, 0.5))
    y, x = np.mgrid[0:320, 0:480]
    radius, turn = np.hypot(x - 239.5, y - 159.5), np.arctan2(y - 159.5, x - 239.5)
    ring = (radius > 60) & (radius < 130)
    sectors = ((turn[ring] % np.pi) / np.pi * 12).astype(int)
    light = np.bincount(sectors, by[ring], 12) / np.bincount(sectors, minlength=12)
    # marks at +-36 degrees light at right angles to themselves, at 54 and 126
    assert light[[3, 8]].mean() > 1.15 * light[[0, 5, 6, 11]].mean()
