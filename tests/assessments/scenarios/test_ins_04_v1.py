"""INS-04 version 1: the printed ranges, lines in two to four cells, each pattern with its origin."""

import pytest

from assessments.scenarios.draw import Drawn, key_of
from assessments.scenarios.fields import Record
from assessments.scenarios.ins_04_v1 import key, pictures
from courses.trade.units import Preferences, to_shown
from tests.assessments.scenarios.drawing import (
    assert_captions_tell_nothing,
    assert_inside,
    assert_pictures_stand,
    assert_shares,
    draws,
)

THIRD = 1 / 3


@pytest.fixture(scope="module")
def sweep() -> list[Drawn]:
    return draws("INS-04@1", 200)


def test_every_draw_keeps_to_the_printed_ranges(sweep: list[Drawn]) -> None:
    for drawn in sweep:
        length_ft, _ = to_shown(drawn.facts.number("length_m"), "m", Preferences.us())
        assert 28 <= length_ft <= 38
        assert_inside(drawn.facts, {"oxidation_um": (2.4, 2.8), "film_um": (420, 560)})
        assert_pictures_stand(drawn)


def test_press_pattern_fitting_and_day_come_as_often_as_printed(sweep: list[Drawn]) -> None:
    assert_shares(sweep, lambda one: one.facts["press"], {"soft": 0.5, "firm": 0.5})
    assert_shares(sweep, lambda one: one.facts["buyer"], {"friday": 0.5, "saturday": 0.5})
    assert_shares(sweep, lambda one: one.facts["pattern"], {"star": THIRD, "ring": THIRD, "parallel": THIRD})
    assert_shares(sweep, lambda one: one.facts["fitting"], {"cleat": THIRD, "stanchion": THIRD, "chainplate": THIRD})


def test_the_lines_lie_in_two_to_four_of_the_cells(sweep: list[Drawn]) -> None:
    for drawn in sweep[:60]:
        worked = key_of(drawn.scenario, drawn.facts)
        assert 2 <= worked.number("required_n") <= 4
        assert worked["zones"] == (Record({"cells": worked["required"], "verdict": "refer"}),)


def deck(pattern: str, press: str) -> Record:
    """Lines where four cells meet, in the middle of a white deck."""
    return Record(
        {
            "pattern": pattern,
            "press": press,
            "oxidation_um": 2.6,
            "severity": 0.6,
            "across": 0.5,
            "down": 0.5,
            "direction": 0,
            "seed": 5,
        }
    )


@pytest.mark.parametrize(
    ("pattern", "origin"),
    # one marine surveyor's page: star from inside, rings from outside, near-parallel over a hard point
    [("star", "inside_blow"), ("ring", "outside_blow"), ("parallel", "flex")],
)
def test_the_origin_follows_the_pattern(pattern: str, origin: str) -> None:
    assert key(deck(pattern, "firm"))["origin"] == origin
    assert pictures(deck(pattern, "firm"))[0].scene["defects"][0]["kind"] == f"crack_{pattern}"  # type: ignore[index]


def test_soft_adds_the_warning_of_the_load_and_changes_nothing_else() -> None:
    firm, soft = key(deck("star", "firm")), key(deck("star", "soft"))
    assert soft["advice"] == ["surveyor", "not_treated", "keep_load_off"]
    assert {**soft, "advice": None} == {**firm, "advice": None}


def test_the_plan_stops_at_the_lines_and_polishes_the_rest() -> None:
    steps = key(deck("ring", "soft"))["steps"]
    assert isinstance(steps, list)
    assert {step["zone"] for step in steps if step["op"] in ("test_spot", "cut", "finish")} == {"rest"}
    assert {"op": "record", "zone": "crack"} in steps
    assert {"op": "tell"} in steps


def test_captions_tell_nothing() -> None:
    assert_captions_tell_nothing("INS-04@1", ["crack", "star", "ring", "line", "blow", "flex"])
