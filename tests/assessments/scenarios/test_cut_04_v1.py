"""CUT-04 version 1: the printed ranges, one set that takes the trails out, one panel worked by hand."""

import pytest

from assessments.scenarios.cut_04_v1 import key, pictures, surface
from assessments.scenarios.draw import Drawn, key_of
from assessments.scenarios.fields import Record
from assessments.scenarios.plan_steps import acts, polished, sanded
from assessments.scenarios.worked import wavering
from tests.assessments.scenarios.drawing import (
    assert_captions_tell_nothing,
    assert_everything_is_told,
    assert_inside,
    assert_pictures_stand,
    assert_shares,
    draws,
)
from tests.assessments.scenarios.planning import keyed, steps_in, worked

FILM = {"gel_coat": (420, 560), "clear_coat": (52, 58)}
RESERVE = {"gel_coat": 250, "clear_coat": 30}
SLOW_WOOL = {"op": "refine", "pad": "wool", "compound": "fine", "machine": "rotary", "speeds_rpm": [600, 700, 800]}


@pytest.fixture(scope="module")
def sweep() -> list[Drawn]:
    return draws("CUT-04@1", 160)


def test_every_draw_keeps_to_the_printed_ranges(sweep: list[Drawn]) -> None:
    for drawn in sweep:
        facts, substrate = drawn.facts, str(drawn.facts["substrate"])
        assert_inside(facts, {"trail_um": (0.2, 0.25), "stray_um": (0.05, 0.2), "film_um": FILM[substrate]})
        assert (facts["reserve"], facts["left_min"]) == (RESERVE[substrate], 60)
        assert not (facts["soft"] and substrate == "gel_coat")
        assert_pictures_stand(drawn)
        assert_everything_is_told(drawn)
    assert_shares(sweep, lambda one: one.facts["substrate"], {"gel_coat": 0.5, "clear_coat": 0.5})
    assert_shares(sweep, lambda one: one.facts["soft"], {True: 0.25, False: 0.75})


def test_one_finishing_set_clears_them_however_the_constants_are_off(sweep: list[Drawn]) -> None:
    for drawn in sweep[:8]:
        assert keyed(drawn).outcome.verdict == "pass"
        assert wavering(drawn.scenario, drawn.facts, steps_in(key_of(drawn.scenario, drawn.facts))) == ()


def test_wool_makes_them_again_and_paper_leaves_more(sweep: list[Drawn]) -> None:
    for drawn in sweep[:8]:
        again = worked(drawn, [*acts("tape"), SLOW_WOOL, *acts("wipe")]).outcome
        assert (again.verdict, again.trail_um > 0.1) == ("redo", True)
        paper = worked(drawn, [*acts("tape"), *sanded(("P2000", 3)), *polished("finish")]).outcome
        assert paper.verdict != "pass"
        assert paper.tail_um > paper.own_tail_um + 0.2


def panel(soft: bool) -> Record:
    """A black door with trails."""
    return Record({"substrate": "clear_coat", "colour": "black", "soft": soft, "film_um": 54.0, "reserve": 30.0,
                   "trail_um": 0.22, "stray_um": 0.1, "direction": 5, "scene_seed": 2})  # fmt: skip


def test_the_key_is_one_set_a_wipe_and_two_lamp_places() -> None:
    worked_key = key(panel(soft=False))
    assert [step["op"] for step in worked_key["steps"]] == ["tape", "finish", "wipe", "inspect"]  # type: ignore[attr-defined]
    assert (worked_key["defect"], worked_key["cause"], worked_key["proof"]) == (
        "hologram",
        "rotary_wool",
        ["right", "left"],
    )


def test_soft_clear_is_soft_on_the_model_too() -> None:
    assert (surface(panel(soft=True))["hardness"], surface(panel(soft=False))["hardness"]) == (1.3, 1.0)


def test_the_lamp_stands_at_five_places_and_the_trails_have_to_be_found() -> None:
    (by_lamp,) = pictures(panel(soft=False))
    assert (by_lamp.light, by_lamp.sought, len(by_lamp.lamps)) == ("point", (0,), 5)


def test_nothing_under_the_picture_names_what_is_on_it() -> None:
    assert_captions_tell_nothing("CUT-04@1", ["holo", "trail", "swirl", "band", "fan"])
