"""Plans worked on the model surface: those it was fitted on, those written before it ran, and what lessons print.

The plans are trade judgement, not measurement: common practice, no source. Fourteen tuned the model, thirteen had
their verdicts written before the first run; twelve of those came out, so both sets are spent as evidence.
"""

import json
from typing import Any

import pytest
from hypothesis import given, settings

from courses.trade.errors import ImpossibleChoice
from courses.trade.surface import needed_cut, read_plan, simulate
from courses.trade.surface.simulate import judged
from tests.courses.trade.model import constants
from tests.courses.trade.surface.drawn import plans, surfaces
from tests.courses.trade.surface.plans import (
    CLEAR,
    DA_MEDIUM,
    FINISH,
    FINISH_ROTARY,
    FOURTEEN,
    GEL,
    HEAVY,
    HEAVY_CHALK,
    LADDER,
    MEDIUM,
    MILD_CHALK,
    POLISH,
    REFER,
    SCRATCHED,
    SWIRL_OUT,
    SWIRLED,
    SWIRLS,
    TAPE,
    TEST,
    WASH,
    WIPE,
    Steps,
    act,
    panel,
    sand,
    worked,
)

DRY, LOOK = act("dry"), act("inspect")


@pytest.mark.parametrize("name", FOURTEEN)
def test_the_plans_the_model_was_fitted_on(name: str) -> None:
    surface, steps, wanted = FOURTEEN[name]
    assert worked(surface, steps).outcome.verdict == wanted


@pytest.mark.parametrize(
    ("name", "cut", "tail", "trail", "gloss60", "gloss20", "minutes"),
    [
        ("01", 47.2, 0.04, 0.0, 97, 94, 96),
        ("02", 29.6, 2.01, 0.0, 52, 8, 61),
        ("03", 24.6, 4.42, 0.0, 15, 1, 45),
        ("04", 59.7, 0.16, 0.0, 97, 92, 62),
        ("05", 7.6, 0.04, 0.0, 97, 94, 62),
        ("06", 3.3, 0.04, 0.0, 89, 81, 64),
        ("07", 4.0, 0.41, 0.25, 68, 22, 17),
        ("08", 0.6, 0.04, 0.0, 84, 76, 29),
        ("09", 22.3, 0.04, 0.0, 89, 81, 70),
        ("10", 16.6, 0.16, 0.0, 88, 79, 89),
        ("11", 3.3, 0.04, 0.0, 88, 80, 64),
    ],
)
def test_figures_of_those_plans_are_those_of_the_fact_sheet(
    name: str, cut: float, tail: float, trail: float, gloss60: float, gloss20: float, minutes: float
) -> None:
    surface, steps, _ = next(plan for title, plan in FOURTEEN.items() if title.startswith(name))
    found = worked(surface, steps).outcome
    assert found.removed_um == pytest.approx(cut, abs=0.06)
    assert (found.tail_um, found.trail_um) == pytest.approx((tail, trail), abs=0.006)
    assert (found.gloss60, found.gloss20, found.minutes) == pytest.approx((gloss60, gloss20, minutes), abs=0.55)


@pytest.mark.parametrize(
    ("better", "worse"),
    [("01", "02"), ("02", "03"), ("05", "04"), ("06", "08"), ("08", "07"), ("07", "14"), ("11", "10"), ("13", "12")],
)
def test_the_better_of_two_plans_scores_higher(better: str, worse: str) -> None:
    scores = {title[:2]: worked(*plan[:2]).outcome.score for title, plan in FOURTEEN.items()}
    assert scores[better] > scores[worse] + 2


