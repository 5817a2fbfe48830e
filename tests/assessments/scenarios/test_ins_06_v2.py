"""INS-06 version 2: drawn and shown as version 1, a hollow with its depth, and a plan for each kind of ring."""

from collections.abc import Mapping, Sequence

import pytest

from assessments.scenarios import ins_06_v1
from assessments.scenarios.draw import Drawn
from assessments.scenarios.fields import Record
from assessments.scenarios.ins_06_v2 import key, pictures, surface
from courses.shipped import catalogue, constants
from courses.trade.surface import PanelSurface, Run, read_plan, simulate, unsteady
from tests.assessments.scenarios.drawing import (
    assert_captions_tell_nothing,
    assert_everything_is_told,
    assert_inside,
    assert_pictures_stand,
    draws,
)

Steps = Sequence[Mapping[str, object]]
KINDS = ("mineral", "both", "etched", "silica")


def rings(true_defect: str, etch_um: float = 0.8, panel_degc: float = 20.0) -> Record:
    """Such rings on a black side that nobody has put acid on."""
    etched = {"etch_um": etch_um} if true_defect in ("etched", "both") else {}
    told = {"true_defect": true_defect, "acid": "none", "colour": "black", "film_um": 480.0}
    return Record({**told, "panel_degc": panel_degc, **etched})


def run(steps: object, facts: Record) -> Run:
    """The plan, worked on them."""
    assert isinstance(steps, Sequence)
    side = PanelSurface.of(surface(facts), catalogue(), constants())
    plan = read_plan(steps, side)
    assert unsteady(side, plan, constants()) == ()
    return simulate(side, plan, constants(), optics="none")


def on_the_side(*ops: str) -> Steps:
    """These steps with what they take where nothing is said, all on the side."""
    return [{"op": op, "zone": "side"} for op in ops]


@pytest.fixture(scope="module")
def sweep() -> list[Drawn]:
    return draws("INS-06@2", 80)


def test_every_draw_keeps_to_the_printed_ranges(sweep: list[Drawn]) -> None:
    for drawn in sweep:
        facts = drawn.facts
        assert_inside(facts, {"film_um": (420, 560), "panel_degc": (14, 40), "limit_degc": (30, 30)})
        assert ("etch_um" in facts) == (facts["true_defect"] in ("etched", "both"))
        assert_inside(facts, {"etch_um": (0.7, 0.9)} if "etch_um" in facts else {})
        assert_pictures_stand(drawn)
        assert_everything_is_told(drawn)
    assert_captions_tell_nothing("INS-06@2", ["lime", "mineral", "etch", "silica", "hollow", "proud", "crater"])


def test_what_is_shown_is_that_of_version_1() -> None:
    assert pictures is ins_06_v1.pictures


@pytest.mark.parametrize("true_defect", KINDS)
@pytest.mark.parametrize("etch_um", [0.7, 0.9])
def test_the_plan_of_the_key_passes_on_a_hot_panel_too(true_defect: str, etch_um: float) -> None:
    facts = rings(true_defect, etch_um, panel_degc=38.0)
    worked = run(key(facts)["steps"], facts)
    assert worked.outcome.verdict == "pass"
    # 2.72 and 0.62: six passes of a cutting foam and four of a finishing foam, both by dual action
    assert worked.outcome.removed_um == pytest.approx(3.34 if true_defect in ("etched", "both") else 0.0, abs=0.01)


def test_the_key_cools_the_panel_before_acid() -> None:
    facts = rings("mineral", panel_degc=38.0)
    steps = key(facts)["steps"]
    assert isinstance(steps, list)
    at_acid = next(state for state in run(steps, facts).states if steps[state.step - 1]["op"] == "acid")
    assert at_acid.panel_degc < 30


@pytest.mark.parametrize(
    ("true_defect", "ops", "verdict"),
    [
        ("mineral", ("finish", "wipe"), "redo"),
        ("mineral", ("cut", "wipe", "finish", "wipe"), "redo"),
        ("both", ("acid", "rinse"), "redo"),
        ("etched", ("finish", "wipe"), "redo"),
        ("etched", ("acid", "rinse"), "redo"),
        ("silica", ("clay",), "pass"),
    ],
)
def test_what_does_not_fit_the_rings_leaves_them(true_defect: str, ops: tuple[str, ...], verdict: str) -> None:
    assert run(on_the_side(*ops), rings(true_defect)).outcome.verdict == verdict


@pytest.mark.parametrize("true_defect", KINDS)
def test_a_ladder_from_p1000_is_a_harm_on_any_of_them(true_defect: str) -> None:
    paper = [{"op": "sand", "grade": grade, "zone": "side"} for grade in ("P1000", "P1500", "P2000")]
    assert run([*paper, *on_the_side("cut", "refine", "finish")], rings(true_defect)).outcome.verdict == "harm"
