"""Forty figures of the fact sheet on surfaces, each with its kind and its source, and what shops do by habit.

Kinds: STD a published standard or table, PHYS physics, MODEL our fitted constants, CALC arithmetic of the two beside
it. Tolerance is one in the last digit shown unless a row says more. Figures that rest on our own extrapolation, on an
older edition or on memory say so in their source.
"""

from collections.abc import Callable
from dataclasses import dataclass
from itertools import pairwise
from math import cos, pi, radians, sin

import pytest
from hypothesis import given
from hypothesis import strategies as st

from courses.trade import estimate, film, gloss, leftover, removal
from courses.trade.abrasives import D50_UM, EXTRAPOLATED, RATIO_LIMIT, d50_um, grain_ratio, nearest_grade
from courses.trade.american import american_d50_um
from courses.trade.sums import cuts as shop
from courses.trade.sums import work_out
from courses.trade.surface import parameters
from tests.courses.content.reading import plain
from tests.courses.trade.model import constants

S1 = "two grit tables of FEPA and ISO averages"
S5 = "guidance on abrasives: CAMI 400 = 23.6, 600 = 16, P600 = 25.75"
OLDER = S1 + ", before 2021: P1500 and finer are measured by another instrument since"
CIRCLE = "arithmetic of a circle"
PRESTON = "Preston 1927: pressure × speed × time"
FRESNEL = "Fresnel; checked against the package tmm 0.2"
DAVIES = "Davies 1954, Bennett and Porteus 1961, from memory"
FITTED = "our model's constants, fixtures/trade/model.toml"
NORMAL = "normal distribution"


@dataclass(frozen=True)
class Row:
    number: int
    kind: str
    source: str
    figure: Callable[[], float]
    expected: float
    within: float

    def __str__(self) -> str:
        return f"{self.number}-{self.kind}"


def removed(**inputs: object) -> float:
    return work_out("removal", inputs).value


def pass_um(pad_m: float = 0.2, arm_mps: float = 0.05) -> float:
    slip = removal.rotary_slip_mps(pad_m, 1500)
    return removal.pass_removal_um(3.18e-11, 30, slip, arm_mps, removal.stripe_m(pad_m, 0.5))


def set_um(*turns: float) -> float:
    stripe = removal.stripe_m(0.2, 0.5)
    return sum(
        removal.pass_removal_um(constants().k_of("wool", "heavy"), 30, removal.rotary_slip_mps(0.2, one), 0.05, stripe)
        for one in turns
    )


def agreeing(half_width_deg: float) -> float:
    """How far azimuths spread evenly within ± that agree, opposite ones counted as one: 0 not at all, 1 fully."""
    steps = 20_000
    width = radians(half_width_deg)
    az = [width * (2 * (step + 0.5) / steps - 1) for step in range(steps)]
    mean_cos, mean_sin = sum(cos(2 * one) for one in az) / steps, sum(sin(2 * one) for one in az) / steps
    return (mean_cos**2 + mean_sin**2) ** 0.5


def unit_step(angle: float) -> float:
    return gloss.smooth_gloss(1.567, angle) - gloss.smooth_gloss(1.566, angle)


