"""Burn-through: rings of layers about a line, each reached where enough is gone."""

import numpy as np
import pytest

from courses.pictures import masks
from courses.pictures.layers import BARE
from tests.courses.pictures.reliefs import look, plan, scene


def test_it_is_deepest_on_its_line_and_ends_in_its_region():
    worn = plan(scene("burn_through", seed=41))
    x, y = worn.axes.back(np.zeros(41), np.linspace(-1, 1, 41) * worn.half)
    across = worn.depth(x, y)
    assert across[14:27].max() == across.max() > BARE
    assert max(across[0], across[-1]) < 0.1
    x, y = worn.axes.back(np.linspace(-1.2, 1.2, 40) * worn.axes.half_u, np.zeros(40))
    assert worn.depth(x, y)[[0, 1, -2, -1]].max() < 0.5


@pytest.mark.parametrize("direction", [0.0, 90.0])
def test_it_runs_along_the_edge_it_is_given(direction):
    rows, columns = np.nonzero(masks(scene("burn_through", seed=42, direction=direction), "diffuse")[0])
    assert (np.ptp(columns) > 1.3 * np.ptp(rows)) == (direction == 0.0)


@pytest.mark.parametrize("substrate", ["gel_coat", "clear_coat", "topcoat_2k"])
def test_what_lies_below_comes_up_from_the_outside_in(substrate):
    of = scene("burn_through", "red", severity=0.9, seed=43, substrate=substrate)
    worn, seen = plan(of), look(of, "diffuse")
    assert np.abs(seen.change[seen.mask]).mean() > 8
    assert worn.deepest > BARE
    assert seen.leak < 0.45, "a scuff lies about it"


def test_worse_is_wider_and_deeper():
    plans = [plan(scene("burn_through", severity=severity, seed=44)) for severity in (0.1, 0.5, 1.0)]
    assert [worn.deepest for worn in plans] == sorted(worn.deepest for worn in plans)
    areas = [
        masks(scene("burn_through", severity=severity, seed=44), "diffuse")[0].sum() for severity in (0.1, 0.5, 1.0)
    ]
    assert areas == sorted(areas)
    assert areas[0] > 0
