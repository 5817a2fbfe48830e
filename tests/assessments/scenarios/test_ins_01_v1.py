"""INS-01 version 1: the printed ranges, a note that is right in half of all draws, one panel worked by hand."""

import pytest

from assessments.scenarios.draw import Drawn
from assessments.scenarios.fields import Record
from assessments.scenarios.ins_01_v1 import key, pictures
from tests.assessments.scenarios.drawing import (
    assert_captions_tell_nothing,
    assert_everything_is_told,
    assert_inside,
    assert_pictures_stand,
    assert_shares,
    draws,
)

RANGES = {"back_h": (15, 17), "minutes_left": (20, 40), "severity": (0.45, 0.75)}


@pytest.fixture(scope="module")
def sweep() -> list[Drawn]:
    return draws("INS-01@1", 240)


def test_every_draw_keeps_to_the_printed_ranges(sweep: list[Drawn]) -> None:
    for drawn in sweep:
        assert_inside(drawn.facts, RANGES)
        assert drawn.facts["colour"] in ("navy", "black")
        assert_pictures_stand(drawn)
        assert_everything_is_told(drawn)
    assert {one.facts["substrate"] for one in sweep} == {"gel_coat", "clear_coat"}


def test_the_note_agrees_with_the_panel_in_half_of_the_draws(sweep: list[Drawn]) -> None:
    assert_shares(sweep, lambda one: one.facts["noted"] == one.facts["true_defect"], {True: 0.5, False: 0.5})
    assert {one.facts["noted"] for one in sweep} == {"swirl", "hologram"}


def test_oils_lie_on_three_panels_in_five(sweep: list[Drawn]) -> None:
    assert_shares(sweep, lambda one: one.facts["oils"], {True: 0.6, False: 0.4})


def test_each_kind_comes_as_often_as_its_weight_says(sweep: list[Drawn]) -> None:
    assert_shares(sweep, lambda one: one.facts["true_defect"], {"swirl": 3 / 8, "hologram": 3 / 8, "da_haze": 2 / 8})


def panel(true_defect: str) -> Record:
    """A navy hull with oils on it, noted as swirls."""
    return Record(
        {
            "substrate": "gel_coat",
            "colour": "navy",
            "noted": "swirl",
            "true_defect": true_defect,
            "oils": True,
            "severity": 0.6,
            "direction": 10,
            "scene_seed": 4,
        }
    )


@pytest.mark.parametrize(
    ("true_defect", "moves", "cause", "mild"),
    [
        # L03: rings travel whole, bands brighten and dim in place, a fog doesn't dance
        ("swirl", "rings_travel", "wash_grit", ["finish_foam_da", "cut_foam_da"]),
        ("hologram", "bands_flash", "rotary_tilt", ["finish_foam_da"]),
        ("da_haze", "fog_sits", "harsh_pad", ["finish_foam_da"]),
    ],
)
def test_the_key_follows_the_marks_and_not_the_note(true_defect: str, moves: str, cause: str, mild: list[str]) -> None:
    worked = key(panel(true_defect))
    assert (worked["defect"], worked["moves"], worked["cause"], worked["mild"]) == (true_defect, moves, cause, mild)
    assert worked["first_try"] == mild[-1]
    assert worked["finish_after"] == "da"


def test_oils_lie_on_the_panel_until_it_is_wiped() -> None:
    even_light, as_found, wiped = pictures(panel("hologram"))
    assert (even_light.light, as_found.light, wiped.light) == ("diffuse", "point", "point")
    assert (even_light.scene["oils"], as_found.scene["oils"], "oils" in wiped.scene) == (True, True, False)
    assert as_found.scene["defects"] == wiped.scene["defects"]
    assert (len(as_found.lamps), len(wiped.lamps), wiped.sought) == (1, 5, (0,))


def test_nothing_under_a_picture_names_the_marks() -> None:
    assert_captions_tell_nothing("INS-01@1", ["swirl", "ring", "holo", "trail", "band", "haze", "fog", "clean"])
