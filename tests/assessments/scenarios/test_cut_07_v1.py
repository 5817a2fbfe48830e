"""CUT-07 version 1: the printed ranges, and what an edge can pay."""

import pytest

from assessments.scenarios.cut_07_v1 import EDGE_GAIN, key
from assessments.scenarios.draw import Drawn
from assessments.scenarios.fields import Record
from courses.shipped import constants
from tests.assessments.scenarios.drawing import assert_shares, draws


@pytest.fixture(scope="module")
def sweep() -> list[Drawn]:
    return draws("CUT-07@1", 300)


def test_every_draw_keeps_to_the_printed_ranges(sweep: list[Drawn]) -> None:
    for drawn in sweep:
        facts = drawn.facts
        edge = facts.number("edge_film_um")
        if facts["film"] == "gel_coat":
            assert 286 <= edge <= 296 if facts["spare"] else 258 <= edge <= 266
        else:
            assert not facts["spare"]
        assert 14.6 <= facts.number("planned_um") <= 15.8


def test_gel_coat_comes_six_times_in_ten_paint_and_flake_twice_each(sweep: list[Drawn]) -> None:
    assert_shares(sweep, lambda one: one.facts["film"], {"gel_coat": 0.6, "topcoat_2k": 0.2, "flake": 0.2})


def test_the_edge_wears_as_in_the_model() -> None:
    assert constants().film.edge_gain == EDGE_GAIN


def test_fifteen_on_the_flat_costs_thirty_eight_on_the_edge() -> None:
    # common practice, no source: an untaped edge wears up to two and a half times as fast; 2.5 x 15.2 = 38.0
    worked = key(Record({"film": "gel_coat", "planned_um": 15.2, "spare": False}))
    assert worked["edge_um"] == 38.0
    assert worked["tools_chine"] == ["hand_pad", "none"]
    assert worked["stays"] == "dull_edge"


@pytest.mark.parametrize("film", ["topcoat_2k", "flake"])
def test_paint_and_flake_are_written_down_and_left(film: str) -> None:
    worked = key(Record({"film": film, "planned_um": 15.2, "spare": False}))
    assert [step["op"] for step in worked["steps"]] == ["record", "tell"]  # type: ignore[attr-defined]
    assert (worked["sand_any"], worked["stays"]) == (False, "whole_side")