WRITTEN_BEFORE: dict[str, tuple[dict[str, Any], Steps, str]] = {
    "medium wool only, on mild gel": (MILD_CHALK, (WASH, TAPE, MEDIUM, WIPE), "redo"),
    "swirls on a hard clear": (SWIRLED | {"hardness": 0.7}, SWIRL_OUT, "pass"),
    "swirls on a soft clear": (SWIRLED | {"hardness": 1.3}, SWIRL_OUT, "pass"),
    "dual action medium three times on clear": (
        SWIRLED,
        (WASH, TAPE, DA_MEDIUM, DA_MEDIUM, DA_MEDIUM, FINISH, WIPE),
        "harm",
    ),
    "heavy oxidation started at P1500": (
        HEAVY_CHALK,
        (WASH, TAPE, TEST, sand(1500, 4), sand(2000, 3), *POLISH),
        "redo",
    ),
    "heavy oxidation, P1000 six times": (
        HEAVY_CHALK,
        (WASH, TAPE, TEST, sand(1000, 6), sand(1500, 4), sand(2000, 3), *POLISH),
        "pass",
    ),
    "that order turned round": (
        HEAVY_CHALK,
        (WASH, TAPE, TEST, *POLISH, sand(2000, 3), sand(1500, 4), sand(1000, 6)),
        "redo",
    ),
    "mineral spots without chemistry": (
        SWIRLED | {"defects": [SWIRLS, {"kind": "water_spots_mineral", "depth_um": 1.5}]},
        SWIRL_OUT,
        "redo",
    ),
    "mineral spots with acid first": (
        SWIRLED | {"defects": [SWIRLS, {"kind": "water_spots_mineral", "depth_um": 1.5}]},
        (WASH, act("acid"), *SWIRL_OUT[1:]),
        "pass",
    ),
    "unwashed": (SWIRLED, SWIRL_OUT[1:], "redo"),
    "heavy twice on clear, no tape": (SWIRLED, (WASH, HEAVY, HEAVY, FINISH, WIPE), "harm"),
    "the heavy ladder on 280 µm": (HEAVY_CHALK | {"film_um": 280.0}, LADDER, "harm"),
    "a rotary with finishing foam last": (MILD_CHALK, (WASH, TAPE, TEST, HEAVY, MEDIUM, FINISH_ROTARY, WIPE), "pass"),
}


@pytest.mark.parametrize("name", WRITTEN_BEFORE)
def test_plans_whose_verdict_was_written_before_the_model_ran(name: str) -> None:
    surface, steps, wanted = WRITTEN_BEFORE[name]
    assert worked(surface, steps).outcome.verdict == wanted


MODERATE = GEL | {"oxidation_um": 8.5, "rz_um": 1.0, "tail_um": 2.0}
P1000_LADDER = (WASH, TAPE, TEST, sand(1000, 4), sand(1500, 4), sand(2000, 3), *POLISH)


@pytest.mark.parametrize(
    ("surface", "steps", "verdict", "cut", "film"),
    [
        (MODERATE, (WASH, TAPE, TEST, sand(1500, 4), WIPE, *POLISH), "pass", 15.2, 484.8),  # L10, L13
        (MODERATE, (WASH, TAPE, TEST, *POLISH), "redo", 7.6, 492.4),  # L10
        (GEL | {"oxidation_um": 13.5, "tail_um": 3.0}, P1000_LADDER, "pass", 31.6, 468.4),  # L13
        (GEL | {"oxidation_um": 2.7, "rz_um": 0.8, "tail_um": 1.2}, P1000_LADDER, "harm", 31.6, 468.4),  # L13
        (CLEAR | {"film_um": 46.0, "defects": [SWIRLS]}, SWIRL_OUT, "pass", 3.3, 42.7),  # L11
        (CLEAR | {"film_um": 36.0, "defects": [SWIRLS]}, SWIRL_OUT, "pass", 3.3, 32.7),  # L11
        (CLEAR | {"film_um": 31.0, "defects": [SWIRLS]}, SWIRL_OUT, "harm", 3.3, 27.7),  # L11
        (CLEAR | {"film_um": 32.0, "defects": [SWIRLS]}, (WASH, FINISH, WIPE), "redo", 0.6, 31.4),  # L11
        (CLEAR | {"film_um": 32.0, "defects": [SWIRLS]}, (WASH, DA_MEDIUM, WIPE), "harm", 2.7, 29.3),  # L11
        (GEL | {"defects": [{"kind": "decal_ghost", "depth_um": 9}]}, (WASH, sand(1500, 4), sand(2000, 3), *POLISH),
         "pass", 19.5, 480.5),  # L13
    ],
)  # fmt: skip
def test_plans_that_lessons_print(surface: dict[str, Any], steps: Steps, verdict: str, cut: float, film: float) -> None:
    found = worked(surface, steps).outcome
    assert found.verdict == verdict
    assert (found.removed_um, found.film_um) == pytest.approx((cut, film), abs=0.06)


