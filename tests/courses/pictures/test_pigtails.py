"""Pigtails: curls in place, strung along a path."""

import numpy as np
import pytest

from courses.pictures.panel import planned
from courses.pictures.pigtails import Pigtails
from tests.courses.pictures.panels import MIDDLE, changes, cover_left, laid, marked, mask_of


def curls(**more: float) -> Pigtails:
    shown = marked("pigtail", **more)
    plan = planned(shown, shown.defects[0], "point")
    assert isinstance(plan, Pigtails)
    return plan


def test_no_two_curls_are_alike_and_many_are_open() -> None:
    plan = curls(seed=4741)
    assert plan.orbit.std() > 0.2
    assert (plan.turns < 1).mean() > 0.15
    assert plan.turns.max() > 2


def test_a_curl_is_a_few_millimetres_across() -> None:
    plan = curls(seed=4742)
    x, y, _phi, width = plan.places(0.2)
    near = np.hypot(x - plan.x[0], y - plan.y[0])[: int(plan.turns[0] * 6.28 * plan.orbit[0] / 0.2)]
    assert 1 < near.max() < 14
    assert width.min() >= 0


def test_more_severe_is_more_and_deeper() -> None:
    assert curls(severity=0.9).x.size > 2 * curls(severity=0.1).x.size
    assert curls(severity=0.9).width.mean() > curls(severity=0.1).width.mean()


def test_they_light_where_they_lie() -> None:
    shown = marked("pigtail", seed=4743, size=MIDDLE)
    inside = mask_of(shown)
    for by in changes(shown, "point", (0.4, 0.4), (0.6, 0.5)):
        assert np.abs(by[inside]).mean() > 8 * np.abs(by[~inside]).mean()


def test_they_stay_within_their_box() -> None:
    mask = mask_of(marked("pigtail", 0.9, box=(0.3, 0.3, 0.7, 0.7), seed=4744), size=MIDDLE)
    rows, columns = np.nonzero(mask)
    assert (columns.min() > 115, columns.max() < 365, rows.min() > 75, rows.max() < 245) == (True,) * 4


@pytest.mark.parametrize("removed_um", [2.0, 6.0])
def test_a_cut_narrows_them(removed_um: float) -> None:
    assert 0 <= cover_left("pigtail", removed_um) < 0.75


def test_their_torn_edge_is_whitish() -> None:
    grooves = laid(marked("pigtail")).grooves
    assert 0 < grooves.white.sum() < grooves.cover.sum()
