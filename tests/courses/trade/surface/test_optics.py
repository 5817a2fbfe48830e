"""Gloss and haze of a worked film."""

import pytest

from courses.trade.gloss import gloss, smooth_gloss
from courses.trade.surface.condition import Condition
from courses.trade.surface.optics import Reading, dullest, reading_of
from tests.courses.trade.model import constants
from tests.courses.trade.surface.plans import FINISH, GEL, HEAVY, MEDIUM, SWIRLED, WASH, panel, sand, worked


@pytest.mark.parametrize(("step", "gloss60", "gloss20"), [(HEAVY, 77, 33), (MEDIUM, 92, 72), (FINISH, 97, 94)])
def test_what_each_pad_leaves_on_gel_coat_without_its_trail(
    step: dict[str, object], gloss60: float, gloss20: float
) -> None:
    """The fact sheet's 77/33, 92/72 and 97/94 leave strays and trails out."""
    one = worked(GEL, (WASH, step)).states[-1].conditions[0].copy()
    one.trail_um, one.tail_um = 0.0, one.rz_um
    found = reading_of(one, 1.55, constants())
    assert (found.gloss60, found.gloss20) == pytest.approx((gloss60, gloss20), abs=0.6)


@pytest.mark.parametrize(
    ("grade", "gloss60"),
    [(320, 8), (600, 11), (800, 13), (1000, 14), (1500, 17), (2000, 19), (3000, 26)],
)
def test_what_a_grade_reads_where_it_is_stopped(grade: int, gloss60: float) -> None:
    """The fact sheet's table, of the mean scratch alone; ±1."""
    one = worked(GEL, (WASH, sand(grade, 3))).states[-1].conditions[0].copy()
    one.tail_um = one.rz_um
    assert reading_of(one, 1.55, constants()).gloss60 == pytest.approx(gloss60, abs=1.0)


def test_a_sound_film_reads_almost_what_a_smooth_one_does() -> None:
    one = Condition.of(panel(GEL).parts[0], constants())
    found = reading_of(one, 1.55, constants())
    assert found.gloss60 == pytest.approx(gloss(1.55, 0.2 * (0.95 * 0.05**2 + 0.05 * 0.1**2) ** 0.5, 3.0, 60))
    assert 96 < found.gloss60 < smooth_gloss(1.55, 60)


def test_chalk_and_marks_take_gloss_away_and_what_is_left_out_does_not() -> None:
    swirled = Condition.of(panel(SWIRLED).parts[0], constants())
    all_in, without = (reading_of(swirled, 1.5, constants(), but) for but in ((), ("swirl",)))
    assert all_in.gloss60 == pytest.approx(without.gloss60 * (1 - 0.06))
    chalky = Condition.of(panel(GEL | {"oxidation_um": 8.0}).parts[0], constants())
    assert (
        reading_of(chalky, 1.55, constants()).gloss60
        < 5
        < 90
        < reading_of(chalky, 1.55, constants(), ("oxidation",)).gloss60
    )


def test_the_roughest_film_still_reads_something() -> None:
    coarse = worked(GEL | {"film_um": 2000.0}, (WASH, sand(80, 2))).outcome
    assert coarse.gloss60 is not None
    assert 0 <= coarse.gloss60 < 10


def test_the_dullest_zone_speaks_for_the_panel() -> None:
    bright, dull = Reading(97, 94, 0.4), Reading(86, 51, 2.0)
    assert dullest([bright, dull]) is dull
    assert dull.as_json() == {"gloss60": 86, "gloss20": 51, "haze": 2.0}
