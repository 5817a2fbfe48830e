"""A plan read: every setting filled in, everything impossible refused, each step said in words."""

from typing import Any

import pytest

from courses.trade.errors import PlanRefused
from courses.trade.surface import OPS, read_plan, step_words
from tests.courses.trade.surface.plans import GEL, panel


def test_a_step_that_says_nothing_is_set_as_a_shop_would() -> None:
    sand, cut, refine, finish = read_plan([{"op": op} for op in ("sand", "cut", "refine", "finish")])
    assert (sand.grade, sand.pad, sand.machine, sand.passes, sand.force_n, sand.arm_m_s) == (
        "P1500",
        "disc",
        "da",
        4,
        25,
        0.15,
    )
    assert (cut.pad, cut.compound, cut.speeds_rpm, cut.force_n) == ("wool", "heavy", (600, 900, 1500), 30)
    assert (refine.compound, refine.speeds_rpm) == ("medium", (900, 1500, 1650))
    assert (finish.machine, finish.pad, finish.passes, finish.force_n) == ("da", "foam_finish", 4, 30)


@pytest.mark.parametrize(
    ("given", "wanted"),
    [
        ({"op": "cut", "machine": "da"}, {"pad": "foam_cut", "compound": "medium", "passes": 6, "force_n": 50}),
        ({"op": "cut", "compound": "medium"}, {"speeds_rpm": (900, 1500, 1650)}),
        ({"op": "finish", "machine": "rotary"}, {"speeds_rpm": (900, 1500, 1800), "pad": "foam_finish"}),
        ({"op": "sand", "pad": "block"}, {"machine": "hand", "speeds_rpm": (), "passes": 4}),
        ({"op": "sand", "machine": "hand"}, {"pad": "block", "speeds_rpm": ()}),
        ({"op": "sand", "passes": 6}, {"speeds_rpm": (8000,) * 6, "passes": 6}),
        ({"op": "cut", "passes": 2}, {"speeds_rpm": (900, 1500)}),
        ({"op": "cut", "passes": 5}, {"speeds_rpm": (600, 900, 1500, 1500, 1500)}),
        ({"op": "cut", "speeds_rpm": [1200], "passes": 4}, {"speeds_rpm": (1200,) * 4}),
        ({"op": "cut", "speeds_rpm": [1200, 1400]}, {"passes": 2}),
        ({"op": "cut", "sets": "until_clear"}, {"sets": 0, "until_clear": True}),
        ({"op": "cut", "sets": 3}, {"sets": 3, "until_clear": False}),
        ({"op": "sand", "disc": 0.6}, {"disc": 0.6}),
        ({"op": "sand"}, {"disc": "fresh"}),
        ({"op": "cut", "force_n": "50 N", "arm_m_s": "0.05 m/s"}, {"force_n": 50.0, "arm_m_s": 0.05}),
        ({"op": "wait"}, {"hours": 12.0, "abrades": False}),
        ({"op": "wash", "product": "S"}, {"product": "S", "zone": "all", "family": "clean"}),
    ],
)
def test_what_is_given_decides_what_is_left_out(given: dict[str, Any], wanted: dict[str, Any]) -> None:
    (step,) = read_plan([given])
    assert {name: getattr(step, name) for name in wanted} == wanted
    assert step.given == given


@pytest.mark.parametrize("op", OPS)
def test_a_step_written_out_and_read_again_is_the_same(op: str) -> None:
    (step,) = read_plan([{"op": op}])
    assert read_plan([step.as_json()]) == (step,)
    assert step_words(step)


