"""INS-03 version 2: drawn and shown as version 1, and a plan that the model surface takes down flat."""

from collections.abc import Mapping, Sequence

import pytest

from assessments.scenarios import ins_03_v1
from assessments.scenarios.draw import Drawn
from assessments.scenarios.fields import Record
from assessments.scenarios.ins_03_v2 import draw, key, pictures, surface
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
READY: Steps = [{"op": "wipe"}, {"op": "tape"}]
POLISH: Steps = [{"op": op, "zone": "band"} for op in ("cut", "wipe", "refine", "wipe", "finish", "wipe")]


def numbers(step_um: float = 9.0, film_um: float = 500.0) -> Record:
    """Old numbers that stand so high."""
    return Record({"step_um": step_um, "film_um": film_um, "colour": "none"})


def panel(facts: Record) -> PanelSurface:
    """Its surface, read."""
    return PanelSurface.of(surface(facts), catalogue(), constants())


def worked(steps: Steps, facts: Record) -> Run:
    """The plan, worked on it."""
    return simulate(panel(facts), read_plan(steps, panel(facts)), constants(), optics="none")


def paper(zone: str, pad: str) -> Steps:
    """P1500 and P2000 there, with that behind them."""
    stages = (("P1500", 4), ("P2000", 3))
    return [{"op": "sand", "grade": grade, "passes": passes, "zone": zone, "pad": pad} for grade, passes in stages]


@pytest.fixture(scope="module")
def sweep() -> list[Drawn]:
    return draws("INS-03@2", 60)


def test_every_draw_keeps_to_the_printed_ranges_and_is_told(sweep: list[Drawn]) -> None:
    for drawn in sweep:
        assert_inside(drawn.facts, {"step_um": (8, 10), "film_um": (420, 600)})
        assert_pictures_stand(drawn)
        assert_everything_is_told(drawn)
    assert_captions_tell_nothing("INS-03@2", ["decal", "ghost", "number", "letter", "proud", "fade"])


def test_what_is_drawn_and_shown_is_that_of_version_1() -> None:
    assert (draw, pictures) == (ins_03_v1.draw, ins_03_v1.pictures)


@pytest.mark.parametrize("step_um", [8.0, 9.0, 10.0])
@pytest.mark.parametrize("film_um", [420.0, 600.0])
def test_the_plan_of_the_key_takes_the_step_down_and_is_steady(step_um: float, film_um: float) -> None:
    facts = numbers(step_um, film_um)
    steps = key(facts)["steps"]
    assert isinstance(steps, list)
    run = worked(steps, facts)
    assert run.outcome.verdict == "pass"
    assert run.outcome.removed_um == pytest.approx(27.1, abs=0.1)
    assert unsteady(panel(facts), read_plan(steps, panel(facts)), constants()) == ()


@pytest.mark.parametrize(
    ("zone", "pad"), [("ground", "disc"), ("numbers", "disc"), ("numbers", "disc_soft"), ("band", "disc_soft")]
)
def test_a_step_is_left_by_all_that_does_not_lie_flat_on_both(zone: str, pad: str) -> None:
    outcome = worked([*READY, *paper(zone, pad), *POLISH], numbers()).outcome
    assert outcome.verdict == "redo"
    assert [reason.zone for reason in outcome.reasons] == ["band"]


def test_sanding_with_no_place_named_takes_the_sound_hull_down_too() -> None:
    everything = [{name: value for name, value in step.items() if name != "zone"} for step in paper("band", "disc")]
    outcome = worked([*READY, *everything, *POLISH], numbers()).outcome
    assert (outcome.verdict, {reason.zone for reason in outcome.reasons}) == ("harm", {"main"})


def test_vinyl_under_the_disc_changes_nothing_that_the_model_judges() -> None:
    steps = [*READY, *paper("band", "disc"), *paper("vinyl", "disc"), *POLISH]
    assert worked(steps, numbers(8.0)).outcome.verdict == "pass"
