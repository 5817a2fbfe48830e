"""HOM-02 version 1: printed ranges, counts that a reader of feet shares, the exercise's boat worked whole."""

from dataclasses import replace
from math import ceil
from random import Random

import pytest

from assessments import shipped
from assessments.scenarios.chance import Chance, Span
from assessments.scenarios.draw import Drawn, key_of
from assessments.scenarios.fields import Record
from assessments.scenarios.hom_02_v1 import STEPS, draw, key
from assessments.scenarios.sketch import Thrown
from assessments.scenarios.story import metric, story
from tests.assessments.scenarios.drawing import assert_everything_is_told, assert_inside, assert_shares, draws

FOOT_M = 0.3048
# for ten square metres, from the table of the estimating exercise: rows of the model's own, and common practice
SHEET = {
    "wash": 15,
    "chem": 20,
    "tape": 15,
    "test_spot": 20,
    "sand_four": 91,
    "sand_three": 68,
    "rotary": 154,
    "da_finish": 228,
    "wipe": 10,
    "dry": 30,
    "inspect": 18,
    "coat": 75,
}
RANGES = {
    "loa_m": (6.0, 10.0),
    "beam_m": (2.0, 4.0),
    "draft_m": (0.36, 0.68),
    "freeboard_m": (0.7, 1.19),
    "stripe_ml": (350, 900),
}


@pytest.fixture(scope="module")
def sweep() -> list[Drawn]:
    return draws("HOM-02@1", 150)


def test_every_draw_keeps_to_the_printed_ranges(sweep: list[Drawn]) -> None:
    for drawn in sweep:
        assert_inside(drawn.facts, RANGES)
        assert_everything_is_told(drawn)
        assert {str(row["step"]): row["min"] for row in drawn.facts["table"]} == SHEET  # type: ignore[union-attr, index, call-overload]
        assert (
            "On the map of the boat: non-skid, seats, plastic glazing, steps"
            in story(drawn.scenario, drawn.facts, metric)[0]
        )
        assert {"nonskid", "seats", "glazing", "steps"} <= set(drawn.facts["map"])  # type: ignore[arg-type]


def test_both_formulas_losses_and_bottles_come(sweep: list[Drawn]) -> None:
    assert_shares(sweep, lambda one: one.facts["formula"], {"B1": 0.5, "B2": 0.5})
    assert_shares(sweep, lambda one: one.facts["loss"], {"L1": 0.5, "L2": 0.5})
    assert {one.facts["pack_ml"] for one in sweep} == {30, 50}
    assert_shares(
        sweep, lambda one: key_of(one.scenario, one.facts).number("slack_pct") < 5, {True: 1 / 3, False: 2 / 3}
    )


def test_who_reads_feet_comes_to_the_same_areas_and_counts(sweep: list[Drawn]) -> None:
    for drawn in sweep:
        worked, facts = key_of(drawn.scenario, drawn.facts), drawn.facts
        feet = {
            name: round(facts.number(f"{name}_m") / FOOT_M, 1) for name in ("loa", "lwl", "beam", "draft", "freeboard")
        }
        side = 2 * (feet["loa"] + feet["beam"]) * feet["freeboard"]
        bottom = feet["lwl"] * (feet["beam"] + feet["draft"]) * (0.85 if facts["formula"] == "B2" else 1.0)
        assert side * FOOT_M**2 == pytest.approx(worked.number("topsides"), rel=0.0055)
        assert bottom * FOOT_M**2 == pytest.approx(worked.number("area"), rel=0.0055)
        grades = 2 if facts["grades"] == "two" else 1
        section = 5.9 * feet["freeboard"]  # the sheet's 1.8 m, 0.75, 8.0 and 6.5 m², as feet show them
        assert worked["discs"] == grades * ceil(side / section) * ceil(section / 8.1) + grades
        assert worked["pads"] == ceil(side / 86.1) + ceil(side / 70.0) + 2


def boat(**changed: object) -> Record:
    """The boat of the estimating exercise: 21.0 by 8.0 ft, freeboard 2 ft 7½ in."""
    facts: dict[str, object] = {
        "loa_m": 6.40,
        "lwl_m": 5.55,
        "beam_m": 2.45,
        "draft_m": 0.42,
        "freeboard_m": 0.80,
        "formula": "B2",
        "grades": "two",
        "loss": "L1",
        "stripe_ml": 700,
        "pack_ml": 30,
        "map": ("nonskid", "seats", "glazing", "steps", "anodes"),
        "table": tuple({"step": step, "min": SHEET[step]} for step, _row, _passes in STEPS),
    }
    return Record({**facts, **changed})  # type: ignore[dict-item]


def test_the_worked_job_of_the_exercise() -> None:
    # [calc] in the exercise: 14.16 m², B2 13.54, 21.8 h, 40 + 2 discs, 2 + 1 and 3 + 1 pads, 38.4 mL, 2 × 30 mL
    worked = key(boat())
    figures = ("topsides", "area", "h", "discs", "pads", "ml", "packs", "slack_pct", "order_ml")
    assert [worked[name] for name in figures] == [14.16, 13.54, 21.8, 42, 7, 38.4, 2, 36.0, 1000]


def test_one_grade_less_is_nineteen_hours_and_half_the_discs() -> None:
    worked = key(boat(grades="one", formula="B1", loss="L2"))
    assert (worked["h"], worked["discs"], worked["area"], worked["order_ml"]) == (19.0, 21, 15.93, 910)


def test_what_is_trodden_sat_on_or_steered_with_is_left_out_and_glazing_and_anodes_too() -> None:
    worked = key(boat())
    assert worked["walk_zones"] == ["nonskid", "steps", "seats"]
    assert worked["excluded"] == worked["must_exclude"] == ["nonskid", "steps", "seats", "glazing", "anodes"]
    assert worked["must_n"] == 5
    assert worked["solvent_zones"] == ["topsides"]
    whole = key(boat(map=("nonskid", "seats", "glazing", "steps", "platform", "wheel")))
    assert whole["must_exclude"] == ["nonskid", "steps", "platform", "wheel", "seats", "glazing"]


@pytest.mark.parametrize(
    ("name", "span", "why"),
    [
        ("slack_pct", Span(0, 0.1, 0.1), "the last pack holds too much, or too little, to spare"),
        ("freeboard_ft", Span(2.75, 2.75, 1), "a reader of feet would come to another figure"),
    ],
)
def test_each_limit_throws_away_what_breaks_it(name: str, span: Span, why: str) -> None:
    ample = next(kind for kind in shipped.scenario("HOM-02@1").kinds if kind.name == "ample")
    narrow = replace(ample, values={**ample.values, name: span})
    chance = Chance(Random(3).random)
    assert Thrown(why) in [draw(chance, narrow) for _ in range(200)]