def test_what_is_left_after_the_plans_of_the_lessons() -> None:
    assert worked(MODERATE, (WASH, *POLISH)).outcome.oxidised == pytest.approx(0.66, abs=0.005)  # L10
    assert worked(MODERATE, (WASH, sand(1500, 4), *POLISH)).outcome.oxidised == pytest.approx(0.001, abs=0.0005)  # L10
    mild = GEL | {"oxidation_um": 2.7}
    assert worked(mild, (WASH, MEDIUM)).outcome.oxidised == pytest.approx(1 / 3, abs=0.02)  # L10: a third
    assert worked(mild, (WASH, MEDIUM, MEDIUM)).outcome.oxidised < 0.01
    assert worked(mild, (WASH, HEAVY)).outcome.oxidised < 0.03
    one = [SWIRLS, {"kind": "scratch", "depth_um": 12}]
    chased = worked(CLEAR | {"defects": one}, FOURTEEN["10 compounding out a 12 µm scratch"][1]).outcome
    assert {row.kind: row.left for row in chased.residual}["scratch"] == pytest.approx(0.44, abs=0.05)  # L11, PLN-04


@pytest.mark.parametrize(
    ("steps", "minutes"),
    [
        ((WASH, TAPE, TEST, *POLISH), 62),
        ((WASH, TAPE, TEST, sand(1500, 4), WIPE, *POLISH), 72),
        ((WASH, TAPE, TEST, sand(1500, 4), WIPE, DRY, LOOK, *POLISH), 76.5),
    ],
)
def test_minutes_a_square_metre_that_lessons_print(steps: Steps, minutes: float) -> None:
    """L13 and PLN-01: without and with a look after the grade, then with drying and inspecting it."""
    assert worked(MODERATE, steps).outcome.minutes == pytest.approx(minutes, abs=0.45)


@pytest.mark.parametrize(("steps", "gloss"), [((HEAVY, MEDIUM), (86, 51)), ((HEAVY, MEDIUM, FINISH), (97, 94))])
def test_gloss_of_the_worked_example_of_l16(steps: Steps, gloss: tuple[float, float]) -> None:
    found = worked(MODERATE, (WASH, sand(1500, 4), *steps, WIPE)).outcome
    assert (found.gloss60, found.gloss20) == pytest.approx(gloss, abs=0.6)


def test_needed_cut_is_the_depth_on_the_surface_at_the_start() -> None:
    """PLN-01 prints 3.7 to 4.0 for 2.6 to 2.8 µm of chalk."""
    c = constants()
    needs = [needed_cut(panel(GEL | {"oxidation_um": depth}), c) for depth in (2.6, 2.8)]
    assert needs == pytest.approx([3.7, 4.0], abs=0.06)
    assert needed_cut(panel(GEL | {"trail_um": 0.9}), c) == 0.9
    assert needed_cut(panel(GEL | {"tail_um": 4.7}), c) == 4.7
    assert needed_cut(panel(GEL), c) == 0.0


def test_an_empty_plan_leaves_the_panel_as_it_is() -> None:
    untouched = worked(SWIRLED, ()).outcome
    assert (untouched.verdict, untouched.removed_um, untouched.minutes) == ("redo", 0.0, 0.0)
    assert worked(CLEAR, ()).outcome.verdict == "pass"


def test_a_state_follows_each_step_and_the_last_is_read() -> None:
    run = worked(SWIRLED, SWIRL_OUT)
    assert [state.step for state in run.states] == list(range(1, len(SWIRL_OUT) + 1))
    assert [state.reading is not None for state in run.states] == [False] * (len(SWIRL_OUT) - 1) + [True]
    every = worked(SWIRLED, SWIRL_OUT, optics="every")
    assert all(state.reading for state in every.states)
    assert every.start.reading
    assert every.outcome == run.outcome


