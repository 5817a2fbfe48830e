"""The sums of areas and of coating, as lesson 29 works them."""

import pytest

from courses.trade.errors import ImpossibleChoice, MissingInput, OutOfRange
from courses.trade.sums import work_out
from courses.trade.units import Preferences

BOAT = {"loa_m": 6.40, "lwl_m": 5.55, "beam_m": 2.45, "draft_m": 0.42, "freeboard_m": 0.80}


def figures(name: str, **given: object) -> dict[str, float]:
    result = work_out(name, given)
    return {one.name: one.value for one in (result.output, *result.also)}


def notes(name: str, **given: object) -> list[str]:
    return [str(note) for note in work_out(name, given).notes]


@pytest.mark.parametrize(
    ("formula", "area_m2"), [("T1", 14.16), ("D1", 11.76), ("B1", 15.93), ("B2", 13.54), ("K1", 7.96), ("K2", 9.56)]
)
def test_the_worked_boat_of_the_exercise(formula: str, area_m2: float) -> None:
    assert figures("hull_area", formula=formula, **BOAT)["area_m2"] == area_m2


def test_margin_and_what_is_left_out() -> None:
    assert figures("hull_area", formula="D1", **BOAT, left_out_m2=3.5) == {
        "area_m2": 8.26,
        "low_m2": 9.09,
        "high_m2": 9.91,
    }


def test_feet_and_metres_may_stand_side_by_side() -> None:
    # the trap of the exercise, taken out: 21 ft and 8 ft are 6.40 and 2.44 m
    mixed = figures("hull_area", loa_m="21 ft", beam_m="8 ft", freeboard_m=0.8)
    assert mixed["area_m2"] == pytest.approx(14.14, abs=0.005)


def test_each_formula_says_what_is_in_it_or_what_another_guide_has() -> None:
    assert "rectangle" in notes("hull_area", **BOAT)[0]
    assert "non-skid" in notes("hull_area", formula="D1", **BOAT)[0]
    assert notes("hull_area", formula="B1", **BOAT) == [
        "Another guide has B2: 13.5\xa0m² for the same part. Name the formula wherever you write the area."
    ]
    assert notes("hull_area", formula="B3", **BOAT) == []


def test_the_planning_rate_of_the_worked_boat() -> None:
    assert figures("coating_needed", area_m2=14.16, pack_ml=30) == {
        "need_ml": 38.4,
        "packs": 2.0,
        "spare_ml": 21.6,
        "slack_percent": 36.0,
        "wet_um": 2.71,
        "left_um": 0.66,
    }


@pytest.mark.parametrize(("loss", "need_ml"), [("L1", 46.2), ("L2", 42.1)])
def test_by_the_film_it_shall_leave_in_both_conventions(loss: str, need_ml: float) -> None:
    got = figures("coating_needed", area_m2=14.16, method="C2", dry_um=0.8, loss=loss, pack_ml=30)
    assert (got["need_ml"], got["packs"], got["left_um"]) == (need_ml, 2.0, 0.8)


def test_the_convention_is_said_and_so_is_little_slack() -> None:
    # 7.20 × 2.55, F 0.95: 49.3 mL in 50-mL bottles
    said = notes("coating_needed", area_m2=18.525)
    assert said[0].startswith("Loss 30 % is ÷ 0.70 (L1).")
    assert "one spill stops the job" in said[1]
    assert "No shop gauge" in said[-1]
    other = notes("coating_needed", area_m2=14.16, loss="L2", pack_ml=30)
    assert other[0].startswith("A factor is × 1.3 (L2).")
    assert not any("spill" in note for note in other)


def test_a_thick_paint_can_be_gauged() -> None:
    said = notes("coating_needed", area_m2=10, method="C2", dry_um=40, solids_percent=43, pack_ml=1000)
    assert not any("No shop gauge" in note for note in said)


def test_what_is_missing_or_impossible_is_refused() -> None:
    with pytest.raises(MissingInput, match=r"0\.8 µm"):
        work_out("coating_needed", {"area_m2": 10, "method": "C2"})
    with pytest.raises(MissingInput, match="give F"):
        work_out("hull_area", {"loa_m": 6, "beam_m": 2})
    with pytest.raises(ImpossibleChoice):
        work_out("hull_area", {**BOAT, "formula": "T2"})
    with pytest.raises(OutOfRange, match="coats"):
        work_out("coating_needed", {"area_m2": 10, "coats": 1.5})
    with pytest.raises(OutOfRange, match="longer than the boat"):
        work_out("hull_area", {**BOAT, "lwl_m": 7})


def test_a_reader_of_feet_sees_square_feet_and_ounces() -> None:
    area = work_out("hull_area", BOAT).shown(Preferences.us())
    assert area.output.text == "152\xa0ft²"
    coating = work_out("coating_needed", {"area_m2": 14.16, "pack_ml": 30}).shown(Preferences.us())
    assert (coating.output.text, coating.also[0].text, coating.also[2].text) == ("1.3\xa0fl\xa0oz", "2", "36.0\xa0%")