ROWS = (
    Row(1, "STD", S1, lambda: d50_um("P240"), 58.5, 0.1),
    Row(2, "STD", f"{S1}; {S5}", lambda: d50_um("P600"), 25.8, 0.1),
    Row(3, "STD", S1, lambda: d50_um("P1000"), 18.3, 0.1),
    Row(4, "STD", OLDER, lambda: d50_um("P1500"), 12.6, 0.1),
    Row(5, "STD", OLDER, lambda: d50_um("P2000"), 10.3, 0.1),
    Row(6, "STD", OLDER, lambda: d50_um("P2500"), 8.4, 0.1),
    Row(7, "STD", f"{S1}; {S5}", lambda: int(nearest_grade(american_d50_um("600"))[1:]), 1200, 0),
    Row(8, "STD", f"{S1}; {S5}", lambda: int(nearest_grade(american_d50_um("400"))[1:]), 800, 0),
    Row(9, "CALC", S1, lambda: grain_ratio("P1000", "P1500"), 1.452, 0.001),
    Row(10, "CALC", S1, lambda: grain_ratio("P800", "P2000"), 2.117, 0.001),
    Row(11, "CALC", "P3000 is our own extrapolation", lambda: grain_ratio("P1000", "P3000"), 2.65, 0.01),
    Row(12, "PHYS", CIRCLE, lambda: removal.edge_speed_mps(0.2, 1500), 15.71, 0.01),
    Row(13, "PHYS", CIRCLE, lambda: removal.edge_speed_mps(0.18, 1800), 16.96, 0.01),
    Row(
        *(14, "PHYS", "mean of r over a circle"),
        lambda: removal.rotary_slip_mps(0.2, 1500) / removal.edge_speed_mps(0.2, 1500),
        *(2 / 3, 1e-12),
    ),
    Row(15, "PHYS", CIRCLE, lambda: removal.orbit_speed_mps(0.015, 4800), 3.77, 0.01),
    Row(16, "PHYS", CIRCLE, lambda: removal.orbit_speed_mps(0.008, 9000), 3.77, 0.01),
    Row(17, "PHYS", PRESTON, lambda: pass_um(pad_m=0.1) / pass_um(pad_m=0.2), 1.0, 1e-9),
    Row(18, "PHYS", PRESTON, lambda: pass_um(arm_mps=0.10) / pass_um(arm_mps=0.05), 0.5, 1e-9),
    Row(19, "PHYS", PRESTON, lambda: set_um(900, 1500, 1650) / set_um(600, 900, 1500), 1.35, 1e-9),
    Row(20, "PHYS", "force ÷ area", lambda: removal.pressure_pa(30, 0.2), 955, 1),
    Row(21, "PHYS", "path ÷ speed", lambda: removal.pass_s_m2(0.05, 0.1), 200, 1e-9),
    Row(22, "PHYS", FRESNEL, lambda: gloss.reflectance(1.50, 0.0), 0.0400, 1e-4),
    Row(23, "PHYS", FRESNEL, lambda: gloss.reflectance(1.567, 60.0), 0.10006, 1e-5),
    Row(24, "PHYS", FRESNEL, lambda: gloss.reflectance(1.567, 20.0), 0.04908, 1e-5),
    Row(25, "PHYS", FRESNEL, lambda: gloss.reflectance(1.567, 85.0), 0.61915, 1e-5),
    Row(26, "PHYS", FRESNEL, lambda: gloss.smooth_gloss(1.55, 60.0), 97.3, 0.1),
    Row(26, "PHYS", FRESNEL, lambda: gloss.smooth_gloss(1.55, 20.0), 95.4, 0.1),
    Row(27, "PHYS", FRESNEL, lambda: gloss.smooth_gloss(1.50, 60.0), 89.1, 0.1),
    Row(27, "PHYS", FRESNEL, lambda: gloss.smooth_gloss(1.50, 20.0), 82.0, 0.1),
    Row(28, "PHYS", FRESNEL, lambda: unit_step(20.0), 0.27, 0.01),
    Row(28, "PHYS", FRESNEL, lambda: unit_step(60.0), 0.16, 0.01),
    Row(29, "PHYS", DAVIES, lambda: gloss.coherent_share(0.05, 60.0), 0.7216, 1e-4),
    Row(30, "PHYS", DAVIES, lambda: gloss.coherent_share(0.05, 20.0), 0.3159, 1e-4),
    Row(31, "PHYS", DAVIES, lambda: gloss.scattered_share(0.01, 0.0), 0.0509, 1e-4),
    Row(32, "PHYS", DAVIES, lambda: gloss.coherent_share(0.0729, 60.0), 0.5, 0.001),
    Row(33, "PHYS", f"{DAVIES}; opening of the receptor from memory", lambda: gloss.gloss(1.55, 0.05, 3, 60), 79.3, 1),
    Row(33, "PHYS", f"{DAVIES}; opening of the receptor from memory", lambda: gloss.gloss(1.55, 0.05, 10, 60), 93.3, 1),
    Row(34, "STD", "a page on the use of ASTM D523", lambda: gloss.geometry(88.0), 20, 0),
    Row(34, "STD", "a page on the use of ASTM D523", lambda: gloss.geometry(6.0), 85, 0),
    Row(35, "MODEL", FITTED, lambda: set_um(600, 900, 1500), 4.00, 0.01),
    Row(35, "MODEL", FITTED, lambda: set_um(600, 900, 1500) * constants().pads["wool"].eta, 3.00, 0.01),
    Row(36, "MODEL", FITTED, lambda: work_out("scratch_depth", {"grade": "P1500"}).also[0].value, 2.87, 0.01),
    Row(36, "MODEL", FITTED, lambda: work_out("sets_to_clear", {"grade": "P1500"}).value, 0.96, 0.01),
    Row(37, "MODEL", NORMAL, lambda: 100 * leftover.share_oxidised(12, 10, 0.3), 25.2, 0.1),
    Row(38, "MODEL", NORMAL, lambda: 100 * leftover.burn_probability(45, 0.1, 12, 2.5, 0.75, taped=False), 13.3, 0.1),
    Row(38, "MODEL", NORMAL, lambda: 100 * leftover.burn_probability(45, 0.1, 12, 2.5, 0.75, taped=True), 0, 0.01),
    Row(39, "CALC", "log-normal distribution", lambda: 100 * leftover.share_deeper(2.0, 0.8, 1.6), 2.6, 0.1),
    Row(39, "CALC", "log-normal distribution", lambda: leftover.d95_um(0.8, 1.6), 1.73, 0.01),
    Row(40, "PHYS", "sin(2t) ÷ 2t of lit directions", lambda: agreeing(5.0), 0.9949, 1e-4),
    Row(40, "PHYS", "2t ÷ 180", lambda: 100 * 2 * 5.0 / 180, 5.6, 0.1),
)


def test_all_forty_stand_here_each_with_a_source() -> None:
    assert sorted({row.number for row in ROWS}) == list(range(1, 41))
    assert {row.kind for row in ROWS} == {"STD", "PHYS", "MODEL", "CALC"}
    assert all(row.source for row in ROWS)


