"""PLN-04 version 1: the printed ranges, a line no plan can afford, one bonnet worked by hand and on the model."""

from dataclasses import replace
from math import sqrt
from random import Random
from statistics import fmean, stdev

import pytest

from assessments import shipped
from assessments.scenarios.chance import Chance, Span
from assessments.scenarios.draw import Drawn
from assessments.scenarios.fields import Record
from assessments.scenarios.plan_steps import acts
from assessments.scenarios.pln_04_v1 import draw, key, pictures, surface
from assessments.scenarios.sketch import Thrown
from courses.shipped import catalogue, constants
from courses.trade.surface import PanelSurface
from tests.assessments.scenarios.drawing import (
    assert_captions_tell_nothing,
    assert_everything_is_told,
    assert_inside,
    assert_pictures_stand,
    assert_shares,
    draws,
)
from tests.assessments.scenarios.planning import keyed, worked

RANGES = {
    "film_um": (44, 50),
    "swirl_um": (0.7, 0.88),
    "scratch_um": (12, 15),
    "total_um": (105, 130),
    "line_mm": (100, 400),
    "reserve": (30, 30),
    "budget": (8, 8),
}
HEAVY = {"op": "cut", "pad": "wool", "compound": "heavy", "machine": "rotary"}
FINISH = {"op": "finish", "pad": "foam_finish", "compound": "fine", "machine": "da"}


@pytest.fixture(scope="module")
def sweep() -> list[Drawn]:
    return draws("PLN-04@1", 120)


def readings(facts: Record, name: str) -> list[float]:
    five = facts[name]
    assert isinstance(five, tuple)
    return [float(str(each)) for each in five]


def test_every_draw_keeps_to_the_printed_ranges(sweep: list[Drawn]) -> None:
    for drawn in sweep:
        here, shut = readings(drawn.facts, "here_um"), readings(drawn.facts, "shut_um")
        assert_inside(drawn.facts, RANGES)
        assert drawn.facts.number("film_um") == pytest.approx(fmean(here))
        assert all(2 <= stdev(five) <= 3 for five in (here, shut))
        # 2.306: Student's t for 8 degrees of freedom and 95 %, as tables print it
        assert 0 <= fmean(shut) - fmean(here) <= 2.306 * sqrt((stdev(here) ** 2 + stdev(shut) ** 2) / 5)
        assert_pictures_stand(drawn)
        assert_everything_is_told(drawn)
    assert_shares(sweep, lambda one: one.facts["colour"], {"black": 0.5, "dark_grey": 0.5})


def test_swirls_come_out_for_3_3_and_the_clear_stays_above_40(sweep: list[Drawn]) -> None:
    # 3.3 and 40.6: L11, one dual-action medium set and a finish on usual clear, from 44
    for drawn in sweep[:8]:
        run = keyed(drawn)
        left = {one.kind: one.left for one in run.outcome.residual}
        assert run.outcome.removed_um == pytest.approx(3.3, abs=0.1)
        assert run.outcome.film_um >= 40.6
        assert (left["swirl"] <= 0.06, left["scratch"] >= 0.99, run.outcome.verdict) == (True, True, "pass")


def test_four_heavy_sets_break_the_budget_and_leave_the_line(sweep: list[Drawn]) -> None:
    # 16.6 taken, 44 % of a 12 µm line still open: L11
    drawn = sweep[0]
    run = worked(drawn, [*acts("tape"), *[HEAVY] * 4, *acts("wipe"), FINISH, *acts("wipe")])
    assert run.outcome.removed_um == pytest.approx(16.6, abs=0.2)
    assert run.outcome.verdict == "harm"
    assert next(one.left for one in run.outcome.residual if one.kind == "scratch") >= 0.4


def bonnet() -> Record:
    """A dark grey bonnet with its line."""
    return Record({"colour": "dark_grey", "film_um": 47.0, "reserve": 30.0, "budget": 8.0, "swirl_um": 0.8,
                   "scratch_um": 12.5, "across": 0.5, "down": 0.4, "direction": 9, "scene_seed": 3})  # fmt: skip


def test_the_key_corrects_once_and_leaves_the_line() -> None:
    worked_key = key(bonnet())
    steps = worked_key["steps"]
    assert isinstance(steps, list)
    assert [step["op"] for step in steps if step["op"] in ("sand", "cut", "refine", "finish")] == ["cut", "finish"]
    assert {step["machine"] for step in steps if step["op"] in ("cut", "finish")} == {"da"}
    assert (worked_key["scratch"], worked_key["shows"]) == ("touch_in", "line_alone")


def test_picture_and_surface_hold_the_same_marks() -> None:
    (shown,) = pictures(bonnet())
    marks = {one["kind"]: one["depth_um"] for one in shown.scene["defects"]}  # type: ignore[attr-defined]
    on = PanelSurface.of(surface(bonnet()), catalogue(), constants())
    held = {zone.name: {one.kind: one.depth_um for one in zone.marks} for zone in on.parts}
    assert held == {"main": {"swirl": 0.8}, "line": marks}
    assert marks == {"swirl": 0.8, "scratch": 12.5}
    assert (shown.seen, len(shown.lamps)) == ((0, 1), 5)


def test_nothing_under_the_picture_names_what_is_on_it() -> None:
    assert_captions_tell_nothing("PLN-04@1", ["swirl", "scratch", "line ", "deep"])


@pytest.mark.parametrize(
    ("name", "span", "why"),
    [
        ("spread_um", Span(8, 9, 1), "five readings lie closer together, or further apart, than this gauge's do"),
        ("clear_um", Span(44, 44.1, 0.1), "the mean of the five leaves the range of clear coats"),
        ("clear_um", Span(44, 50, 0.1), "the door shut isn't plainly the same within its doubt"),
    ],
)
def test_each_limit_throws_away_what_breaks_it(name: str, span: Span, why: str) -> None:
    (kind,) = shipped.scenario("PLN-04@1").kinds
    narrow = replace(kind, values={**kind.values, name: span})
    chance = Chance(Random(3).random)
    assert Thrown(why) in [draw(chance, narrow) for _ in range(400)]
