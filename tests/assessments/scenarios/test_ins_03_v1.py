"""INS-03 version 1, the seeing half: the printed ranges, and what water on the panel tells."""

import pytest

from assessments.scenarios.draw import Drawn, key_of
from assessments.scenarios.fields import Record
from assessments.scenarios.ins_03_v1 import key, pictures
from tests.assessments.scenarios.drawing import (
    assert_captions_tell_nothing,
    assert_inside,
    assert_pictures_stand,
    assert_shares,
    draws,
)


@pytest.fixture(scope="module")
def sweep() -> list[Drawn]:
    return draws("INS-03@1", 200)


def test_every_draw_keeps_to_the_printed_ranges(sweep: list[Drawn]) -> None:
    for drawn in sweep:
        assert_inside(drawn.facts, {"step_um": (8, 10), "film_um": (420, 600)})
        assert_pictures_stand(drawn)


def test_old_glue_lost_colour_and_each_half_come_in_half_of_the_draws(sweep: list[Drawn]) -> None:
    assert_shares(sweep, lambda one: one.facts["glue"], {True: 0.5, False: 0.5})
    assert_shares(sweep, lambda one: one.facts["colour"], {"none": 0.5, "some": 0.5})
    assert_shares(sweep, lambda one: one.facts["half"], {"fore": 0.5, "aft": 0.5})


def test_the_numbers_lie_in_several_cells(sweep: list[Drawn]) -> None:
    for drawn in sweep[:60]:
        assert 3 <= key_of(drawn.scenario, drawn.facts).number("required_n") <= 14


def side(colour: str) -> Record:
    """Numbers in the middle of a cream side."""
    return Record({"colour": colour, "severity": 0.8, "across": 0.5, "down": 0.5, "seed": 8})


@pytest.mark.parametrize("colour", ["none", "some"])
def test_what_water_does_not_hide_stays_and_the_rest_of_the_key_is_the_same(colour: str) -> None:
    # Decal shadows: the film under vinyl is the sound part, so the numbers stand proud (trade page on decals)
    assert key(side(colour)) == {
        "step_verdict": "proud",
        "colour_verdict": colour,
        "verdicts": [{"n": 1, "verdict": "sand"}, {"n": 2, "verdict": "sand"}, {"n": 3, "verdict": "leave"}],
        "band": [1, 2],
    }


def test_the_dry_panel_looks_the_same_whether_colour_was_lost_or_not() -> None:
    none, some = pictures(side("none")), pictures(side("some"))
    assert none == some
    assert (none[0].light, none[0].scene["colour"]) == ("raking", "cream")


def test_captions_tell_nothing() -> None:
    assert_captions_tell_nothing("INS-03@1", ["decal", "ghost", "number", "letter", "proud", "fade"])
