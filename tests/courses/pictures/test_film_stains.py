"""Plant dye and rust in the pores."""

import numpy as np
import pytest

from courses.pictures.truth import masks
from tests.courses.pictures.films import WHOLE, canvas_of, change, film, lamp_peak, leak, rms, shown

KINDS = ["tannin_stain", "rust_stain"]


@pytest.mark.parametrize("kind", KINDS)
def test_it_shows_on_white_and_hardly_on_black(kind: str) -> None:
    assert rms(change(film(kind, 0.6, "white"), "diffuse")) > 4 * rms(change(film(kind, 0.6, "black"), "diffuse"))


@pytest.mark.parametrize("kind", KINDS)
def test_the_gloss_stays(kind: str) -> None:
    assert lamp_peak(film(kind, 0.8, "white", WHOLE)) == pytest.approx(
        lamp_peak(film(kind, 0.0, "white", WHOLE)), rel=0.05
    )


@pytest.mark.parametrize("kind", KINDS)
def test_it_takes_blue_more_than_green_and_green_more_than_red(kind: str) -> None:
    clean, stained = (canvas_of(film(kind, severity, "white")).albedo.mean((0, 1)) for severity in (0.0, 0.7))
    red, green, blue = 1 - stained / clean
    assert 0 < red < green < blue


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("light", ["diffuse", "point", "raking"])
def test_the_mask_holds_what_changes(kind: str, light: str) -> None:
    assert leak(film(kind, 0.6, "white"), light) < 0.2


@pytest.mark.parametrize("kind", KINDS)
def test_it_grows_with_severity(kind: str) -> None:
    strength = [rms(change(film(kind, severity, "white"), "diffuse")) for severity in (0.05, 0.3, 0.9)]
    assert strength[0] < strength[1] < strength[2]


def test_a_moustache_is_darkest_low_down_and_highest_where_the_bow_pushes() -> None:
    scene = film("tannin_stain", 0.8, "white", WHOLE)
    blue = canvas_of(scene).albedo[..., 2]
    low, middle, top = blue[118:128].mean(), blue[70:90].mean(), blue[:15].mean()
    assert low < middle < top
    stands = masks(scene, "point")[0].sum(0)
    assert stands.max() > 2 * min(stands[:20].mean(), stands[-20:].mean())


def test_rust_begins_at_one_point_and_pales_on_its_way_down() -> None:
    scene = film("rust_stain", 0.7, "white", WHOLE)
    blue, mask = canvas_of(scene).albedo[..., 2], masks(scene, "point")[0]
    rows = np.flatnonzero(mask.any(1))
    first, last = rows[0] + 6, int(rows[0] + 0.6 * (rows[-1] - rows[0]))
    assert np.ptp(np.flatnonzero(mask[rows[0] + 1])) < 14
    assert blue[first : first + 8].min() < 0.8 * blue[last : last + 8].min()
    assert rows[-1] - rows[0] > 80


def test_rust_runs_the_way_the_panel_hangs() -> None:
    upright, turned = (masks(film("rust_stain", 0.7, "white", WHOLE, direction=turn), "point")[0] for turn in (0, 90))
    tall, wide = np.argwhere(upright), np.argwhere(turned)
    assert np.ptp(tall[:, 0]) > 2 * tall[:, 1].std()
    assert wide[:, 1].std() > 2 * wide[:, 0].std()


def test_another_seed_runs_another_way() -> None:
    one, same, other = (shown(film("rust_stain", 0.6, "white", seed=seed), "diffuse") for seed in (31, 31, 32))
    assert np.array_equal(one, same)
    assert not np.array_equal(one, other)
