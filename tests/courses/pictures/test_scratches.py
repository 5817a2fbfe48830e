"""A single scratch: a line of its own, fixed to the panel."""

import numpy as np
import pytest

from courses.pictures.features import centroid
from courses.pictures.panel import planned
from courses.pictures.scene import LIGHTS
from courses.pictures.scratches import Scratch
from tests.courses.pictures.panels import MIDDLE, change, changes, cover_left, marked, mask_of, outside


def line(**more: object) -> Scratch:
    shown = marked("scratch", **more)  # type: ignore[arg-type]
    plan = planned(shown, shown.defects[0], "point")
    assert isinstance(plan, Scratch)
    return plan


def test_it_stays_while_the_lamp_moves() -> None:
    lamps = ((0.3, 0.42), (0.5, 0.42), (0.7, 0.42))
    found = changes(marked("scratch", 0.9, seed=4773, direction=25, size=MIDDLE), "point", *lamps)
    slope = np.polyfit([x for x, _y in lamps], [centroid(one)[0] for one in found], 1)[0]
    assert abs(slope) < 0.1


@pytest.mark.parametrize("direction", [0, 45, 90])
def test_it_runs_its_way_and_stays_in_its_box(direction: float) -> None:
    shown = marked("scratch", box=(0.2, 0.2, 0.8, 0.8), direction=direction, seed=4774)
    rows, columns = np.nonzero(mask_of(shown, size=MIDDLE))
    assert (columns.min() > 75, columns.max() < 405, rows.min() > 45, rows.max() < 275) == (True,) * 4
    if direction == 45:
        assert np.corrcoef(rows, columns)[0, 1] < -0.9
    else:
        assert (np.ptp(columns) > 3 * np.ptp(rows)) == (direction == 0)


def test_a_strong_one_has_companions() -> None:
    assert line(severity=0.9).x.size > line(severity=0.3).x.size


def test_it_shows_in_every_light() -> None:
    for light in LIGHTS:
        shown = marked("scratch", 0.9, seed=4775)
        by = change(shown, light)
        inside = mask_of(shown, light)
        assert np.abs(by[inside]).mean() > 5 * np.abs(by[~inside]).mean()


def test_it_is_pale_on_black_and_dark_on_white() -> None:
    for colour, sign in (("black", 1), ("white", -1)):
        shown = marked("scratch", 0.9, colour=colour, seed=4776, size=MIDDLE)
        assert sign * change(shown, "diffuse")[mask_of(shown, "diffuse")].mean() > 0


def test_only_its_line_changes() -> None:
    assert outside(marked("scratch", seed=4777, size=MIDDLE), near_px=12) < 0.2


def test_a_cut_narrows_it() -> None:
    left = [cover_left("scratch", taken, seed=4778) for taken in (2.0, 6.0)]
    assert 0.3 < left[1] < left[0] < 1
