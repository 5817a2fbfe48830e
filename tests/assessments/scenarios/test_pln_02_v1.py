"""PLN-02 version 1: the printed ranges, the ladder that reaches the bottom of heavy chalk, and its minutes."""

import pytest

from assessments.scenarios.draw import Drawn
from assessments.scenarios.fields import Record
from assessments.scenarios.plan_steps import acts, polished, sanded
from assessments.scenarios.pln_02_v1 import LADDER, MINUTES_M2, key, pictures, surface
from tests.assessments.scenarios.drawing import (
    assert_captions_tell_nothing,
    assert_everything_is_told,
    assert_inside,
    assert_pictures_stand,
    assert_shares,
    draws,
)
from tests.assessments.scenarios.planning import keyed, worked

RANGES = {"film_um": (480, 620), "oxidation_um": (13, 14.2), "area_m2": (20, 30)}
START = acts("wash", "tape", "test_spot")


@pytest.fixture(scope="module")
def sweep() -> list[Drawn]:
    return draws("PLN-02@1", 120)


def test_every_draw_keeps_to_the_printed_ranges(sweep: list[Drawn]) -> None:
    for drawn in sweep:
        assert_inside(drawn.facts, RANGES)
        assert_pictures_stand(drawn)
        assert_everything_is_told(drawn)
    assert_shares(sweep, lambda one: one.facts["colour"], {"white": 0.5, "cream": 0.5})


def test_the_ladder_passes_and_polish_or_one_grade_leave_chalk(sweep: list[Drawn]) -> None:
    three = polished("cut", "refine", "finish")
    for drawn in sweep[:8]:
        # 31.6 model µm: the figure of the training model's sheet
        assert keyed(drawn).outcome.removed_um == pytest.approx(31.6, abs=0.2)
        assert keyed(drawn).outcome.minutes == pytest.approx(MINUTES_M2, abs=1)
        tried = [[*START, *sanded(("P1500", 4)), *three], [*START, *polished(*["cut"] * 4)], [*START, *three]]
        verdicts = [keyed(drawn).outcome.verdict, *(worked(drawn, steps).outcome.verdict for steps in tried)]
        assert verdicts == ["pass", "redo", "redo", "redo"]


def test_a_spot_of_one_medium_set_changes_nothing_one_could_see(sweep: list[Drawn]) -> None:
    # The story says so: as pale as before
    for drawn in sweep[:8]:
        assert worked(drawn, acts("wash", "refine", "wipe")).outcome.removed_um < 0.3 * drawn.facts.number(
            "oxidation_um"
        )


def side() -> Record:
    """A cream side."""
    shown = {"substrate": "gel_coat", "colour": "cream", "film_um": 500.0, "oxidation_um": 13.6, "scene_seed": 4}
    return Record(shown)  # type: ignore[arg-type]


def test_the_key_dries_and_looks_after_each_grade() -> None:
    steps = key(side())["steps"]
    assert steps == [*START, *sanded(*LADDER), *polished("cut", "refine", "finish")]
    assert [grade for grade, _ in LADDER] == ["P1000", "P1500", "P2000"]


def test_picture_and_surface_hold_the_same_chalk() -> None:
    (shown,) = pictures(side())
    assert [one["depth_um"] for one in shown.scene["defects"]] == [surface(side())["oxidation_um"]]  # type: ignore[attr-defined]
    assert (shown.light, shown.seen) == ("raking", (0,))


def test_nothing_under_the_picture_names_the_finding() -> None:
    assert_captions_tell_nothing("PLN-02@1", ["oxid", "chalk", "pale", "dust", "polish"])
