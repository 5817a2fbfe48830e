"""PLN-01 version 1: the printed ranges, what the mild plan takes and what a ladder would."""

import pytest

from assessments.scenarios.draw import Drawn
from assessments.scenarios.fields import Record
from assessments.scenarios.plan_steps import acts, polished, sanded
from assessments.scenarios.pln_01_v1 import CUT_UM, key, pictures, surface
from tests.assessments.scenarios.drawing import (
    assert_captions_tell_nothing,
    assert_everything_is_told,
    assert_inside,
    assert_pictures_stand,
    draws,
)
from tests.assessments.scenarios.planning import keyed, needed_um, worked

RANGES = {"film_um": (420, 600), "oxidation_um": (2.6, 2.8), "booked_min": (90, 140), "econ": (3, 3)}
START = acts("wash", "tape", "test_spot")


@pytest.fixture(scope="module")
def sweep() -> list[Drawn]:
    return draws("PLN-01@1", 120)


def test_every_draw_keeps_to_the_printed_ranges(sweep: list[Drawn]) -> None:
    for drawn in sweep:
        assert_inside(drawn.facts, RANGES)
        assert_pictures_stand(drawn)
        assert_everything_is_told(drawn)
    assert {one.facts["colour"] for one in sweep} == {"red", "blue", "green"}


def test_what_is_needed_and_what_each_plan_takes(sweep: list[Drawn]) -> None:
    # the figures of the training model's sheet: need 3.7 to 4.0, medium twice and finish 6.6, heavy first 7.6,
    # P1500 first 15.2, a ladder from P1000 31.6
    three = polished("cut", "refine", "finish")
    ladder = sanded(("P1000", 4), ("P1500", 4), ("P2000", 3))
    for drawn in sweep[:8]:
        assert 3.65 <= needed_um(drawn) <= 4.05
        taken = [
            keyed(drawn),
            *(worked(drawn, [*START, *work]) for work in (three, sanded(("P1500", 4)) + three, ladder + three)),
        ]
        assert [run.outcome.removed_um for run in taken] == pytest.approx([CUT_UM, 7.6, 15.2, 31.6], abs=0.15)
        assert [run.outcome.verdict for run in taken] == ["pass", "pass", "pass", "harm"]


def side() -> Record:
    """A blue side with 500 of film."""
    shown = {"substrate": "gel_coat", "colour": "blue", "film_um": 500.0, "oxidation_um": 2.7, "scene_seed": 4}
    return Record(shown)  # type: ignore[arg-type]


def test_the_key_tries_twice_plans_two_medium_sets_and_foretells_what_they_leave() -> None:
    worked_out = key(side())
    assert worked_out["film_um"] == 493  # 500 less 6.6
    assert worked_out["trials"] == [{"op": "spot_refine", "sets": "1"}, {"op": "spot_refine", "sets": "2"}]
    assert worked_out["steps"] == [
        *START,
        {"op": "refine"},
        {"op": "wipe"},
        {"op": "refine"},
        {"op": "wipe"},
        {"op": "finish"},
        {"op": "wipe"},
    ]


def test_picture_and_surface_hold_the_same_chalk() -> None:
    (shown,) = pictures(side())
    assert [one["depth_um"] for one in shown.scene["defects"]] == [surface(side())["oxidation_um"]]  # type: ignore[attr-defined]
    assert (shown.light, shown.seen) == ("diffuse", (0,))


def test_nothing_under_the_picture_names_the_finding() -> None:
    assert_captions_tell_nothing("PLN-01@1", ["oxid", "chalk", "pale", "dull", "polish"])
