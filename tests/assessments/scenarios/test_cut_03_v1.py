"""CUT-03 version 1: the printed ranges, a nail that says what the simulator says, plans for hard, slow and poor."""

import pytest

from assessments.scenarios import cut_03_v1 as cut_03
from assessments.scenarios.cut_03_v1 import REPAIR, cure_before, key, model, surface
from assessments.scenarios.draw import Drawn, key_of
from assessments.scenarios.fields import Record
from assessments.scenarios.plan_steps import Step, acts, in_zone, polished, sanded
from assessments.scenarios.worked import wavering
from courses.shipped import catalogue, constants
from courses.trade.abrasives import d50_um, scratch_um
from courses.trade.surface import PanelSurface, read_plan, simulate
from tests.assessments.scenarios.drawing import assert_everything_is_told, assert_inside, assert_shares, draws
from tests.assessments.scenarios.planning import keyed, steps_in, worked

NAIL: Step = {"op": "cure_test", "zone": REPAIR}


@pytest.fixture(scope="module")
def sweep() -> list[Drawn]:
    return draws("CUT-03@1", 240)


def test_every_draw_keeps_to_the_printed_ranges(sweep: list[Drawn]) -> None:
    for drawn in sweep:
        facts = drawn.facts
        assert_inside(facts, {"laid_h": (14, 17), "age_h": (14, 30), "shop_degc": (8, 13), "film_um": (450, 550)})
        # nothing cures below 10 °C, so what is hard was never colder
        assert drawn.kind != "skin" or facts.number("shop_degc") >= cut_03.LEAST_DEGC
        poor = drawn.kind == "underdosed"
        assert_inside(facts, {"catalyst_pct": (1.0, 1.1) if poor else (1.2, 1.4), "stray_um": (5.9, 5.9)})
        assert ("need_h" in facts) == (drawn.kind == "slow")
        assert_everything_is_told(drawn)
    assert_shares(sweep, lambda one: one.facts["core"], {"soft": 0.6, "hard": 0.4})
    # of the soft ones 70 in 100 turn hard
    assert_shares(sweep, lambda one: one.kind, {"skin": 0.4, "slow": 0.42, "underdosed": 0.18})
    assert_shares(sweep, lambda one: one.facts["thumb"], {"print": 0.5, "sticky": 0.5})


def test_the_marks_are_those_of_p800_and_the_law_of_cure_is_the_models() -> None:
    law, disc, cure = constants().sanding, constants().pads["disc"], constants().cure
    rz = scratch_um(d50_um("P800"), law.rz_um, law.rz_exponent, law.reference_um)
    assert (round(rz, 2), round(rz * disc.stray, 1)) == (cut_03.LEFT_UM["rz_um"], cut_03.LEFT_UM["tail_um"])
    assert (cure.least_degc, cure.most_degc, cure.doubling_k) == (
        cut_03.LEAST_DEGC,
        cut_03.MOST_DEGC,
        cut_03.DOUBLING_K,
    )
    at_slowest = cure.rate_h * 2 ** ((cut_03.SLOWEST_DEGC - cure.rate_degc) / cure.doubling_k)
    assert at_slowest == pytest.approx(cut_03.RATE_H, abs=2e-4)
    assert constants().gates.cured == cut_03.HARD


def test_every_key_flattens_what_is_hard_and_leaves_what_stays_soft(sweep: list[Drawn]) -> None:
    for drawn in sweep[:24]:
        assert keyed(drawn).outcome.verdict == ("redo" if drawn.kind == "underdosed" else "pass")
        assert wavering(drawn.scenario, drawn.facts, steps_in(key_of(drawn.scenario, drawn.facts))) == ()


def test_what_is_soft_is_torn_and_what_was_tested_too_soon_as_well(sweep: list[Drawn]) -> None:
    flat = in_zone(REPAIR, [*sanded(("P1000", 3), ("P1500", 4), ("P2000", 3)), *polished("cut", "refine", "finish")])
    soft = next(one for one in sweep if one.kind == "slow")
    assert worked(soft, flat).outcome.verdict == "harm"
    assert worked(soft, [{"op": "wait", "hours": 4, "warm_degc": 20}, NAIL, *flat]).outcome.verdict == "harm"
    poor = next(one for one in sweep if one.kind == "underdosed")
    assert worked(poor, [{"op": "wait", "hours": 48, "warm_degc": 30}, NAIL, *flat]).outcome.verdict == "harm"


