"""The panel of a plan before and after: what was taken off is taken off, what nothing took stays."""

import pytest

from courses.pictures import Scene
from courses.pictures.plan_scenes import LAMPS, after, before
from courses.shipped import catalogue, panels

DONE = {"removed_um": 0.0, "trail_um": 0.0, "tail_um": 0.0, "residual": [], "zones": []}


def scenes(surface, **outcome):
    """Return both scenes of a surface, worked with this outcome."""
    found = {**DONE, "residual": [{**one, "left": 1.0} for one in surface.get("defects", ())], **outcome}
    return before(surface, 3, catalogue()), after(surface, found, 3, catalogue())


def surface(*defects, **more):
    return {"substrate": "clear_coat", "colour": "navy", "film_um": 48.0, "defects": list(defects), **more}


SWIRL = {"kind": "swirl", "depth_um": 0.8}
SPOTS = {"kind": "water_spots_mineral", "depth_um": 2.0}


@pytest.mark.parametrize("code", panels())
def test_every_panel_that_is_drawn_can_be_pictured(code):
    kind = panels()[code]
    for number in range(1, 30):
        for scene in scenes(kind.drawn(number), removed_um=7.3, trail_um=0.2, tail_um=1.4):
            assert Scene.of(scene, catalogue()).seed == 3


def test_nothing_done_leaves_the_panel_as_it_was():
    one, other = scenes(surface(SWIRL, oxidation_um=3.0, tail_um=1.2), tail_um=1.2)
    assert other == {**one, "removed_um": 0.0}
    assert [mark["kind"] for mark in one["defects"]] == ["oxidation", "swirl"]


def test_what_was_taken_off_is_rounded_and_what_was_left_passed_on():
    _one, other = scenes(surface(oxidation_um=8.0), removed_um=7.3, trail_um=0.25, tail_um=1.43)
    assert (other["removed_um"], other["trail_um"], other["tail_um"]) == (7.5, 0.25, 1.43)


def test_marks_in_the_film_lose_what_the_model_says_and_not_all_that_was_cut():
    _one, other = scenes(surface(SWIRL), removed_um=2.0, residual=[{"kind": "swirl", "depth_um": 0.3, "left": 0.6}])
    assert other["removed_um"] == 0.5
    _one, gone = scenes(surface(SWIRL), removed_um=2.0, residual=[{"kind": "swirl", "depth_um": 0.0, "left": 0.0}])
    assert gone["removed_um"] == 2.0


def test_deposits_go_with_chemistry_alone():
    dissolved = [{"kind": "water_spots_mineral", "depth_um": 0.0, "left": 0.0}]
    assert [mark["kind"] for mark in scenes(surface(SPOTS), residual=dissolved)[1]["defects"]] == []
    assert [mark["kind"] for mark in scenes(surface(SPOTS), removed_um=4.0)[1]["defects"]] == ["water_spots_mineral"]


def test_a_crack_stays_whatever_was_taken_off():
    _one, other = scenes(surface({"kind": "crack_star"}), removed_um=30.0)
    assert [mark["kind"] for mark in other["defects"]] == ["crack_star"]


def test_marks_that_the_plan_made_are_shown():
    dragged = [{"kind": "scratch", "depth_um": 1.9, "left": 1.0}]
    made = scenes(surface(), residual=dragged)[1]["defects"]
    assert made == [{"kind": "scratch", "depth_um": 3.0}]


def test_where_no_film_is_left_it_is_burnt_through():
    zones = [{"name": "main", "film_um": 31.0}, {"name": "edge", "film_um": 0.0}]
    burnt = scenes(surface(), removed_um=12.0, zones=zones)[1]["defects"]
    assert burnt == [{"kind": "burn_through", "region": {"box": [0.84, 0.0, 1.0, 1.0]}}]


def test_even_light_has_one_place_and_a_lamp_has_three():
    assert {light: len(places) for light, places in LAMPS.items()} == {"point": 3, "raking": 3, "diffuse": 1}
