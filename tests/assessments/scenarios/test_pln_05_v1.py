"""PLN-05 version 1: the printed ranges, swirls that only a lamp shows, a plan that soft and normal clear coat stand."""

import pytest

from assessments.scenarios.draw import Drawn
from assessments.scenarios.fields import Record
from assessments.scenarios.plan_steps import acts, polished, sanded
from assessments.scenarios.pln_05_v1 import CUTTING_FOAM, key, pictures, surface
from tests.assessments.scenarios.drawing import (
    assert_captions_tell_nothing,
    assert_inside,
    assert_pictures_stand,
    assert_shares,
    draws,
)
from tests.assessments.scenarios.planning import keyed, worked

RANGES = {"film_um": (44, 58), "swirl_um": (0.7, 0.88), "reserve": (30, 30), "budget": (8, 8)}
START = acts("wash", "tape", "test_spot")


@pytest.fixture(scope="module")
def sweep() -> list[Drawn]:
    return draws("PLN-05@1", 160)


def test_every_draw_keeps_to_the_printed_ranges(sweep: list[Drawn]) -> None:
    for drawn in sweep:
        assert_inside(drawn.facts, RANGES)
        assert (drawn.facts["substrate"], drawn.facts["colour"]) == ("clear_coat", "black")
        assert_pictures_stand(drawn)
    assert_shares(sweep, lambda one: one.facts["soft"], {True: 0.5, False: 0.5})


def test_the_key_spares_film_on_soft_and_on_normal_clear_coat(sweep: list[Drawn]) -> None:
    # 3.3 model µm on a normal, 4.3 on a soft one: the figures of the training model's sheet
    for drawn in sweep[:10]:
        outcome = keyed(drawn).outcome
        assert outcome.verdict == "pass"
        assert outcome.removed_um == pytest.approx(4.3 if drawn.facts["soft"] else 3.3, abs=0.15)


def test_sanding_breaks_the_budget_and_wool_or_a_finish_alone_leave_something(sweep: list[Drawn]) -> None:
    plans = (sanded(("P1500", 4)) + polished("cut", "refine", "finish"), polished("refine"), polished("finish"))
    for drawn in sweep[:10]:
        outcomes = [worked(drawn, [*START, *work]).outcome for work in plans]
        assert [one.verdict for one in outcomes] == ["harm", "redo", "redo"]
        assert outcomes[0].removed_um > 11 > drawn.facts.number("budget")


def bonnet(soft: bool) -> Record:
    """A black bonnet."""
    shown = {"substrate": "clear_coat", "colour": "black", "soft": soft, "film_um": 50.0, "swirl_um": 0.8}
    return Record({**shown, "reserve": 30.0, "budget": 8.0, "scene_seed": 4})  # type: ignore[dict-item]


def test_the_plan_is_the_same_whether_the_clear_coat_is_soft_or_not() -> None:
    assert key(bonnet(True)) == key(bonnet(False))
    assert key(bonnet(True))["steps"] == [
        *START,
        {**CUTTING_FOAM, "passes": 6},
        {"op": "wipe"},
        {"op": "finish"},
        {"op": "wipe"},
        {"op": "inspect"},
    ]
    assert [surface(bonnet(soft))["hardness"] for soft in (False, True)] == [1.0, 1.3]


def test_a_grey_sky_shows_nothing_and_the_lamp_shows_it() -> None:
    yard, lamp = pictures(bonnet(False))
    assert yard.scene == lamp.scene
    assert (yard.light, yard.unseen, lamp.light, lamp.seen) == ("diffuse", (0,), "point", (0,))


def test_nothing_under_a_picture_names_what_is_on_it() -> None:
    assert_captions_tell_nothing("PLN-05@1", ["swirl", "scratch", "ring", "wash", "holo"])
