"""The sums of what is left: film, chance, oxidation and marks, and what they warn of."""

import pytest

from courses.trade.sums import work_out
from courses.trade.units import Preferences


def figures(name: str, **inputs: object) -> dict[str, float]:
    result = work_out(name, inputs)
    return {one.name: one.value for one in (result.output, *result.also)}


def test_film_is_subtracted_and_held_against_reserve_budget_and_edge() -> None:
    """A chine of 290 µm and a plan of 15: 2.5 × 15 = 37.5 at the edge, whose film is three quarters."""
    assert figures("film_left", film_um=290, cut_um=15) == {
        "film_left_um": 275.0,
        "above_reserve_um": 25.0,
        "budget_left_um": 45.0,
        "edge_cut_um": 37.5,
        "edge_left_um": 0.75 * 290 - 37.5,
    }
    assert figures("film_left", film_um=290, cut_um=15, reserve_um=280, budget_um=10)["above_reserve_um"] == -5.0


@pytest.mark.parametrize(
    ("inputs", "warned"),
    [
        ({"film_um": 500, "cut_um": 20}, []),
        ({"film_um": 275, "cut_um": 16}, ["reserve"]),  # 259 read ±10 may be 249
        ({"film_um": 600, "cut_um": 61}, ["more than one job"]),
        ({"film_um": 45, "cut_um": 14, "substrate": "clear_coat", "reading_um": 0}, ["job", "edge"]),
        ({"film_um": 45, "cut_um": 16, "substrate": "clear_coat"}, ["reserve", "job", "edge"]),
        ({"film_um": 5, "cut_um": 15, "substrate": "clear_coat"}, ["whole film", "job"]),
    ],
)
def test_what_a_plan_breaks_is_said(inputs: dict[str, object], warned: list[str]) -> None:
    notes = [str(note) for note in work_out("film_left", inputs).notes]
    assert len(notes) == len(warned) + 1
    assert all(word in note for word, note in zip(warned, notes, strict=False))
    assert "range" in notes[-1]


def test_film_left_is_the_difference_of_what_is_shown() -> None:
    said = work_out("film_left", {"film_um": 290, "cut_um": 15}).shown(Preferences.us())
    assert said.output.text == "10.83\xa0mil"
    assert "0.4\xa0mil" in said.uncertainty or "0.39\xa0mil" in said.uncertainty


def test_tape_takes_the_edge_out_of_the_chance() -> None:
    bare = figures("burn_probability", film_um=45, cut_um=12, spread=0.1)
    taped = figures("burn_probability", film_um=45, cut_um=12, spread=0.1, taped="yes")
    assert (bare["burn_percent"], bare["edge_percent"], taped["burn_percent"]) == (13.33, 13.33, 0.0)
    assert bare["most_cut_um"] < taped["most_cut_um"] < 45


@pytest.mark.parametrize("taped", ["no", "yes"])
def test_the_most_that_may_be_cut_has_two_chances_in_a_hundred(taped: str) -> None:
    inputs = {"film_um": 45, "spread": 0.1, "taped": taped}
    most = figures("burn_probability", cut_um=5, **inputs)["most_cut_um"]
    assert figures("burn_probability", cut_um=most, **inputs)["burn_percent"] == pytest.approx(2.0, abs=0.2)


def test_the_limit_of_the_simulator_is_named() -> None:
    deep, shallow = (work_out("burn_probability", {"film_um": 45, "cut_um": cut}).notes[0] for cut in (12, 4))
    assert str(deep).startswith("Over 2\xa0%")
    assert str(shallow).startswith("Up to 2\xa0%")


def test_oxidation_goes_with_the_film() -> None:
    assert figures("oxidation_left", layer_um=10, removed_um=12, spread=0.3) == {
        "left_percent": 25.2,
        "cut_for_95_um": 14.9,
        "still_to_cut_um": 2.9,
    }
    done = figures("oxidation_left", layer_um=10, removed_um=20)
    assert (done["left_percent"], done["still_to_cut_um"]) == (0.0, 0.0)
    assert figures("oxidation_left", layer_um=10, removed_um=0)["left_percent"] == 100.0


def test_marks_beyond_a_depth_and_the_depth_of_nineteen_in_twenty() -> None:
    assert figures("share_deeper", median_um=0.8, gsd=1.6, depth_um=2.0) == {"deeper_percent": 2.6, "d95_um": 1.73}
    assert figures("share_deeper", median_um=0.8, gsd=1.6, depth_um=1.7332)["deeper_percent"] == 5.0
    assert figures("share_deeper", median_um=0.8, depth_um=0.8)["deeper_percent"] == 50.0
