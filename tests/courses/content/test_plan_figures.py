"""What the lessons on planning say in figures, worked out again with the trade's own sums.

Cuts, shares and depths are those of our training model; grains are printed in grit tables; limits are common practice.
"""

import tomllib

import pytest

from courses.content.parts import Calculator
from courses.trade.sums import work_out
from tests.courses.content.reading import FIXTURES, plain, told, whole_shelf

SANDER = {"machine": "sander", "speed_rpm": 8000, "force_n": 25, "arm_mps": 0.15}
# The shop's settings, common practice: rotary 600, 900, 1500 and 900, 1500, 1650 rpm; dual action 4800 at 30 and 50 N.
SETS = {
    "heavy": {"cuts": "wool_heavy", "speed_rpm": 1000},
    "medium": {"cuts": "wool_medium", "speed_rpm": 1350},
    "finish": {"cuts": "foam_finish_fine", "machine": "da", "speed_rpm": 4800, "passes": 4, "arm_mps": 0.06},
    "P1500": {"cuts": "P1500", "passes": 4, **SANDER},
    "P2000": {"cuts": "P2000", "passes": 4, **SANDER},
}
POLISH = ("heavy", "medium", "finish")


def worked(name: str, **given: object) -> dict[str, float]:
    """Every figure of a sum by its name."""
    result = work_out(name, given)
    return {figure.name: figure.value for figure in (result.output, *result.also)}


def cut(*steps: str) -> float:
    """Model µm that these sets take together."""
    return sum(worked("removal", **SETS[step])["removed_um"] for step in steps)


@pytest.mark.parametrize(
    ("step", "row"),
    [
        ("finish", "finishing foam, dual action 0.6 0.25"),
        ("medium", "medium compound, wool, rotary 3.0 2.25"),
        ("heavy", "heavy compound, wool, rotary 4.0 3.0"),
        ("P1500", "P1500 on a hard disc, four passes 7.5 7.2"),
    ],
)
def test_what_a_set_cuts_and_levels_is_what_l10_says(step: str, row: str) -> None:
    figures = worked("removal", **SETS[step])
    said_cut, said_level = (float(one) for one in row.split()[-2:])
    assert figures["removed_um"] == pytest.approx(said_cut, abs=0.05)
    assert figures["levelled_um"] == pytest.approx(said_level, abs=0.05)
    assert row in plain("L10")


@pytest.mark.parametrize(
    ("layer_um", "steps", "row", "left"),
    [
        (2.7, ("medium",), "2.7 one medium set 33 %", 33),
        (2.7, ("medium", "medium"), "2.7 two medium sets 0 %", 0),
        (2.7, ("heavy",), "2.7 one heavy set 3 %", 3),
        (3.5, POLISH, "3.5 heavy, medium, finish 0 %", 0),
        (8.5, POLISH, "8.5 heavy, medium, finish 66 %", 66),
        (8.5, ("P1500", *POLISH), "8.5 the same, after P1500 × 4 0.1 %", 0.1),
    ],
)
def test_what_a_spot_leaves_is_what_l10_says(layer_um: float, steps: tuple[str, ...], row: str, left: float) -> None:
    figures = worked("oxidation_left", layer_um=layer_um, removed_um=cut(*steps))
    assert figures["left_percent"] == pytest.approx(left, abs=0.05 if left < 1 else 0.5)
    assert row in plain("L10")


def test_at_eight_to_nine_polishing_leaves_about_two_thirds() -> None:
    left = [worked("oxidation_left", layer_um=layer, removed_um=cut(*POLISH))["left_percent"] for layer in (8.0, 9.0)]
    assert (round(left[0]), round(left[1])) == (58, 73)


def test_the_worked_example_of_l10_adds_up() -> None:
    assert [round(cut(*steps), 2) for steps in (POLISH, ("P1500",), ("P1500", *POLISH))] == [7.62, 7.53, 15.15]
    for said in ("4.00 + 3.00 + 0.62 = 7.62", "7.53 + 7.62 = 15.15", "0.1 % is left, for 15.2 model µm of cut"):
        assert said in plain("L10")
    assert round(worked("removal", **SETS["heavy"])["minutes_m2"]) == 15, "a quarter hour a square metre"


def test_the_limits_of_l11_are_those_of_the_table_of_surfaces() -> None:
    surfaces = tomllib.loads((FIXTURES / "trade/surfaces.toml").read_text())
    for substrate in ("gel_coat", "clear_coat"):
        assert {(surfaces[substrate][limit], "um") for limit in ("reserve_um", "budget_um")} <= told("L11")


def test_the_worked_example_of_l11_comes_out() -> None:
    correction = worked(
        "removal", cuts="foam_cut_medium", machine="da", speed_rpm=4800, passes=6, force_n=50, arm_mps=0.06
    )
    taken = correction["removed_um"] + cut("finish")
    assert taken == pytest.approx(3.34, abs=0.01)
    left = worked("film_left", film_um=46, cut_um=taken, substrate="clear_coat", budget_um=8 - (48 - 46))
    assert left["film_left_um"] == pytest.approx(42.7, abs=0.05)
    assert left["budget_left_um"] == pytest.approx(2.7, abs=0.05)
    assert (round(100 * (2 + taken) / 8), round(2 + 2 * 3.3, 1)) == (67, 8.6)
    assert {(42.7, "um"), (5.3, "um"), (8.6, "um")} <= told("L11")
    assert [round(film - taken, 1) for film in (36, 32, 31)] == [32.7, 28.7, 27.7]
    assert [round(32 - cut("finish"), 1), round(32 - correction["removed_um"], 1)] == [31.4, 29.3]
    assert cut("P2000") == pytest.approx(5.8, abs=0.06)