@pytest.mark.parametrize(
    ("plan", "said", "field"),
    [
        ({"op": "wash"}, "A plan is a list", "plan"),
        ("wash", "A plan is a list", "plan"),
        ([{"op": "wash"}] * 41, "at most 40 steps; this one has 41", "plan"),
        (["wash"], "Step 1 is no step", "plan 1"),
        ([{}], "Op is left out; there are prerinse", "plan 1 op"),
        ([{"op": "wash"}, {"op": "sanding"}], "did you mean sand", "plan 2 op"),
        ([{"op": "sand", "grade": "P1499"}], "did you mean P1500 or P1200", "plan 1 grade"),
        ([{"op": "sand", "grade": "1500"}], "did you mean P1500", "plan 1 grade"),
        ([{"op": "sand", "grade": 1500}], "did you mean P1500", "plan 1 grade"),
        ([{"op": "sand", "passes": 400}], "from 1 to 20", "plan 1 passes"),
        ([{"op": "sand", "passes": 0}], "from 1 to 20", "plan 1 passes"),
        ([{"op": "sand", "passes": 2.5}], "whole number", "plan 1 passes"),
        ([{"op": "sand", "compound": "heavy"}], "no 'compound' here", "plan 1 compound"),
        ([{"op": "sand", "machine": "rotary"}], "there are da, hand", "plan 1 machine"),
        ([{"op": "sand", "machine": "da", "pad": "block"}], "worked by hand", "plan 1 pad"),
        ([{"op": "cut", "pad": "disc"}], "there are wool", "plan 1 pad"),
        ([{"op": "cut", "speeds_rpm": [9000]}], "from 300 to 3500", "plan 1 speeds_rpm"),
        ([{"op": "cut", "machine": "da", "speeds_rpm": [600]}], "from 1500 to 9000", "plan 1 speeds_rpm"),
        ([{"op": "cut", "machine": "hand", "speeds_rpm": [600]}], "turns at no speed", "plan 1 speeds_rpm"),
        ([{"op": "cut", "speeds_rpm": []}], "1 to 20 numbers", "plan 1 speeds_rpm"),
        ([{"op": "cut", "speeds_rpm": 1500}], "1 to 20 numbers", "plan 1 speeds_rpm"),
        ([{"op": "cut", "speeds_rpm": [900, 1500], "passes": 3}], "one speed a pass", "plan 1 speeds_rpm"),
        ([{"op": "cut", "force_n": -5}], "from 1 to 150", "plan 1 force_n"),
        ([{"op": "cut", "force_n": float("nan")}], "from 1 to 150", "plan 1 force_n"),
        ([{"op": "cut", "overlap": 1}], "from 0 to 0.9", "plan 1 overlap"),
        ([{"op": "cut", "sets": 9}], "from 1 to 8", "plan 1 sets"),
        ([{"op": "cut", "sets": "clear"}], "did you mean until_clear", "plan 1 sets"),
        ([{"op": "sand", "disc": "old"}], "there are fresh, used", "plan 1 disc"),
        ([{"op": "wash", "product": "x" * 300}], "at most 200 characters", "plan 1 product"),
        ([{"op": "wash", "zone": "bow"}], "no zone 'bow'; there are all, main", "plan 1 zone"),
        ([{"op": "wait", "hours": -1}], "from 0 to 2000", "plan 1 hours"),
    ],
)
def test_a_plan_nobody_can_work_is_refused_in_a_sentence(plan: Any, said: str, field: str) -> None:
    with pytest.raises(PlanRefused) as refused:
        read_plan(plan, panel(GEL))
    assert said in refused.value.sentence
    assert refused.value.field == field


def test_without_a_surface_a_step_may_name_any_zone() -> None:
    assert read_plan([{"op": "wash", "zone": "anywhere"}])[0].zone == "anywhere"


@pytest.mark.parametrize(
    ("step", "words"),
    [
        ({"op": "sand", "grade": "P1500", "passes": 4, "zone": "bow"}, "Sand P1500, 4 passes, hard disc, the bow"),
        ({"op": "sand", "passes": 1, "disc": "used"}, "Sand P1500, 1 pass, hard disc, used disc"),
        ({"op": "sand", "disc": 0.6}, "Sand P1500, 4 passes, hard disc, disc after 0.6 m²"),
        ({"op": "sand", "pad": "block"}, "Sand P1500, 4 passes, flat block"),
        ({"op": "sand", "machine": "hand", "pad": "disc_soft"}, "Sand P1500, 4 passes, disc on a soft pad, by hand"),
        ({"op": "cut"}, "Cut with heavy compound, wool, rotary at 600, 900, 1500 rpm"),
        ({"op": "cut", "machine": "da", "sets": 2},
         "Cut with medium compound, cutting foam, dual action, 6 passes, 2 sets"),
        ({"op": "cut", "force_n": 70, "arm_m_s": 0.1},
         "Cut with heavy compound, wool, rotary at 600, 900, 1500 rpm, 70 N, 0.1 m/s"),
        ({"op": "finish", "speeds_rpm": [4000], "passes": 3, "overlap": 0.25},
         "Finish with fine polish, finishing foam, dual action, 3 passes, 25 % overlap, 4000, 4000, 4000 a minute"),
        ({"op": "tape"}, "Tape the edges"),
        ({"op": "tape", "zone": "spray_rail"}, "Tape, the spray rail"),
        ({"op": "wait", "hours": 16, "warm_degc": 25}, "Wait 16 h at 25 °C"),
        ({"op": "wait", "hours": 16}, "Wait 16 h"),
        ({"op": "coat", "product": "K", "at_h": 3}, "Coat with K, 3 h from the start"),
    ],
)  # fmt: skip
def test_a_step_in_plain_words(step: dict[str, Any], words: str) -> None:
    assert step_words(read_plan([step])[0]) == words
