"""INS-05 version 1: the printed ranges, domes under a low lamp, the same answer whatever the helper says."""

import pytest

from assessments.scenarios.draw import Drawn, key_of
from assessments.scenarios.fields import Record
from assessments.scenarios.ins_05_v1 import key, pictures
from tests.assessments.scenarios.drawing import (
    assert_captions_tell_nothing,
    assert_inside,
    assert_pictures_stand,
    assert_shares,
    draws,
)


@pytest.fixture(scope="module")
def sweep() -> list[Drawn]:
    return draws("INS-05@1", 200)


def test_every_draw_keeps_to_the_printed_ranges(sweep: list[Drawn]) -> None:
    for drawn in sweep:
        assert_inside(drawn.facts, {"count": (3, 40), "largest_mm": (5, 30)})
        assert_pictures_stand(drawn)


def test_pinheads_flaking_paint_and_a_dry_hull_come_as_often_as_printed(sweep: list[Drawn]) -> None:
    assert_shares(sweep, lambda one: one.facts["signs"], {"domes": 0.5, "pinheads": 0.3, "paint": 0.2})
    assert_shares(sweep, lambda one: one.facts["hull"], {"wet": 0.5, "dry": 0.5})


def test_the_domes_lie_in_several_cells(sweep: list[Drawn]) -> None:
    for drawn in sweep[:60]:
        assert 3 <= key_of(drawn.scenario, drawn.facts).number("required_n") <= 12


def bottom(signs: str) -> Record:
    """The worst place in the middle of a grey bottom."""
    return Record({"signs": signs, "colour": "grey", "severity": 0.6, "across": 0.5, "down": 0.5, "seed": 2})


def test_pinheads_are_noted_too_and_nothing_else_depends_on_the_signs() -> None:
    # Osmosis pages: hard dry pinheads are air voids, and only opening a dome tells what it is
    domes, pinheads, paint = (key(bottom(signs)) for signs in ("domes", "pinheads", "paint"))
    assert domes == paint
    assert pinheads == {**domes, "actions": ["map", "photo", "measure", "pinheads"]}
    assert domes["layer"] == "survey"
    assert domes["refer_zones"] == domes["record_zones"] == ["domes"]


def test_the_picture_is_taken_with_the_lamp_held_low() -> None:
    (shown,) = pictures(bottom("domes"))
    assert (shown.light, shown.scene["substrate"], shown.scene["colour"]) == ("raking", "topcoat_2k", "grey")
    assert shown.zones[0].verdict == "refer"


def test_captions_tell_nothing() -> None:
    assert_captions_tell_nothing("INS-05@1", ["blister", "dome", "osmo", "bubble", "void"])
