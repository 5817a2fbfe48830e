"""The score: verdict first, then film, then marks, then minutes."""

from typing import Any

import pytest
from hypothesis import given, settings

from tests.courses.trade.surface.drawn import plans, surfaces
from tests.courses.trade.surface.plans import (
    DA_MEDIUM,
    FINISH,
    HEAVY,
    MEDIUM,
    MILD_CHALK,
    POLISH,
    SWIRL_OUT,
    SWIRLED,
    TAPE,
    TEST,
    WASH,
    WIPE,
    Steps,
    act,
    sand,
    worked,
)

LOW = {"pass": 80.0, "redo": 40.0, "harm": 0.0}


@given(surface=surfaces, steps=plans)
@settings(max_examples=60)
def test_a_score_lies_in_the_band_of_its_verdict(surface: dict[str, Any], steps: Steps) -> None:
    found = worked(surface, steps, optics="none").outcome
    assert LOW[found.verdict] <= found.score <= (100.0 if found.verdict == "pass" else LOW[found.verdict] + 40.1)


@pytest.mark.parametrize(
    ("surface", "sparing", "spending"),
    [
        (MILD_CHALK, (WASH, TAPE, TEST, MEDIUM, MEDIUM, FINISH, WIPE), (WASH, TAPE, TEST, *POLISH)),
        (MILD_CHALK, (WASH, *POLISH), (WASH, TAPE, TEST, sand(1500, 2), *POLISH)),
        (SWIRLED, SWIRL_OUT, (*SWIRL_OUT, FINISH, WIPE)),
    ],
)
def test_of_two_plans_that_pass_the_one_that_spends_less_film_is_higher(
    surface: dict[str, Any], sparing: Steps, spending: Steps
) -> None:
    less, more = worked(surface, sparing).outcome, worked(surface, spending).outcome
    assert (less.verdict, more.verdict) == ("pass", "pass")
    assert less.removed_um < more.removed_um
    assert less.score > more.score


def test_on_the_same_film_the_one_with_fewer_marks_is_higher_then_the_quicker() -> None:
    one = (WASH, TAPE, HEAVY, MEDIUM, FINISH, WIPE)
    slower = (*one, act("inspect"))
    quick, slow = (worked(MILD_CHALK, steps).outcome for steps in (one, slower))
    assert quick.removed_um == slow.removed_um
    assert quick.score > slow.score
    fine = (WASH, TAPE, DA_MEDIUM, act("finish", compound="fine"), WIPE)
    turned = (WASH, TAPE, act("finish", compound="fine"), DA_MEDIUM, WIPE)
    smooth, rough = (
        worked(SWIRLED | {"agreed": {"gloss60": 60.0, "gloss20": 30.0}}, steps).outcome for steps in (fine, turned)
    )
    assert (smooth.verdict, rough.verdict) == ("pass", "pass")
    assert smooth.removed_um == pytest.approx(rough.removed_um)
    assert smooth.score > rough.score
