"""CUT-02 version 1: the printed ranges, a part that is done again, and what nothing else reaches."""

import pytest

from assessments.scenarios.cut_02_v1 import DISC_M2, REDONE, SATIN, key, pictures, surface
from assessments.scenarios.draw import Drawn, key_of
from assessments.scenarios.fields import Record
from assessments.scenarios.plan_steps import in_zone, polished, sanded
from assessments.scenarios.worked import wavering
from courses.shipped import constants
from courses.trade.abrasives import d50_um, scratch_um
from tests.assessments.scenarios.drawing import (
    assert_captions_tell_nothing,
    assert_inside,
    assert_pictures_stand,
    assert_shares,
    draws,
)
from tests.assessments.scenarios.planning import keyed, needed_um, steps_in, worked

RANGES = {"section_m": (1.2, 2.0), "stray_um": (7.5, 9.0), "budget": (25, 28), "film_um": (450, 550)}


@pytest.fixture(scope="module")
def sweep() -> list[Drawn]:
    return draws("CUT-02@1", 160)


def test_every_draw_keeps_to_the_printed_ranges(sweep: list[Drawn]) -> None:
    for drawn in sweep:
        assert_inside(drawn.facts, RANGES)
        assert drawn.facts["reserve"] == 250
        assert drawn.facts["cause"] == drawn.kind
        assert_pictures_stand(drawn)
    third = 1 / 3
    assert_shares(sweep, lambda one: one.kind, {"dropped": third, "torn": third, "dulled": third})
    # four sections in ten were not looked at
    assert_shares(sweep, lambda one: one.facts["looked"], {True: 0.6, False: 0.4})


def test_the_field_is_as_p1500_leaves_it() -> None:
    law, disc = constants().sanding, constants().pads["disc"]
    rz = scratch_um(d50_um("P1500"), law.rz_um, law.rz_exponent, law.reference_um)
    assert (round(rz, 2), round(rz * disc.stray, 2)) == (SATIN["rz_um"], SATIN["tail_um"])


def test_the_part_done_again_comes_clear_inside_the_budget_however_the_constants_are_off(sweep: list[Drawn]) -> None:
    for drawn in sweep[:12]:
        outcome, steps = keyed(drawn).outcome, steps_in(key_of(drawn.scenario, drawn.facts))
        assert (outcome.verdict, wavering(drawn.scenario, drawn.facts, steps)) == ("pass", ())
        assert outcome.removed_um <= 25
        assert needed_um(drawn) == drawn.facts["stray_um"]


def test_neither_pads_nor_a_dull_disc_reach_the_bottom_and_p800_spends_too_much(sweep: list[Drawn]) -> None:
    dull = [{"op": "sand", "zone": "part", "grade": "P1500", "disc": 2.0, "force_n": 40}, *polished("cut", "finish")]
    ladder = [*sanded(("P800", 4), ("P1000", 4), *REDONE), *polished("cut", "refine", "finish")]
    for drawn in sweep[:12]:
        for plan in (dull, polished("cut", "refine", "finish")):
            left = worked(drawn, plan).outcome
            assert (left.verdict, left.tail_um > left.own_tail_um + 0.2) == ("redo", True)
        spent = worked(drawn, ladder).outcome
        assert (spent.verdict, spent.removed_um > 40) == ("harm", True)


def told(cause: str, section_m: float = 1.6) -> Record:
    return Record({"cause": cause, "colour": "grey", "section_m": section_m, "stray_um": 8.0, "budget": 26.0,
                   "film_um": 500, "reserve": 250, "looked": True, "across": 0.5, "down": 0.44, "direction": 10,
                   "scene_seed": 3})  # fmt: skip


@pytest.mark.parametrize(("section_m", "discs"), [(1.2, 2), (1.6, 2), (1.8, 2), (1.9, 3), (2.0, 3)])
def test_discs_go_by_area(section_m: float, discs: int) -> None:
    # common practice, no source: a disc does 0.5 to 1 m²; 1.2 x 0.8 / 0.75 = 1.28, 1.9 x 0.8 / 0.75 = 2.03
    assert constants().disc.fresh_m2 == DISC_M2
    assert key(told("torn", section_m))["discs"] == discs


def test_the_key_stays_on_the_part_until_the_pads_come() -> None:
    worked_key = key(told("dropped"))
    steps = worked_key["steps"]
    assert isinstance(steps, list)
    assert [step["op"] for step in steps[:3]] == ["rinse", "dry", "inspect"]
    assert steps[3:9] == in_zone("part", sanded(*REDONE))
    assert steps[9:] == polished("cut", "refine", "finish")
    assert (worked_key["cause"], worked_key["zone"]) == ("dropped", ["part"])


def test_a_section_that_nobody_looked_at_is_still_wet() -> None:
    wet = Record({**told("torn"), "looked": False})
    assert (surface(told("torn"))["wet"], surface(wet)["wet"]) == (False, True)


@pytest.mark.parametrize(
    ("cause", "kinds"),
    [("dropped", ["pigtail"]), ("torn", ["pigtail"]), ("dulled", ["sanding_marks", "sanding_marks"])],
)
def test_each_cause_has_its_marks(cause: str, kinds: list[str]) -> None:
    (shown,) = pictures(told(cause))
    marks = shown.scene["defects"]
    assert isinstance(marks, list)
    assert [one["kind"] for one in marks] == kinds
    assert {one["depth_um"] for one in marks} == {8.0}
    assert (shown.light, len(shown.lamps), shown.zones[0].name) == ("raking", 3, "part")


def test_captions_tell_nothing() -> None:
    assert_captions_tell_nothing("CUT-02@1", ["curl", "pigtail", "arc", "patch", "grit", "disc"])
