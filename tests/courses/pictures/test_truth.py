"""Masks and cells: where each defect is, without rendering."""

import io
import time

import numpy as np
import pytest
from PIL import Image

from courses.pictures import CELLS, cell_shares, mask_files, masks, required_and_allowed
from courses.pictures.scene import LIGHTS
from tests.courses.pictures.panels import FULL, MIDDLE, marked, scene

BARE = dict.fromkeys(CELLS, 0.0)


def test_cells_are_named_row_by_row() -> None:
    assert (CELLS[0], CELLS[5], CELLS[6], CELLS[-1], len(CELLS)) == ("A1", "A6", "B1", "D6", 24)


@pytest.mark.parametrize("light", LIGHTS)
def test_a_box_fills_its_cells_in_every_light(light: str) -> None:
    shares = cell_shares(marked("swirl", box=(1 / 3, 0.25, 2 / 3, 0.75), size=FULL), light)[0]
    required, allowed = required_and_allowed([shares], [False])
    assert required == ("B3", "B4", "C3", "C4")
    assert set(allowed) == {f"{row}{column}" for row in "ABCD" for column in (2, 3, 4, 5)}


def test_thin_marks_are_made_wider_before_cells_are_counted() -> None:
    shown = marked("scratch", box=(0, 0.3, 1, 0.7), direction=0, size=FULL)
    filled = masks(shown, "point")[0].mean() * 24
    assert sum(cell_shares(shown, "point")[0].values()) > 3 * filled


def test_shares_hardly_depend_on_the_size_of_the_picture() -> None:
    for kind in ("swirl", "pigtail"):
        box = (0.1, 0.1, 0.6, 0.9)
        small, large = (cell_shares(marked(kind, box=box, size=size), "point")[0] for size in (MIDDLE, FULL))
        assert [small[cell] for cell in CELLS] == pytest.approx([large[cell] for cell in CELLS], abs=0.06)


def test_coarse_cells_agree_with_the_fine_mask() -> None:
    shown = marked("sanding_marks", box=(0.2, 0.2, 0.8, 0.6), size=FULL)
    mask = masks(shown, "diffuse")[0].reshape(4, 160, 6, 160).mean((1, 3)).ravel()
    assert list(cell_shares(shown, "diffuse")[0].values()) == pytest.approx(mask.tolist(), abs=0.03)


def test_twelve_defects_take_little_time() -> None:
    kinds = ("swirl", "hologram", "da_haze", "scratch", "pigtail", "crosshatch")
    shown = scene(*[{"kind": kind} for kind in kinds] * 2)
    cell_shares(shown, "point")
    began = time.process_time()
    cell_shares(shown, "point")
    assert time.process_time() - began < 0.6


def test_required_is_a_fifth_allowed_a_thirtieth_and_the_ring() -> None:
    shares = BARE | {"C3": 0.21, "A6": 0.19, "D1": 0.029}
    required, allowed = required_and_allowed([shares], [False])
    assert required == ("C3",)
    assert set(allowed) == {"A6", *(f"{row}{column}" for row in "BCD" for column in "234")}


def test_a_thin_mark_is_required_where_it_is_present() -> None:
    required, _allowed = required_and_allowed([BARE | {"B2": 0.031, "B3": 0.029}], [True])
    assert required == ("B2",)


def test_several_defects_of_a_zone_add_up() -> None:
    required, _allowed = required_and_allowed([BARE | {"A1": 0.5}, BARE | {"D6": 0.1}], [False, True])
    assert required == ("A1", "D6")
    assert required_and_allowed([], []) == ((), ())


def test_mask_files_are_white_where_the_defect_lies() -> None:
    shown = scene({"kind": "swirl", "region": {"box": [0, 0, 0.5, 1]}}, {"kind": "scratch"})
    files = mask_files(shown, "point")
    assert list(files) == ["00-swirl.png", "01-scratch.png"]
    read = np.asarray(Image.open(io.BytesIO(files["00-swirl.png"])))
    assert (read > 0).tolist() == masks(shown, "point")[0].tolist()
    assert set(np.unique(read)) == {0, 255}