def repair(core: str = "soft", **more: float) -> Record:
    """A fill in a white side."""
    return Record({"core": core, "colour": "white", "film_um": 500, **more})


def said(facts: Record, *steps: Step, warm: float = 24.0) -> list[tuple[object, object, object]]:
    """Number, hour and answer of the nail at each test."""
    rows = model(facts, {}, {"steps": list(steps), "warm_c": warm})["tests"]
    assert isinstance(rows, list)
    return [(row["n"], row["at_h"], row["result"]) for row in rows]


def wait(hours: float, degc: float) -> Step:
    return {"op": "wait", "hours": hours, "warm_degc": degc}


@pytest.mark.parametrize("need_h", [12.0, 16.0, 20.0])
@pytest.mark.parametrize("degc", [8.0, 18.0, 22.0, 28.0, 35.0, 60.0])
def test_the_nail_and_the_simulator_never_disagree(need_h: float, degc: float) -> None:
    facts = repair(need_h=need_h)
    panel = PanelSurface.of(surface(facts), catalogue(), constants())
    for hours in range(1, 25):
        plan = (wait(hours, degc), NAIL)
        found = simulate(panel, read_plan(plan, panel), constants(), optics="none").states[-1].found
        assert said(facts, *plan)[0][2] == ("hard" if "no mark" in found[0] else "soft")


def test_a_slow_one_is_hard_after_its_hours_at_18_sooner_when_warmer_never_in_the_cold() -> None:
    slow = repair(need_h=16.0)
    assert said(slow, wait(15, 18), NAIL, wait(1, 18), NAIL) == [(2, 15.0, "soft"), (4, 16.0, "hard")]
    # twice as fast ten kelvin warmer, and no faster over 35 °C: 16 / 2^1.7 = 4.92 h
    assert said(slow, wait(8, 28), NAIL) == [(2, 8.0, "hard")]
    assert said(slow, wait(5, 60), NAIL) == [(2, 5.0, "hard")]
    assert said(slow, wait(4.9, 60), NAIL) == [(2, 4.9, "soft")]
    assert said(slow, wait(72, 9), NAIL) == [(2, 72.0, "soft")]


def test_time_that_no_wait_tells_of_goes_by_at_the_warmth_of_the_answer() -> None:
    slow = repair(need_h=12.0)
    assert said(slow, {**NAIL, "at_h": 12.0}, warm=18.0) == [(1, 12.0, "hard")]
    assert said(slow, {**NAIL, "at_h": 12.0}, warm=8.0) == [(1, 12.0, "soft")]
    assert said(slow, {"op": "wait", "hours": 12}, NAIL, warm=18.0) == [(2, 12.0, "hard")]


def test_a_hard_core_is_hard_at_once_a_poor_one_never_and_the_side_tells_nothing() -> None:
    assert said(repair("hard"), *acts("wipe"), NAIL) == [(2, 0.0, "hard")]
    assert said(repair(), wait(1000, 30), {"op": "cure_test"}) == [(2, 1000.0, "soft")]
    assert said(repair("hard"), {**NAIL, "zone": "side"}) == []


@pytest.mark.parametrize(
    ("facts", "decision", "ops", "launch"),
    [
        (repair("hard"), "now", ["wipe", "cure_test", "tape", "sand"], "kept"),
        (repair(need_h=14.0), "wait", ["tell", "wait", "cure_test", "tape", "sand"], "moved"),
        (repair(), "wait", ["tell", "wait", "cure_test"], "moved"),
    ],
)
def test_the_core_decides(facts: Record, decision: str, ops: list[str], launch: str) -> None:
    worked_key = key(facts)
    steps = worked_key["steps"]
    assert isinstance(steps, list)
    assert [step["op"] for step in steps][: len(ops)] == ops
    assert len(steps) == 3 or len(steps) > 10
    assert (worked_key["decision"], worked_key["launch"], worked_key["if_soft"]) == (decision, launch, "cut_out_redo")


def test_a_fill_that_needs_longer_starts_further_back() -> None:
    assert [cure_before(hours) for hours in (12.0, 16.0, 20.0)] == [0.6433, 0.4548, 0.1669]
