"""PLN-06 version 1: the printed ranges, readings told in their order, three doors by hand and on the model."""

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
from assessments.scenarios.pln_06_v1 import CUT, FINISH, draw, key, surface
from assessments.scenarios.sketch import Thrown
from tests.assessments.scenarios.drawing import assert_everything_is_told, assert_inside, assert_shares, draws, told_by
from tests.assessments.scenarios.planning import keyed, worked

T_8 = 2.306
"""Student's t for 8 degrees of freedom and 95 %, as tables print it."""
FILM = {"thin": (30.3, 31.2), "spare": (48, 50), "spent": (38, 46)}
GONE = {"thin": (5, 7), "spare": (2, 3.5), "spent": (6, 7.1)}
ONE_SET: list[dict[str, object]] = [*acts("tape"), CUT, *acts("wipe")]
ONE_FINISH: list[dict[str, object]] = [*acts("tape"), FINISH, *acts("wipe")]
BOTH: list[dict[str, object]] = [*ONE_SET, FINISH, *acts("wipe")]


@pytest.fixture(scope="module")
def sweep() -> list[Drawn]:
    return draws("PLN-06@1", 240)


def five(facts: Record, name: str) -> list[float]:
    readings = facts[name]
    assert isinstance(readings, tuple)
    assert len(readings) == 5
    return [float(str(each)) for each in readings]


def test_every_draw_keeps_to_the_printed_ranges(sweep: list[Drawn]) -> None:
    for drawn in sweep:
        facts, truth = drawn.facts, str(drawn.facts["truth"])
        middle, shut = five(facts, "middle_um"), five(facts, "shut_um")
        assert_inside(facts, {"film_um": FILM[truth], "gone_um": GONE[truth], "swirl_um": (0.7, 0.88)})
        assert_inside(facts, {"total_um": (105, 130), "gloss60": (55, 70)})
        assert facts.number("film_um") == pytest.approx(fmean(middle))
        assert facts.number("gone_um") == pytest.approx(fmean(shut) - fmean(middle))
        assert facts.number("budget") == pytest.approx(8 - facts.number("gone_um"))
        # what has gone is more than its doubt, so that nobody can call it a wandering gauge
        assert facts.number("gone_um") > T_8 * sqrt((stdev(middle) ** 2 + stdev(shut) ** 2) / 5) - 0.5
        assert facts.number("corner_um") >= 220 if facts["repair"] else facts.number("corner_um") <= 134
        assert_everything_is_told(drawn)


def test_truths_and_repairs_come_in_their_printed_shares(sweep: list[Drawn]) -> None:
    assert_shares(sweep, lambda one: one.facts["truth"], {"thin": 0.4, "spare": 0.4, "spent": 0.2})
    assert_shares(sweep, lambda one: one.facts["repair"], {True: 0.3, False: 0.7})


def test_the_layer_gauge_reads_nothing_before_it_was_fetched(sweep: list[Drawn]) -> None:
    for reading in ("layer_middle", "layer_edge", "layer_shut"):
        assert told_by(sweep[0], reading) == "The layer gauge isn’t here."
        assert "Clear coat" in told_by(sweep[0], reading, "layer_gauge")


def door(truth: str, film_um: float, budget: float) -> Record:
    """A black door whose clear was read."""
    return Record({"truth": truth, "film_um": film_um, "budget": budget, "repair": False, "gloss60": 66,
                   "swirl_um": 0.8, "colour": "black"})  # fmt: skip


@pytest.mark.parametrize(
    ("truth", "decision", "ops"),
    [
        # L11: 31 by layer gauge is harm to correct; 48 and 2 to 3.5 gone stands one correction of 3.3, and no second
        ("thin", "leave", ["record", "tell"]),
        ("spare", "correct", ["tape", "cut", "wipe", "finish", "wipe", "record", "tell"]),
        ("spent", "leave", ["record", "tell"]),
    ],
)
def test_the_layer_decides(truth: str, decision: str, ops: list[str]) -> None:
    worked_key = key(door(truth, 31.0, 2.0))
    steps = worked_key["steps"]
    assert isinstance(steps, list)
    assert (worked_key["decision"], [step["op"] for step in steps]) == (decision, ops)
    assert (worked_key["stands_on"], "thin" in str(worked_key["findings"])) == ("layer_gauge", truth == "thin")


def test_a_repair_is_left_out_of_the_plan_and_of_the_model() -> None:
    repaired = Record({**door("spare", 49.0, 5.0), "repair": True})
    steps = key(repaired)["steps"]
    assert isinstance(steps, list)
    assert {step.get("zone") for step in steps} == {"main", None}
    assert surface(repaired)["zones"] == [{"name": "corner", "idle": True}]
    assert surface(door("spare", 49.0, 5.0))["zones"] == [{"name": "corner", "idle": False}]


def test_the_swirls_scatter_what_the_gloss_is_short_of() -> None:
    # 66 of 88 gloss units: a quarter is scattered
    marks = surface(door("spare", 49.0, 5.0))["defects"]
    assert isinstance(marks, list)
    assert [one["cover"] for one in marks] == [0.25]


@pytest.mark.parametrize(
    ("truth", "steps", "verdict"),
    [
        ("thin", ONE_SET, "harm"),
        ("thin", BOTH, "harm"),
        ("thin", ONE_FINISH, "redo"),
        ("spare", BOTH, "pass"),
        ("spare", ONE_FINISH, "redo"),
        ("spent", BOTH, "harm"),
        ("spent", ONE_FINISH, "redo"),
    ],
)
def test_the_model_says_what_the_rules_rest_on(
    sweep: list[Drawn], truth: str, steps: list[dict[str, object]], verdict: str
) -> None:
    drawn = next(one for one in sweep if one.facts["truth"] == truth)
    assert worked(drawn, steps).outcome.verdict == verdict


def test_one_correction_takes_3_3_of_what_there_is_to_spare(sweep: list[Drawn]) -> None:
    # 3.3: L11, one dual-action medium set and a finish on usual clear
    drawn = next(one for one in sweep if one.facts["truth"] == "spare")
    assert keyed(drawn).outcome.removed_um == pytest.approx(3.3, abs=0.1)


@pytest.mark.parametrize(
    ("name", "span", "why"),
    [
        ("spread_um", Span(8, 9, 1), "five readings lie closer together, or further apart, than this gauge's do"),
        (
            "gone_um",
            Span(60, 61, 1),
            "the readings themselves leave the range of what is there, or of what has gone",
        ),
    ],
)
def test_each_limit_throws_away_what_breaks_it(name: str, span: Span, why: str) -> None:
    thin = next(kind for kind in shipped.scenario("PLN-06@1").kinds if kind.name == "thin")
    narrow = replace(thin, values={**thin.values, name: span})
    chance = Chance(Random(3).random)
    assert Thrown(why) in [draw(chance, narrow) for _ in range(200)]
