"""The sums of removal against the model's own tables, and what Preston's law asks of any of them."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from courses.trade.errors import ImpossibleChoice, MissingInput, OutOfRange
from courses.trade.sums import work_out
from courses.trade.sums.cuts import CUTS

SANDER = {"machine": "sander", "speed_rpm": 8000, "passes": 1, "force_n": 25, "arm_mps": 0.15}
CUTTING_DA = {"machine": "da", "speed_rpm": 4800, "passes": 6, "force_n": 50, "arm_mps": 0.06}
FINISHING_DA = {**CUTTING_DA, "passes": 4, "force_n": 30}


def figures(name: str, **inputs: object) -> dict[str, float]:
    result = work_out(name, inputs)
    return {one.name: one.value for one in (result.output, *result.also)}


# The model's table of removal: cut and depth gained of a nominal pass or set, minutes a square metre.
@pytest.mark.parametrize(
    ("cuts", "settings", "cut_um", "gained_um", "minutes"),
    [
        ("P1000", SANDER, 3.00, 2.85, 2.3),
        ("wool_heavy", {"speed_rpm": 1000}, 4.00, 3.00, 15.4),
        ("wool_medium", {"speed_rpm": 1350}, 3.00, 2.25, 15.4),
        ("foam_cut_medium", {"speed_rpm": 1650, "passes": 4}, 2.77, 1.80, 20.5),
        ("foam_finish_fine", {"speed_rpm": 1400}, 1.00, 0.40, 15.4),
        ("foam_cut_medium", CUTTING_DA, 2.72, 1.77, 34.2),
        ("microfibre_heavy", CUTTING_DA, 7.1, 5.3, 34.2),
        ("foam_finish_fine", FINISHING_DA, 0.62, 0.25, 22.8),
    ],
)
def test_a_nominal_set_takes_what_the_model_was_fitted_on(
    cuts: str, settings: dict[str, object], cut_um: float, gained_um: float, minutes: float
) -> None:
    found = figures("removal", cuts=cuts, **settings)
    assert found["removed_um"] == pytest.approx(cut_um, abs=0.03)
    assert found["levelled_um"] == pytest.approx(gained_um, abs=0.03)
    assert found["minutes_m2"] == pytest.approx(minutes, abs=0.06)


def test_pressure_is_force_over_the_area_of_the_pad() -> None:
    assert figures("removal", force_n=30)["pressure_kpa"] == 0.955
    assert figures("removal", cuts="foam_cut_medium", **CUTTING_DA)["pressure_kpa"] == pytest.approx(2.83, abs=0.005)


@given(st.sampled_from(sorted(CUTS)), st.floats(20, 200), st.floats(1, 10), st.floats(200, 1700))
def test_cut_grows_with_force_passes_and_turns_as_preston_says(
    cuts: str, force: float, passes: float, turns: float
) -> None:
    def cut(**changed: float) -> float:
        return work_out("removal", {"cuts": cuts, "speed_rpm": turns, "force_n": 20, "k": 1e4, **changed}).value

    one = cut(passes=1)
    assert cut(passes=passes) == pytest.approx(passes * one, rel=1e-3, abs=0.06)
    assert cut(passes=1, force_n=force) == pytest.approx(force / 20 * one, rel=1e-3, abs=0.02)
    assert cut(passes=1, speed_rpm=2 * turns) == pytest.approx(2 * one, rel=1e-3, abs=0.02)
    assert cut(passes=1, arm_mps=0.1) == pytest.approx(one / 2, rel=1e-3, abs=0.02)


@given(st.floats(50, 400), st.floats(0.0, 0.8), st.floats(300, 3000))
def test_the_size_of_a_rotary_pad_cancels(pad_mm: float, overlap: float, turns: float) -> None:
    settings = {"k": 1e4, "overlap": overlap, "speed_rpm": turns}
    usual, other = (figures("removal", pad_mm=pad, **settings) for pad in (200, pad_mm))
    assert other["removed_um"] == pytest.approx(usual["removed_um"], rel=1e-5, abs=0.011)
    assert other["pressure_kpa"] == pytest.approx(usual["pressure_kpa"] * (200 / pad_mm) ** 2, rel=1e-3, abs=0.001)


def test_on_a_dual_action_it_does_not_cancel() -> None:
    small, large = (figures("removal", cuts="foam_cut_medium", pad_mm=pad, **CUTTING_DA) for pad in (75, 150))
    assert small["removed_um"] > 1.5 * large["removed_um"]


def test_a_school_puts_its_own_k_and_gain_in() -> None:
    found = figures("removal", k=2 * 31.8, eta=0.5)
    assert found["removed_um"] == pytest.approx(2 * figures("removal")["removed_um"], abs=0.011)
    assert found["levelled_um"] == pytest.approx(found["removed_um"] / 2, abs=0.006)


def test_a_fast_rotary_is_warned_of_and_a_faster_one_refused() -> None:
    assert "cancels" in str(work_out("removal", {}).notes[1])
    assert "never" in str(work_out("removal", {"speed_rpm": 2500}).notes[1])
    with pytest.raises(OutOfRange, match="more than it can turn"):
        work_out("removal", {"speed_rpm": 4800})


# The price of skipping: passes of paper, or three-pass sets, that clear the strays of a grade. The model's own table.
BY = ("P1500", "P2000", "P3000", "wool_heavy", "wool_medium", "foam_finish_fine", "da")
PRICES = {
    "P800": (3.3, 4.2, 7.0, 2.0, 2.6, 15, 24),
    "P1000": (2.6, 3.4, 5.5, 1.6, 2.1, 12, 19),
    "P1500": (None, 2.1, 3.4, 1.0, 1.3, 7, 12),
    "P2000": (None, None, 2.6, 0.7, 1.0, 5.5, 9),
    "P3000": (None, None, None, 0.4, 0.6, 3.3, 5),
}


@pytest.mark.parametrize(
    ("grade", "by", "price"),
    [(grade, by, price) for grade, row in PRICES.items() for by, price in zip(BY, row, strict=True) if price],
)
def test_the_price_of_skipping_comes_out(grade: str, by: str, price: float) -> None:
    with_what = {"cuts": "foam_finish_fine", "machine": "da"} if by == "da" else {"cuts": by}
    found = figures("sets_to_clear", grade=grade, **with_what)
    assert found["sets"] == pytest.approx(price, abs=0.5 if isinstance(price, int) else 0.051)
    assert found["whole_sets"] == -(-found["sets"] // 1)


def test_a_depth_of_its_own_and_a_gauged_set() -> None:
    found = figures("sets_to_clear", depth_um=6.0, cut_um=4.0, eta=0.75)
    assert found == {"sets": 2.0, "whole_sets": 2.0, "mark_um": 6.0, "film_um": 8.0, "minutes_m2": 30.8}


def test_what_one_set_is_stands_beside_it() -> None:
    assert str(work_out("sets_to_clear", {"depth_um": 3}).notes[0]) == (
        "One set: rotary, 3 passes at 1000 on the mean, half a pad over."
    )
    assert "passes of a fine sander" in str(work_out("sets_to_clear", {"grade": "P800", "cuts": "P1500"}).notes[0])


def test_either_the_grade_or_a_depth() -> None:
    with pytest.raises(MissingInput, match="Give the grade"):
        work_out("sets_to_clear", {})
    with pytest.raises(ImpossibleChoice, match="not both"):
        work_out("sets_to_clear", {"grade": "P1500", "depth_um": 3})
