"""INS-02 version 1: the printed shares and ranges, what each picture may show, three sides worked by hand."""

import pytest

from assessments.scenarios.draw import Drawn
from assessments.scenarios.fields import Record
from assessments.scenarios.ins_02_v1 import key, pictures
from tests.assessments.scenarios.drawing import (
    assert_captions_tell_nothing,
    assert_everything_is_told,
    assert_inside,
    assert_pictures_stand,
    assert_shares,
    draws,
    told_by,
)

RANGES = {"film_um": (420, 560), "chalk_severity": (0.35, 0.55), "fade_severity": (0.5, 0.75)}
KINDS = {"oxidation": ["oxidation"], "fading": ["fading"], "both": ["oxidation", "fading"]}


@pytest.fixture(scope="module")
def sweep() -> list[Drawn]:
    return draws("INS-02@1", 240)


def kinds_in(shown_scene: object) -> list[str]:
    assert isinstance(shown_scene, list)
    return [one["kind"] for one in shown_scene]


def test_every_draw_keeps_to_the_printed_ranges(sweep: list[Drawn]) -> None:
    for drawn in sweep:
        assert_inside(drawn.facts, RANGES)
        assert drawn.facts["substrate"] == "gel_coat"
        assert_pictures_stand(drawn)
        assert_everything_is_told(drawn)
    assert {one.facts["colour"] for one in sweep} == {"red", "blue", "green"}


def test_truths_and_wax_come_in_their_printed_shares(sweep: list[Drawn]) -> None:
    assert_shares(sweep, lambda one: one.facts["true_defect"], {"oxidation": 0.4, "fading": 0.3, "both": 0.3})
    assert_shares(sweep, lambda one: one.facts["wax"], {True: 0.3, False: 0.7})


def side(true_defect: str, wax: bool = False) -> Record:
    """A red side, pale to starboard."""
    shown = {"colour": "red", "chalk_severity": 0.45, "fade_severity": 0.6, "scene_seed": 9}
    return Record({"true_defect": true_defect, "wax": wax, **shown})


@pytest.mark.parametrize(
    ("true_defect", "promise", "work"),
    [
        # L02: chalk goes and the colour is back; colour lost in depth stays lost, one polish for gloss is fine
        ("oxidation", "colour_back", ["test_spot", "cut", "finish", "record", "tell"]),
        ("both", "part", ["test_spot", "cut", "finish", "record", "tell"]),
        ("fading", "gloss_only", ["test_spot", "finish", "record", "tell"]),
    ],
)
def test_promise_and_work_follow_the_finding(true_defect: str, promise: str, work: list[str]) -> None:
    worked = key(side(true_defect))
    steps = worked["steps"]
    assert isinstance(steps, list)
    assert (worked["promise"], [step["op"] for step in steps]) == (promise, work)


def test_beads_are_wiped_before_water_and_cloth_are_believed() -> None:
    assert key(side("both", wax=True))["asked"] == ["wipe", "wet", "cloth", "covered_patch", "spot"]
    assert key(side("both"))["asked"] == ["wet", "cloth", "covered_patch", "spot"]


def test_water_and_cloth_say_nothing_under_wax_until_it_is_wiped(sweep: list[Drawn]) -> None:
    waxed = next(one for one in sweep if one.facts["wax"] and one.facts["true_defect"] == "oxidation")
    assert "beads" in told_by(waxed, "wet")
    assert told_by(waxed, "cloth") == "The cloth slides, and stays clean."
    assert told_by(waxed, "wet", "wipe").startswith(
        "On the wiped part the water lies flat. While it is wet the colour is"
    )
    assert told_by(waxed, "cloth", "wipe").startswith("On the wiped part the cloth comes away with a")
    bare = next(one for one in sweep if not one.facts["wax"] and one.facts["true_defect"] == "oxidation")
    assert told_by(bare, "wet") == told_by(bare, "wet", "wipe")


@pytest.mark.parametrize("true_defect", ["oxidation", "fading", "both"])
def test_water_hides_chalk_and_leaves_fading(true_defect: str) -> None:
    dry, wetted, taped = pictures(side(true_defect))
    assert kinds_in(dry.scene["defects"]) == KINDS[true_defect]
    assert kinds_in(wetted.scene["defects"]) == [kind for kind in KINDS[true_defect] if kind == "fading"]
    assert taped.scene["defects"] == dry.scene["defects"]
    assert (taped.scene["removed_um"], taped.scene["removed_right_of"]) == (15.0, 0.67)
    assert dry.seen == tuple(range(len(KINDS[true_defect])))


def test_nothing_under_a_picture_names_the_finding() -> None:
    assert_captions_tell_nothing("INS-02@1", ["fad", "oxid", "chalk", "pale", "shade", "colour"])