def test_an_edge_without_tape_burns_first() -> None:
    untaped, taped = (
        worked("burn_probability", film_um=45, cut_um=12, spread=0.1, taped=tape)["burn_percent"]
        for tape in ("no", "yes")
    )
    assert round(untaped) == 13
    assert taped < 0.01
    assert "13 % at an edge without tape, and under 0.01 % with the edge taped" in plain("L11")


def test_four_heavy_sets_leave_a_deep_line_open() -> None:
    levelled = 4 * 3.0 + worked("removal", **SETS["finish"])["levelled_um"]
    left = worked("share_deeper", median_um=12, depth_um=round(levelled, 2), gsd=1.15)["deeper_percent"]
    assert (round(4 * 4.0 + cut("finish"), 1), round(left)) == (16.6, 44)


@pytest.mark.parametrize(
    ("coarse", "fine", "said"),
    [
        ("P1000", "P1500", "P1000 → P1500 1.45 easy"),
        ("P1500", "P2000", "P1500 → P2000 1.22 easy"),
        ("P1000", "P2000", "P1000 → P2000 1.78 inside the limit"),
        ("P800", "P2000", "P800 → P2000 2.12 too far"),
        ("P1000", "P3000", "P1000 → P3000 2.65 too far"),
    ],
)
def test_the_ratios_of_l12_come_out(coarse: str, fine: str, said: str) -> None:
    ratio = worked("grain_ratio", from_grade=coarse, to_grade=fine)["grain_ratio"]
    assert f"{ratio:.2f}" == said.split()[3]
    verdict = "easy" if ratio <= 1.5 else "inside the limit" if ratio <= 2 else "too far"
    assert said.endswith(verdict)
    assert said in plain("L12")


@pytest.mark.parametrize(
    ("grade", "row"), [("P1000", "P1000 2.7 4.7"), ("P1500", "P1500 1.7 2.9"), ("P2000", "P2000 1.3 2.2")]
)
def test_the_strays_of_l12_come_out(grade: str, row: str) -> None:
    figures = worked("scratch_depth", grade=grade)
    mean, stray = (float(one) for one in row.split()[1:])
    assert figures["scratch_um"] == pytest.approx(mean, abs=0.05)
    assert figures["stray_um"] == pytest.approx(stray, abs=0.05)
    assert row in plain("L12")


@pytest.mark.parametrize(
    ("grade", "cuts", "sets"),
    [("P1500", "wool_heavy", 0.96), ("P2000", "wool_medium", 0.98), ("P1000", "wool_heavy", 1.56)],
)
def test_the_last_paper_decides_the_first_polish(grade: str, cuts: str, sets: float) -> None:
    assert worked("sets_to_clear", grade=grade, cuts=cuts)["sets"] == pytest.approx(sets, abs=0.011)
    coarser = {"P1500": "P1200", "P2000": "P1500", "P1000": "P800"}[grade]
    assert worked("sets_to_clear", grade=coarser, cuts=cuts)["sets"] > 1
    if grade != "P2000":
        assert f"/ 3.00 = {sets}" in plain("L12")


def test_p3000_takes_five_and_a_half_passes_over_p1000() -> None:
    a_pass = worked("removal", cuts="P3000", passes=1, **SANDER)["levelled_um"]
    assert worked("scratch_depth", grade="P1000")["stray_um"] / a_pass == pytest.approx(5.5, abs=0.1)


def test_medium_and_finish_leave_a_stray_of_p1000() -> None:
    levelled = [worked("removal", **SETS[step])["levelled_um"] for step in ("medium", "finish")]
    assert levelled == pytest.approx([2.25, 0.25], abs=0.005)
    assert worked("scratch_depth", grade="P1000")["stray_um"] - sum(levelled) == pytest.approx(2.2, abs=0.05)


# Grit tables and guidance on abrasives, two pages: 400 and 600 of the American series are 23.6 and 16 µm.
@pytest.mark.parametrize(("american", "nearest"), [("400", 800), ("600", 1200), ("800", 1500), ("1000", 2000)])
def test_a_number_without_a_p_is_another_scale(american: str, nearest: int) -> None:
    assert worked("nearest_grade", american=american)["p_number"] == nearest


@pytest.mark.parametrize(
    ("code", "sums"),
    [
        ("L10", ["removal", "oxidation_left"]),
        ("L11", ["film_left", "burn_probability", "share_deeper"]),
        ("L12", ["nearest_grade", "grain_ratio", "scratch_depth", "sets_to_clear"]),
    ],
)
def test_each_calculator_opens_on_the_figures_of_its_lesson(code: str, sums: list[str]) -> None:
    opened = [part for part in whole_shelf().lessons[code].parts if isinstance(part, Calculator)]
    assert [part.sum for part in opened] == sums
    assert all(work_out(part.sum, dict(part.given)).value is not None for part in opened)
