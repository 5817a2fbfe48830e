"""PLN-08 version 1: the printed ranges, strays that one stage too few left behind, one side worked by hand."""

import pytest

from assessments.scenarios.draw import Drawn
from assessments.scenarios.fields import Record
from assessments.scenarios.plan_steps import acts, polished, sanded
from assessments.scenarios.pln_08_v1 import key, pictures, surface
from tests.assessments.scenarios.drawing import (
    assert_captions_tell_nothing,
    assert_everything_is_told,
    assert_inside,
    assert_pictures_stand,
    draws,
)
from tests.assessments.scenarios.planning import keyed, worked

RANGES = {
    "film_um": (450, 550),
    "tail_um": (2.1, 2.3),
    "budget": (25, 28),
    "reserve": (250, 250),
    "launch_h": (17, 19),
}
POLISH = polished("cut", "refine", "finish")


@pytest.fixture(scope="module")
def sweep() -> list[Drawn]:
    return draws("PLN-08@1", 120)


def test_every_draw_keeps_to_the_printed_ranges(sweep: list[Drawn]) -> None:
    for drawn in sweep:
        assert_inside(drawn.facts, RANGES)
        assert_pictures_stand(drawn)
        assert_everything_is_told(drawn)
    assert {one.facts["colour"] for one in sweep} == {"navy", "black", "green"}


def test_the_stray_is_what_one_medium_set_leaves_of_p1000(sweep: list[Drawn]) -> None:
    # 4.7 of P1000 less 0.75 of the 3.0 a medium wool set takes, and 0.4 of the 0.6 of a finish: 2.2
    left_um = 4.7 - 0.75 * 3.0 - 0.4 * 0.6
    for drawn in sweep:
        assert drawn.facts.number("tail_um") == pytest.approx(left_um, abs=0.11)


@pytest.mark.parametrize(
    ("steps", "verdict"),
    [
        ([*sanded(("P1500", 3)), *POLISH], "pass"),
        ([*sanded(("P2000", 3)), *POLISH], "pass"),
        (POLISH, "pass"),
        (polished("finish"), "redo"),
        (acts("wash", "wipe"), "redo"),
        ([*sanded(("P800", 4), ("P1000", 3), ("P1500", 4), ("P2000", 3)), *POLISH], "harm"),
    ],
)
def test_one_stage_back_clears_it_and_the_start_spends_it(
    sweep: list[Drawn], steps: list[dict[str, object]], verdict: str
) -> None:
    for drawn in sweep[:6]:
        assert worked(drawn, [*acts("tape"), *steps]).outcome.verdict == verdict


def test_the_key_takes_11_of_25_and_clears_the_strays(sweep: list[Drawn]) -> None:
    for drawn in sweep[:6]:
        outcome = keyed(drawn).outcome
        # 11.4: two passes of P1500 at 1.9, and the polish at 7.6, from the training model's sheet
        assert outcome.verdict == "pass"
        assert outcome.removed_um == pytest.approx(11.4, abs=0.2)
        assert outcome.tail_um <= outcome.own_tail_um + 0.2


def side() -> Record:
    """A navy side with strays of P1000."""
    return Record({"colour": "navy", "film_um": 500.0, "budget": 26.0, "reserve": 250.0, "tail_um": 2.2,
                   "direction": 4, "scene_seed": 8})  # fmt: skip


def test_the_key_goes_back_one_stage_and_no_further() -> None:
    worked_key = key(side())
    steps = worked_key["steps"]
    assert isinstance(steps, list)
    assert [(step["grade"], step["passes"]) for step in steps if step["op"] == "sand"] == [("P1500", 2)]
    assert (worked_key["stage"], worked_key["restart"]) == ("P1000_to_medium", "P1500")


def test_picture_and_surface_hold_the_same_strays() -> None:
    (shown,) = pictures(side())
    marks = shown.scene["defects"]
    assert isinstance(marks, list)
    assert [one["depth_um"] for one in marks] == [surface(side())["tail_um"]] == [2.2]
    assert (shown.light, shown.seen, len(shown.lamps)) == ("point", (0,), 5)


def test_nothing_under_the_picture_names_what_is_on_it() -> None:
    assert_captions_tell_nothing("PLN-08@1", ["sand", "line", "stray", "grade", "paper"])
