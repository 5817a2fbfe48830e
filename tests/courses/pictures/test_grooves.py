"""Fine marks: where they glint, and how a correction narrows them."""

import numpy as np
import pytest

from courses.pictures.arrays import F32
from courses.pictures.camera import Camera, stand_for
from courses.pictures.grooves import Grooves, width_mm

CAMERA = Camera(stand_for("point", (96, 64)), (96, 64))
HERE = np.array([300.0]), np.array([200.0])


def one(phi: float = 0.0, lost_um: float = 0.0, **more: float) -> Grooves:
    grooves = Grooves(CAMERA, np.full((64, 96), lost_um, F32) if lost_um else None)
    grooves.add(*HERE, phi, 1.0, width_mm(1.0, 0.34), **more)
    return grooves


def seen(grooves: Grooves, dx: float, dy: float) -> float:
    return float(grooves.glint(*(np.full((64, 96), slope, F32) for slope in (dx, dy))).sum())


def test_a_mark_glints_where_the_wanted_slope_lies_across_it() -> None:
    assert seen(one(), 0, 0.1) > 0
    assert seen(one(), 0.1, 0) == 0
    assert seen(one(np.pi / 2), 0.1, 0) == pytest.approx(seen(one(), 0, 0.1), rel=1e-4)


def test_the_glint_is_the_cover_times_the_density_of_slopes() -> None:
    cover = width_mm(1.0, 0.34) / CAMERA.pixel_area[32, 48]
    assert seen(one(), 0, 0) == pytest.approx(cover / (2 * np.pi * 0.011 * 0.34), rel=0.02)


def test_a_mark_lies_where_it_was_added() -> None:
    flat = np.zeros((64, 96), F32)
    row, column = np.argwhere(one().glint(flat, flat) > 0).mean(0)
    px, py = CAMERA.project(300.0, 200.0)
    assert (column, row) == pytest.approx((px, py), abs=0.51)


@pytest.mark.parametrize(("lost_um", "left"), [(0.25, 0.75), (0.5, 0.5), (0.9, 0.1), (1.0, 0.0), (5.0, 0.0)])
def test_a_v_shaped_mark_narrows_by_twice_the_cut_over_its_slope(lost_um: float, left: float) -> None:
    # w' = w - 2 h / s: a mark 1 um deep has lost its width in proportion to the film taken off
    assert float(one(lost_um=lost_um).cover.sum() / one().cover.sum()) == pytest.approx(left, abs=1e-5)


def test_oil_fills_a_shallow_mark_but_never_wholly() -> None:
    assert float(one(filled_um=0.5).cover.sum() / one().cover.sum()) == pytest.approx(0.5, abs=1e-4)
    assert float(one(filled_um=9.0).cover.sum() / one().cover.sum()) == pytest.approx(0.08, abs=1e-4)


def test_white_and_dark_are_shares_of_the_cover() -> None:
    grooves = one(white=0.3, dark=0.1)
    assert grooves.white.sum() == pytest.approx(0.3 * grooves.cover.sum(), rel=1e-4)
    assert grooves.dark.sum() == pytest.approx(0.1 * grooves.cover.sum(), rel=1e-4)


def test_a_bundle_is_so_many_marks() -> None:
    assert one(bundle=5.0).cover.sum() == pytest.approx(5 * one().cover.sum(), rel=1e-4)


def test_what_lies_outside_the_picture_is_left_out() -> None:
    grooves = Grooves(CAMERA)
    grooves.add(np.array([9000.0, 300.0]), np.array([0.0, 200.0]), 0.0, 1.0, 0.01)
    assert len(grooves) == 1


def test_no_marks_give_no_glint() -> None:
    assert seen(Grooves(CAMERA), 0, 0) == 0
