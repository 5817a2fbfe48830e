"""INS-07 version 1: the printed ranges, oils that hide what lies under them, two panels worked by hand."""

import pytest

from assessments.scenarios.draw import Drawn
from assessments.scenarios.fields import Record
from assessments.scenarios.ins_07_v1 import key, pictures
from tests.assessments.scenarios.drawing import (
    assert_captions_tell_nothing,
    assert_everything_is_told,
    assert_inside,
    assert_pictures_stand,
    assert_shares,
    draws,
)

FILM = {"gel_coat": (420, 560), "clear_coat": (52, 58)}


@pytest.fixture(scope="module")
def sweep() -> list[Drawn]:
    return draws("INS-07@1", 240)


def test_every_draw_keeps_to_the_printed_ranges(sweep: list[Drawn]) -> None:
    for drawn in sweep:
        facts = drawn.facts
        assert_inside(
            facts, {"stray_um": (0.05, 0.2), "film_um": FILM[str(facts["substrate"])], "paid_h": (12.5, 13.5)}
        )
        assert ("trail_um" in facts) == facts["trails"] == (facts["true_defect"] == "hologram")
        assert_inside(facts, {"trail_um": (0.2, 0.25)} if facts["trails"] else {})
        assert facts["given"] == ("gloss", "film", "log")
        assert not (facts["soft"] and facts["substrate"] == "gel_coat")
        assert_pictures_stand(drawn)
        assert_everything_is_told(drawn)


def test_three_panels_in_five_have_trails_and_one_in_three_is_soft(sweep: list[Drawn]) -> None:
    assert_shares(sweep, lambda one: one.facts["trails"], {True: 0.6, False: 0.4})
    assert_shares(sweep, lambda one: one.facts["soft"], {True: 1 / 3, False: 2 / 3})


def test_the_job_sheet_tells_nothing(sweep: list[Drawn]) -> None:
    for trails in (True, False):
        assert {one.facts["sheet"] for one in sweep if one.facts["trails"] is trails} == {"rotary", "da"}


def panel(trails: bool) -> Record:
    """A black hull straight from the machine."""
    marks = {"trail_um": 0.22, "true_defect": "hologram"} if trails else {"true_defect": "none"}
    return Record(
        {"substrate": "gel_coat", "colour": "black", "trails": trails, "direction": 5, "scene_seed": 2, **marks}
    )


@pytest.mark.parametrize(("trails", "remedy", "released"), [(True, "finish_da", False), (False, "none", True)])
def test_what_the_wipe_shows_decides(trails: bool, remedy: str, released: bool) -> None:
    worked = key(panel(trails))
    assert (worked["remedy"], worked["released"]) == (remedy, released)
    assert worked["steps"] == [{"op": "wipe"}, {"op": "lamp", "place": "left"}, {"op": "lamp", "place": "right"}]


def test_oils_lie_on_the_panel_until_it_is_wiped() -> None:
    as_it_stands, other_side, wiped = pictures(panel(trails=True))
    assert as_it_stands.scene == other_side.scene
    assert as_it_stands.lamps != other_side.lamps
    assert (as_it_stands.scene["oils"], "oils" in wiped.scene, wiped.sought) == (True, False, (0,))
    assert [shown.sought for shown in pictures(panel(trails=False))] == [(), (), ()]


def test_nothing_under_a_picture_names_what_is_on_it() -> None:
    assert_captions_tell_nothing("INS-07@1", ["holo", "trail", "swirl", "clean", "band", "perfect", "nothing"])