@pytest.mark.parametrize("row", ROWS, ids=str)
def test_the_figure_comes_out(row: Row) -> None:
    assert row.figure() == pytest.approx(row.expected, abs=row.within + 1e-9)


def test_steps_of_rows_10_and_11_are_too_big() -> None:
    assert min(grain_ratio("P800", "P2000"), grain_ratio("P1000", "P3000")) > RATIO_LIMIT
    said = work_out("grain_ratio", {"from_grade": "P800", "to_grade": "P2000"}).notes[0]
    assert str(said).startswith("Over 2")


def test_row_40_is_what_the_lesson_on_holograms_says() -> None:
    assert agreeing(5.0) == pytest.approx(sin(radians(10)) / radians(10), abs=1e-6)
    assert "sin(10°) / (10 × π / 180) = 0.995" in plain("L03")
    assert "5.6 %" in plain("L03")


# ISO 6344 and FEPA, medians as two tables print them; bands of ISO 6344-3:1998 from memory.
BANDS = {"P240": 2, "P320": 1.5, "P600": 1, "P800": 1, "P1000": 1, "P1200": 1, "P1500": 1, "P2000": 0.8, "P2500": 0.5}


def test_neighbouring_grades_of_the_standard_do_not_overlap() -> None:
    spans = [(D50_UM[grade] - band, D50_UM[grade] + band) for grade, band in BANDS.items()]
    assert all(finer[1] <= coarser[0] for coarser, finer in pairwise(spans))


def test_extrapolated_medians_follow_one_rule_and_are_marked() -> None:
    assert EXTRAPOLATED == ("P3000", "P4000", "P5000")
    for grade in EXTRAPOLATED:
        assert D50_UM[grade] == pytest.approx(20_800 / int(grade[1:]), abs=0.06)
    assert all(D50_UM[coarse] > D50_UM[fine] for coarse, fine in pairwise(D50_UM))


TURNS = st.floats(100, 2500)


@given(st.floats(1, 150), st.floats(1e-13, 1e-9), TURNS, st.floats(0.01, 0.5), st.floats(1, 5))
def test_preston_is_linear_in_force_k_and_turns_and_inverse_in_the_arm(
    force: float, k: float, turns: float, arm: float, times: float
) -> None:
    def cut(force: float = force, k: float = k, turns: float = turns, arm: float = arm) -> float:
        return removal.pass_removal_um(k, force, removal.rotary_slip_mps(0.2, turns), arm, 0.1)

    assert cut(force=2 * force) == pytest.approx(2 * cut())
    assert cut(k=times * k) == pytest.approx(times * cut())
    assert cut(turns=times * turns) == pytest.approx(times * cut())
    assert cut(arm=2 * arm) == pytest.approx(cut() / 2)


@given(st.floats(0.05, 0.45), TURNS, st.floats(0.0, 0.9))
def test_the_diameter_of_a_rotary_pad_cancels(pad: float, turns: float, overlap: float) -> None:
    def cut(pad_m: float) -> float:
        stripe = removal.stripe_m(pad_m, overlap)
        return removal.pass_removal_um(3e-11, 30, removal.rotary_slip_mps(pad_m, turns), 0.05, stripe)

    assert cut(pad) == pytest.approx(cut(0.2))
    assert cut(pad) == pytest.approx(1e6 * 3e-11 * 30 * (2 * pi * turns / 180) / (0.05 * (1 - overlap)))


# Common practice, no source: what a shop does by habit, where a table of ours holds the number.


def test_a_section_gets_three_passes_on_the_rotary() -> None:
    assert shop.usual("wool_heavy", "rotary").passes == 3
    assert estimate.PASSES["rotary"] == 3
    assert "along, up and down, along" in plain("L14")


def test_a_rotary_spreads_at_600_works_at_900_to_1500_and_never_over_1800() -> None:
    turns = {one.name: one.default for one in parameters("cut")}["speeds_rpm"]
    assert turns == (600.0, 900.0, 1500.0)
    assert constants().film.rotary_limit_rpm == 1800
    assert 900 <= shop.usual("wool_medium", "rotary").speed_rpm <= 1500
    assert "spread at 600 and work at 900 to 1500" in plain("L14")


def test_a_sanding_section_is_five_to_eight_feet_long() -> None:
    foot_m = 0.3048
    assert 5 * foot_m <= estimate.SECTION_LENGTH_M <= 8 * foot_m


def test_two_grades_go_coarse_to_fine_in_one_easy_step() -> None:
    assert grain_ratio("P1500", "P2000") < grain_ratio("P1000", "P1500") <= 1.5


def test_a_hull_of_22_feet_takes_about_two_pads_of_each_kind() -> None:
    side_m2 = film.hull_area_m2("T1", film.Hull(loa_m=22 * 0.3048, beam_m=2.45, freeboard_m=0.80))
    job = estimate.Job(side_m2, estimate.section_m2(0.80), rotary=1, da_finish=1)
    assert {item.name: item.order for item in estimate.materials(job) if item.name.startswith("pads")} == {
        "pads_rotary": 2,
        "pads_da_finish": 3,
    }
