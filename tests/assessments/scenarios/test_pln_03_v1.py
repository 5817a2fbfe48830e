"""PLN-03 version 1: the printed ranges, a log that shows two spots too mild, the one grade that is enough."""

import pytest

from assessments.scenarios.draw import Drawn
from assessments.scenarios.fields import Record
from assessments.scenarios.plan_steps import acts, polished, sanded
from assessments.scenarios.pln_03_v1 import MISSING, key, pictures, surface
from tests.assessments.scenarios.drawing import (
    assert_captions_tell_nothing,
    assert_everything_is_told,
    assert_inside,
    assert_pictures_stand,
    draws,
    told_by,
)
from tests.assessments.scenarios.planning import keyed, needed_um, worked

RANGES = {"film_um": (450, 580), "oxidation_um": (8, 8.6), "econ": (1.9, 1.9)}
START = acts("wash", "tape", "test_spot")
THREE = polished("cut", "refine", "finish")


@pytest.fixture(scope="module")
def sweep() -> list[Drawn]:
    return draws("PLN-03@1", 120)


def test_every_draw_keeps_to_the_printed_ranges(sweep: list[Drawn]) -> None:
    for drawn in sweep:
        assert_inside(drawn.facts, RANGES)
        assert drawn.facts["missing"] == MISSING
        assert_pictures_stand(drawn)
        assert_everything_is_told(drawn)
    assert {one.facts["colour"] for one in sweep} == {"navy", "green", "red"}


def test_the_film_is_told_to_who_asks_and_nowhere_else(sweep: list[Drawn]) -> None:
    for drawn in sweep[:20]:
        film = f"{drawn.facts.number('film_um'):.0f}"
        assert [one for one in ("covered_patch", "gloss", "gauge", "wet") if film in told_by(drawn, one)] == ["gauge"]


def test_one_grade_is_enough_and_economical_and_a_ladder_is_not(sweep: list[Drawn]) -> None:
    # 15.2 and 31.6 model µm: the figures of the training model's sheet
    ladder = [*START, *sanded(("P1000", 4), ("P1500", 4), ("P2000", 3)), *THREE]
    for drawn in sweep[:8]:
        most = drawn.facts.number("econ") * needed_um(drawn)
        mild, strong = keyed(drawn).outcome, worked(drawn, ladder).outcome
        assert (mild.verdict, strong.verdict) == ("pass", "pass")
        assert mild.removed_um == pytest.approx(15.2, abs=0.2)
        assert mild.removed_um < most < strong.removed_um == pytest.approx(31.6, abs=0.2)


def test_polish_alone_or_a_finish_over_the_grade_is_too_little(sweep: list[Drawn]) -> None:
    for drawn in sweep[:8]:
        short = ([*START, *THREE], [*START, *sanded(("P1500", 4)), *polished("finish")])
        assert [worked(drawn, steps).outcome.verdict for steps in short] == ["redo", "redo"]


def side() -> Record:
    """A navy side."""
    shown = {"substrate": "gel_coat", "colour": "navy", "film_um": 500.0, "oxidation_um": 8.2, "scene_seed": 4}
    return Record(shown)  # type: ignore[arg-type]


def test_the_key_changes_one_thing_against_the_last_spot_of_the_log() -> None:
    worked_out = key(side())
    # the log ends with one set of heavy compound; paper instead of it is one change, the number of sets stays
    assert worked_out["trials"] == [{"op": "spot_sand", "grade": "P1500", "sets": "1"}]
    assert worked_out["steps"] == [*START, *sanded(("P1500", 4)), *THREE]


def test_picture_and_surface_hold_the_same_chalk() -> None:
    (shown,) = pictures(side())
    assert [one["depth_um"] for one in shown.scene["defects"]] == [surface(side())["oxidation_um"]]  # type: ignore[attr-defined]
    assert (shown.light, shown.seen) == ("diffuse", (0,))


def test_nothing_under_the_picture_names_the_finding() -> None:
    assert_captions_tell_nothing("PLN-03@1", ["oxid", "chalk", "pale", "dull", "polish"])
