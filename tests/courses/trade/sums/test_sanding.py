"""The sum of sanding an area: lesson 15's side worked out, and its parts against the other sums."""

import pytest

from courses.shipped import constants
from courses.trade import estimate
from courses.trade.sums import SUMS, work_out


def figures(**inputs: object) -> dict[str, float]:
    result = work_out("sanding", inputs)
    return {one.name: one.value for one in (result.output, *result.also)}


def test_the_side_of_lesson_15_comes_out() -> None:
    """7.08 m² × 13.9 min = 1.64 h; five sections of two discs, 9.4 by area. Times of the model, discs by practice."""
    assert figures(area_m2=7.08) == {
        "hours_h": 1.64,
        "discs": 10.0,
        "discs_by_area": 9.4,
        "removed_um": 7.53,
        "stray_um": 2.87,
    }


@pytest.mark.parametrize(("grade", "passes"), [("P800", 5), ("P1000", 3), ("P2000", 3)])
def test_cut_and_line_are_those_of_the_other_sums(grade: str, passes: int) -> None:
    sander = {"machine": "sander", "speed_rpm": 8000, "force_n": 25, "arm_mps": 0.15}
    found = figures(grade=grade, passes=passes, area_m2=1)
    assert found["removed_um"] == work_out("removal", {"cuts": grade, "passes": passes, **sander}).value
    assert found["stray_um"] == work_out("scratch_depth", {"grade": grade}).also[0].value


def test_a_small_place_still_takes_a_whole_disc() -> None:
    assert figures(area_m2=0.2, section_m2=0.2)["discs"] == 1.0
    assert figures(area_m2=10, section_m2=1.6)["discs"] == 7 * 3


def test_shops_need_as_long_as_common_practice_says() -> None:
    """0.20 to 0.35 h a square metre for a grade, all told: common practice, no source."""
    assert [0.19 <= figures(area_m2=1, passes=passes)["hours_h"] <= 0.35 for passes in (3, 4, 5)] == [True] * 3


def test_what_it_opens_with_is_what_is_shipped() -> None:
    minutes = constants().minutes
    defaults = {one.name: one.default for one in SUMS["sanding"].inputs}
    assert defaults["apart_min"] == minutes["dry"] + minutes["inspect"]
    assert defaults["section_m2"] == pytest.approx(estimate.section_m2(0.80))
