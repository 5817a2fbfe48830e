"""INS-08 version 1: the printed ranges, and the worked line of the lesson, zero and all."""

from dataclasses import replace
from math import sqrt
from random import Random
from statistics import fmean, stdev

import pytest

from assessments import shipped
from assessments.scenarios.chance import Chance, Span
from assessments.scenarios.draw import Drawn, key_of
from assessments.scenarios.fields import Record
from assessments.scenarios.ins_08_v1 import draw, key
from assessments.scenarios.sketch import Thrown
from tests.assessments.scenarios.drawing import assert_shares, draws

T_8 = 2.306
"""Student's t for 8 degrees of freedom and 95 %, as tables print it."""


@pytest.fixture(scope="module")
def sweep() -> list[Drawn]:
    return draws("INS-08@1", 300)


def five(facts: Record, name: str) -> list[float]:
    readings = facts[name]
    assert isinstance(readings, tuple)
    assert len(readings) == 5
    return [float(str(each)) for each in readings]


def assert_as_printed(facts: Record) -> None:
    """Hold the readings on paint over steel against the printed table."""
    zero, here, shut = facts.number("zero_um"), five(facts, "here_um"), five(facts, "shut_um")
    assert 100 - 1e-9 <= fmean(here) - zero <= 120 + 1e-9
    assert 2 - 1e-9 <= fmean(shut) - fmean(here) <= 9 + 1e-9
    assert all(1.5 <= stdev(readings) <= 2.5 for readings in (here, shut))
    # one reading strays by what five may: sum of six even chances, at most 3 · √2 spreads
    strays = 0 if facts["patch"] else 3 * sqrt(2) * 2.5 + 0.5
    low, high = (220, 350) if facts["patch"] else (100, 120)
    assert low + zero - strays <= facts.number("corner_um") <= high + zero + strays


def test_every_draw_keeps_to_the_printed_ranges(sweep: list[Drawn]) -> None:
    for drawn in sweep:
        facts = drawn.facts
        assert facts["zero_um"] == 0 or 6 <= facts.number("zero_um") <= 12
        assert facts.number("foil_read_um") == facts.number("foil_um") + facts.number("zero_um")
        if facts["base"] == "steel":
            assert_as_printed(facts)
        else:
            assert not {"says_um", "here_um", "shut_um", "corner_um"} & set(facts)


def test_cars_a_repaired_corner_and_gel_coat_come_as_often_as_printed(sweep: list[Drawn]) -> None:
    assert_shares(sweep, lambda one: one.facts["panel"], {"car": 0.5, "car_corner": 0.25, "gel_side": 0.25})
    assert_shares(sweep, lambda one: one.facts.number("zero_um") > 0, {True: 0.5, False: 0.5})


def door(**changed: object) -> Record:
    """The readings of the lesson's worked line, on a gauge that is 9 high."""
    facts: dict[str, object] = {
        "panel": "car",
        "base": "steel",
        "patch": False,
        "zero_um": 9,
        "here_um": (97, 100, 96, 99, 100),
        "shut_um": (101, 104, 99, 103, 105),
    }
    return Record({**facts, **changed})  # type: ignore[dict-item]


def test_the_worked_line_of_the_lesson() -> None:
    # L05: 92 95 90 94 96 against 88 91 87 90 91: means 93.4 and 89.4, removed 4.0, doubt 3.1
    worked = key(door())
    assert (worked["mean_um"], worked["gone_um"], worked["doubt_um"]) == (89.4, 4.0, 3.1)
    assert (worked["holds"], worked["clear"], worked["verdict"]) == ("stack", "unknown", "wait_layer")
    assert worked["findings"] == ["usual", "zero_off"]


def test_mean_loss_and_doubt_are_those_of_a_statistics_library(sweep: list[Drawn]) -> None:
    for drawn in sweep[:60]:
        if drawn.facts["base"] == "laminate":
            continue
        worked, here, shut = (
            key_of(drawn.scenario, drawn.facts),
            *(five(drawn.facts, name) for name in ("here_um", "shut_um")),
        )
        assert worked.number("mean_um") == pytest.approx(fmean(here) - drawn.facts.number("zero_um"), abs=0.051)
        assert worked.number("gone_um") == pytest.approx(fmean(shut) - fmean(here), abs=0.051)
        doubt = T_8 * sqrt((stdev(here) ** 2 + stdev(shut) ** 2) / 5)
        assert worked.number("doubt_um") == pytest.approx(doubt, abs=0.051)


def test_a_repaired_corner_is_found_and_gel_coat_needs_another_instrument() -> None:
    assert "repair" in str(key(door(patch=True))["findings"])
    laminate = key(Record({"panel": "gel_side", "base": "laminate", "patch": False, "zero_um": 0}))
    assert (laminate["holds"], laminate["verdicts"], laminate["mean_um"]) == ("nothing", ["other_instrument"], 0.0)
    assert laminate["findings"] == ["wrong_instrument"]


@pytest.mark.parametrize(
    ("name", "span", "why"),
    [
        ("spread_um", Span(30, 31, 1), "five readings lie closer together, or further apart, than this gauge's do"),
        ("total_um", Span(100, 101, 1), "the mean of the five leaves the range of totals"),
        ("gone_um", Span(60, 61, 1), "the two fives differ too little, or too much"),
    ],
)
def test_each_limit_throws_away_what_breaks_it(name: str, span: Span, why: str) -> None:
    car = next(kind for kind in shipped.scenario("INS-08@1").kinds if kind.name == "car")
    narrow = replace(car, values={**car.values, name: span})
    chance = Chance(Random(3).random)
    assert Thrown(why) in [draw(chance, narrow) for _ in range(200)]