def test_without_optics_nothing_is_said_of_gloss() -> None:
    agreed = SWIRLED | {"agreed": {"gloss60": 89.0, "gloss20": 82.0}}
    assert [one.code for one in worked(agreed, SWIRL_OUT).outcome.reasons] == ["gloss60"]
    blind = worked(agreed, SWIRL_OUT, optics="none").outcome
    assert (blind.verdict, blind.gloss60, "gloss60" in blind.as_json()) == ("pass", None, False)
    assert judged(panel(agreed), read_plan(SWIRL_OUT), constants()) == "pass"


def test_the_door_writes_the_shape_that_was_agreed() -> None:
    run = worked(SWIRLED, (WASH, HEAVY)).as_json()
    state, outcome = run["states"][-1], run["outcome"]  # type: ignore[index]
    assert set(state) == {
        *("step", "film_um", "removed_um", "residual", "tail_um", "trail_um", "heat_degc", "minutes"),
        *("gloss60", "gloss20", "haze"),
    }
    assert list(outcome) == [
        *("verdict", "reasons", "film_um", "removed_um", "needed_cut_um", "residual", "tail_um", "own_tail_um"),
        *("trail_um", "zones", "score", "gloss60", "gloss20", "haze", "heat_degc", "minutes", "discs", "pads", "grams"),
    ]
    assert set(outcome["reasons"][0]) == {"code", "sentence", "step", "would_save"}
    assert set(outcome["zones"][0]) == {
        *("name", "film_um", "removed_um", "residual", "tail_um", "trail_um", "verdict"),
    }
    assert set(outcome["residual"][0]) == {"kind", "depth_um", "left"}


@given(surface=surfaces, steps=plans)
@settings(max_examples=80)
def test_every_plan_on_every_panel_comes_out_and_can_be_written(surface: dict[str, Any], steps: Steps) -> None:
    run = worked(surface, steps, optics="every")
    assert len(json.dumps(run.as_json(), allow_nan=False)) > 300
    assert all(one.sentence.endswith(".") and one.would_save.endswith(".") for one in run.outcome.reasons)
    assert (run.outcome.verdict == "pass") is (run.outcome.reasons == ())
    assert all(0 <= one.left <= 1 and one.depth_um >= 0 for one in run.outcome.residual)


def test_materials_follow_the_plan() -> None:
    found = worked(MODERATE, (WASH, sand(1500, 4), sand(2000, 3), MEDIUM, FINISH)).outcome
    assert (found.discs, found.grams) == pytest.approx((2.8, 40.0))
    assert found.pads == pytest.approx(1 / 8 + 1 / 6.5, abs=0.001)


def test_about_two_pads_of_each_kind_do_a_hull_of_22_feet() -> None:
    """Common practice, no source: T1 of such a hull is about 14 m², one set of each."""
    found = worked(MODERATE, (WASH, MEDIUM)).outcome, worked(MODERATE, (WASH, FINISH)).outcome
    assert [round(one.pads * 14.16) for one in found] == [2, 2]


def test_two_grades_go_from_coarse_to_fine() -> None:
    """Common practice, no source."""
    coarse_first, fine_first = (sand(1500, 4), sand(2000, 3)), (sand(2000, 3), sand(1500, 4))
    tail = (MEDIUM, WIPE, FINISH, WIPE)
    plans = [worked(MODERATE, (WASH, TAPE, TEST, *grades, *tail)).outcome for grades in (coarse_first, fine_first)]
    assert [one.verdict for one in plans] == ["pass", "redo"]
    assert plans[0].removed_um == pytest.approx(plans[1].removed_um)


def test_another_word_for_optics_is_refused() -> None:
    with pytest.raises(ImpossibleChoice, match="did you mean last"):
        simulate(panel(CLEAR), (), constants(), optics="lest")


def test_referred_first_a_deep_scratch_is_left_and_the_rest_is_judged() -> None:
    found = worked(SCRATCHED, (WASH, TAPE, REFER, *SWIRL_OUT[3:])).outcome
    assert (found.verdict, found.swirl_left) == ("pass", pytest.approx(0.024, abs=0.01))
