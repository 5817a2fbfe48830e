"""A panel built once and shot often; its twin; before and after a correction."""

import io

import numpy as np
import pytest
from PIL import Image

from courses.pictures import LIGHTS, Panel, Scene
from courses.pictures.colour import lightness
from tests.courses.pictures.panels import MIDDLE, SMALL, marked, scene


def rgb(shown: Scene, light: str = "point", lamp: tuple[float, float] = (0.5, 0.42)) -> np.ndarray:
    return Panel.build(shown, light).shoot(lamp).rgb


@pytest.mark.parametrize("light", LIGHTS)
def test_a_scene_gives_the_same_pixels_again_and_another_seed_others(light: str) -> None:
    first = rgb(marked("swirl", seed=5), light)
    assert (first.shape, first.dtype) == ((160, 240, 3), np.uint8)
    assert (first == rgb(marked("swirl", seed=5), light)).all()
    assert (first != rgb(marked("swirl", seed=6), light)).any()


def test_shots_do_not_depend_on_what_was_shot_before() -> None:
    panel = Panel.build(marked("hologram"), "point")
    first = panel.shoot((0.3, 0.5)).rgb
    panel.shoot((0.7, 0.2))
    assert (panel.shoot((0.3, 0.5)).rgb == first).all()


@pytest.mark.parametrize("kind", ["swirl", "oxidation", "blisters", "scum_line", "orange_peel"])
def test_texture_grain_and_exposure_are_those_of_the_clean_panel(kind: str) -> None:
    shown, clean = marked(kind, box=(0.6, 0.6, 0.98, 0.95)), scene()
    for light in LIGHTS:
        with_it, bare = Panel.build(shown, light).shoot(), Panel.build(clean, light).shoot()
        assert with_it.exposure == bare.exposure
        # bloom carries a trace of any brightness over the whole picture: a level of 255, no more
        off = np.abs(with_it.rgb[:60, :90].astype(int) - bare.rgb[:60, :90])
        assert (off.max() <= 2, off.mean() < 0.15) == (True, True)


def test_a_twin_is_the_panel_without_the_defect() -> None:
    shown = scene({"kind": "scratch"}, {"kind": "swirl"})
    panel = Panel.build(shown, "point")
    assert (panel.shoot(without=frozenset({0, 1})).rgb == rgb(scene())).all()
    assert (panel.shoot(without=frozenset({1})).rgb != panel.shoot().rgb).any()


def test_a_defect_keeps_its_place_when_another_is_left_out() -> None:
    shown = scene({"kind": "swirl"}, {"kind": "scratch"})
    panel = Panel.build(shown, "point")
    first, again = (panel.shoot(without=frozenset({0})).rgb for _ in range(2))
    assert (first == again).all()
    assert (first != panel.shoot(without=frozenset({1})).rgb).any()


def test_at_equal_exposure_a_correction_is_seen() -> None:
    before, after = (Panel.build(marked("swirl", removed_um=taken, size=MIDDLE), "point").shoot() for taken in (0, 3))
    clean = lightness(Panel.build(scene(size=MIDDLE), "point").shoot().rgb)
    assert before.exposure == after.exposure
    left = [np.sqrt(((lightness(one.rgb) - clean) ** 2).mean()) for one in (before, after)]
    assert left[1] < 0.4 * left[0]


def test_beside_a_tape_only_one_half_is_corrected() -> None:
    whole, half = (rgb(marked("swirl", removed_um=3, removed_right_of=at)) for at in (1.0, 0.5))
    off = np.abs(whole.astype(int) - half).mean(axis=2)
    assert off[30:110, 135:].mean() > 4 * off[30:110, :105].mean()


def test_a_file_is_small_and_holds_the_picture_alone() -> None:
    shot = Panel.build(marked("swirl", 0.7, size=(960, 640)), "point").shoot()
    file = shot.webp()
    read = Image.open(io.BytesIO(file))
    assert (read.format, read.size, len(read.getexif())) == ("WEBP", (960, 640), 0)
    assert len(file) <= 40_000
    assert np.abs(np.asarray(read, float) - shot.rgb).mean() < 4


def test_other_sizes_show_the_same_panel() -> None:
    small, large = (rgb(marked("scratch", size=size)) for size in (SMALL, MIDDLE))
    shrunk = np.asarray(Image.fromarray(large).resize(SMALL, Image.Resampling.BOX), float)
    assert np.abs(shrunk - small).mean() < 3
