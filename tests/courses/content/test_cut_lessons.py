"""Lessons 14 to 16: every figure they teach comes out of the trade's own sums, every point of the curriculum is made.

Cuts, strays, trails and gloss are those of our training model; settings, sections and discs are common practice.
"""

import re

import pytest

from courses.content.parts import Calculator, Caution, Check, Drawing, Mistakes, Pictures, Worked
from courses.trade import estimate, gloss, removal
from courses.trade.sums import SUMS, work_out
from tests.courses.content.reading import LISTED, SOURCES, US, plain, told, whole_shelf, words
from tests.courses.trade.model import constants
from tests.courses.trade.surface import plans

CODES = ("L14", "L15", "L16")


def worked(name: str, **given: object) -> dict[str, float]:
    """Every figure of a sum by its name."""
    result = work_out(name, given)
    return {figure.name: figure.value for figure in (result.output, *result.also)}


def rise(**settings: float) -> float:
    found = worked("panel_temperature", speed_rpm=settings.pop("speed_rpm", 1000), **settings)
    return found["local_rise_k"] + found["bulk_rise_k"]


PARTS = {
    "L14": (
        ["removal", "edge_speed", "orbit_speed", "panel_temperature"],
        ["pad_speed_map", "crossing_set", "pass_overlap"],
        [],
        [3, 3, 3, 2, 3, 2],
    ),
    "L15": (
        ["sanding", "scratch_depth", "film_left"],
        ["tool_on_shape"],
        [("sanded_one_way", "sanded_crosswise", "sanded_pigtails")],
        [3, 3, 3, 2, 3, 2],
    ),
    "L16": (
        ["finish_left", "sets_to_clear"],
        ["finish_lobes"],
        [("trails_before_finish", "trails_after_finish")],
        [3, 2, 3, 2],
    ),
}


@pytest.mark.parametrize("code", CODES)
def test_a_lesson_has_all_its_parts(code: str) -> None:
    lesson = whole_shelf().lessons[code]
    sums, drawings, pictures, options = PARTS[code]
    assert [part.sum for part in lesson.parts if isinstance(part, Calculator)] == sums
    assert [part.code for part in lesson.parts if isinstance(part, Drawing)] == drawings
    assert [tuple(part.codes) for part in lesson.parts if isinstance(part, Pictures)] == pictures
    assert [sum(isinstance(part, one) for part in lesson.parts) for one in (Worked, Mistakes, Caution)] == [1, 1, 1]
    assert [len(check.options) for check in lesson.checks] == options
    assert len({check.right.id for check in lesson.checks}) > 1
    assert len(lesson.outcomes) == 4
    assert set(lesson.sources) <= set(SOURCES)


@pytest.mark.parametrize("code", CODES)
def test_every_calculator_opens_and_answers(code: str) -> None:
    for part in whole_shelf().lessons[code].parts:
        if isinstance(part, Calculator):
            assert set(dict(part.given)) <= {one.name for one in SUMS[part.sum].inputs}
            assert work_out(part.sum, dict(part.given)).value > 0


@pytest.mark.parametrize("code", CODES)
def test_the_words_are_those_of_the_house(code: str) -> None:
    text = plain(code)
    assert not re.search(r"!|'|\b(please|oops|well done|great|simply|very)\b", text, re.IGNORECASE)
    blocks = re.findall(r"<(?:p|li)>(.*?)</(?:p|li)>", words(code), re.DOTALL)
    sentences = [one for block in blocks for one in re.split(r"(?<=[.:?])\s", re.sub(r"<[^>]+>", "", block))]
    assert max(len(one.split()) for one in sentences) <= 40
    assert sum(len(one.split()) for one in sentences) / len(sentences) <= 12


@pytest.mark.parametrize(
    ("row", "changed"),
    [
        ("force × 2 × 2 × 2 × 2", {"force_n": 60}),
        ("turns × 1.5 × 1.5 × 1.5 × 1.5", {"speed_rpm": 1500}),
        ("arm speed halved × 2 × 2 × 1.4", {"arm_mps": 0.025}),
        ("arm speed doubled × 0.5 × 0.5 × 0.7", {"arm_mps": 0.1}),
    ],
)
def test_what_a_change_does_is_what_l14_says(row: str, changed: dict[str, float]) -> None:
    assert row in plain("L14")
    cut, heat, warmer = (float(one) for one in re.findall(r"[\d.]+", row)[-3:])
    usual = worked("removal")["removed_um"]
    assert worked("removal", **changed)["removed_um"] == pytest.approx(cut * usual, abs=0.02)
    assert heat == cut, "energy and cut both are force × speed × time"
    assert rise(**changed) / rise() == pytest.approx(warmer, abs=0.03)


def test_the_speeds_of_l14_come_out() -> None:
    rim = worked("edge_speed", pad_mm=200, speed_rpm=1500)
    assert (rim["edge_mps"], rim["mean_mps"]) == (15.71, 10.47)
    orbits = [worked("orbit_speed", orbit_mm=mm, speed_rpm=turns)["orbit_mps"] for mm, turns in ((15, 4800), (8, 9000))]
    assert orbits == [3.77, 3.77]
    text = plain("L14")
    for said in ("1500 / 60 s = 15.71 m/s", "15.71 m/s = 10.47 m/s", "4800 / 60 s = 3.77", "9000 / 60 s = 3.77"):
        assert said in text


def test_the_minutes_of_l14_come_out() -> None:
    """200 s for a pass, 15.4 min for three, 20.5 for four; with a 150 mm pad three take 20.5, a third more."""
    stripe = removal.stripe_m(0.2, 0.5)
    assert removal.pass_s_m2(0.05, stripe) == pytest.approx(200)
    three, four, small = (
        worked("removal", **given)["minutes_m2"] for given in ({"passes": 3}, {"passes": 4}, {"pad_mm": 150})
    )
    assert (three, four, small) == (15.4, 20.5, 20.5)
    assert small / three == pytest.approx(4 / 3, abs=0.01)
    for said in ("= 200 s", "10 min / 0.65 = 15.4 min", "4 × 200 s / 60 / 0.65 = 20.5 min", "a third more in an hour"):
        assert said in plain("L14")


def test_pad_size_cancels_as_l14_says() -> None:
    cuts = [worked("removal", pad_mm=pad)["removed_um"] for pad in (100, 150, 200)]
    assert cuts == [4.0, 4.0, 4.0]
    da = {"cuts": "foam_cut_medium", "machine": "da", "speed_rpm": 4800}
    assert worked("removal", **da, pad_mm=100)["removed_um"] != worked("removal", **da)["removed_um"]


def test_the_sets_of_l14_have_the_means_it_gives() -> None:
    assert (700 + 1000 + 1300) / 3 == (600 + 900 + 1500) / 3 == 1000
    assert (900 + 1500 + 1650) / 3 == 1350
    assert "a heavy set is 1000 on the mean" in plain("L14")
    assert round(0.6 * 0.6, 2) == 0.36
    assert "0.36 square metres" in plain("L14")


@pytest.mark.parametrize(("grade", "cut", "stray"), [("P1000", 3.0, 4.7), ("P1500", 1.9, 2.9), ("P2000", 1.5, 2.2)])
def test_a_pass_of_paper_takes_what_l15_says(grade: str, cut: float, stray: float) -> None:
    sander = {"machine": "sander", "speed_rpm": 8000, "passes": 1, "force_n": 25, "arm_mps": 0.15}
    assert worked("removal", cuts=grade, **sander)["removed_um"] == pytest.approx(cut, abs=0.051)
    assert worked("scratch_depth", grade=grade)["stray_um"] == pytest.approx(stray, abs=0.051)
    assert f"{grade} {cut} {stray}" in plain("L15")


def test_the_worked_example_of_l15_comes_out() -> None:
    minutes = round(4 * removal.pass_min_m2(0.15, 0.075, 0.65), 1)
    more = constants().minutes
    assert (minutes, more["dry"], more["inspect"]) == (9.1, 3.0, 1.8)
    assert round(7.08 * 13.9 / 60, 2) == 1.64
    job = estimate.Job(7.08, estimate.section_m2(0.80), grades=(estimate.Grade("P1500", 4),))
    assert estimate.discs(job) == 10
    assert round(7.08 / estimate.DISC_M2, 1) == 9.4
    for said in ("9.1 + 3.0 + 1.8 = 13.9", "7.08 × 13.9 / 60 = 1.64 h", "7.08 / 0.75 = 9.4", "1.92 → 2", "4.9 → 5"):
        assert said in plain("L15")
    assert {(7.08, "m2"), (1.8, "m"), (0.8, "m")} <= told("L15")


def test_discs_are_counted_by_the_section() -> None:
    assert [length * 0.80 / estimate.DISC_M2 for length in (1.2, 2.0)] == pytest.approx([1.28, 2.13], abs=0.005)
    assert "1.28 → 2" in plain("L15")
    assert "2.13 → 3" in plain("L15")


def test_an_edge_costs_two_and_a_half_times() -> None:
    found = worked("film_left", film_um=290, cut_um=15)
    assert (found["edge_cut_um"], (37.5, "um") in told("L15")) == (37.5, True)
    assert found["above_reserve_um"] == 25.0


@pytest.mark.parametrize(
    ("row", "rz_um"),
    [("after the cut 77 33", 0.27), ("after the medium step 92 72", 0.135), ("after the finish 97 94", 0.03)],
)
def test_the_gloss_of_even_marks_is_what_l16_says(row: str, rz_um: float) -> None:
    assert row in plain("L16")
    at60, at20 = (int(one) for one in row.split()[-2:])
    read = [gloss.gloss(1.55, rz_um * constants().optics.rq_per_rz, 3.0, angle) for angle in (60, 20)]
    assert read == pytest.approx([at60, at20], abs=0.6)


def test_clear_coat_and_what_the_last_step_is_worth() -> None:
    clear = worked("finish_left", machine="da", substrate="clear_coat")
    assert (round(clear["gloss60_gu"]), round(clear["gloss20_gu"])) == (89, 81)
    assert (97 - 92, 94 - 72) == (5, 22)
    assert "worth five units, at 20° it is worth twenty-two" in plain("L16")


@pytest.mark.parametrize(
    ("cuts", "machine", "trail", "row"),
    [
        ("wool_heavy", "rotary", 0.25, "wool on a rotary 0.25"),
        ("foam_cut_medium", "rotary", 0.12, "cutting foam on a rotary 0.12"),
        ("foam_finish_fine", "rotary", 0.05, "finishing foam on a rotary 0.05"),
        ("wool_heavy", "da", 0.0, "any pad on a dual action none"),
    ],
)
def test_the_trails_of_l16_are_the_models(cuts: str, machine: str, trail: float, row: str) -> None:
    assert worked("finish_left", cuts=cuts, machine=machine)["own_trail_um"] == trail
    assert row in plain("L16")
    assert constants().gates.visible_um == 0.10


def test_the_worked_example_of_l16_comes_out() -> None:
    stopped = worked("finish_left", cuts="wool_medium", machine="rotary")
    assert (round(stopped["gloss60_gu"]), round(stopped["gloss20_gu"])) == (86, 51)
    finishing = {"machine": "da", "speed_rpm": 4800, "passes": 4, "force_n": 30, "arm_mps": 0.06}
    one = worked("removal", cuts="foam_finish_fine", **finishing)
    assert one["removed_um"] == 0.62
    assert one["levelled_um"] == pytest.approx(0.25, abs=0.005)
    assert round(0.62 * 0.40, 2) == 0.25
    done = worked("finish_left", cuts="foam_finish_fine", machine="da")
    assert (round(done["gloss60_gu"]), round(done["gloss20_gu"]), done["own_trail_um"]) == (97, 94, 0.0)
    assert worked("sets_to_clear", depth_um=0.25, cuts="foam_finish_fine", machine="da")["sets"] == 1.01
    assert constants().compound_g_m2 == 20.0


def test_the_simulator_gives_the_verdicts_of_l16() -> None:
    refined = (plans.WASH, plans.TAPE, plans.TEST, plans.HEAVY, plans.WIPE, plans.MEDIUM, plans.WIPE)
    stopped = plans.worked(plans.MILD_CHALK, refined).outcome
    assert (stopped.verdict, stopped.trail_um) == ("redo", 0.25)
    assert (stopped.gloss60, stopped.gloss20) == pytest.approx((86, 51), abs=0.5)
    done = plans.worked(plans.MILD_CHALK, (*refined, plans.FINISH, plans.WIPE)).outcome
    assert (done.verdict, round(done.trail_um, 2)) == ("pass", 0.0)
    assert (done.gloss60, done.gloss20) == pytest.approx((97, 94), abs=0.5)


def test_repeating_a_grade_costs_film_and_changes_nothing() -> None:
    """L15: P1000 strays of 4.7 go in four passes of P1500; four more take as much film for the same finish."""
    sanded = plans.GEL | {"tail_um": 4.7, "rz_um": 2.75}
    once, twice = (
        plans.worked(sanded, (plans.WASH, plans.TAPE, *(plans.sand(1500, 4),) * times)).outcome for times in (1, 2)
    )
    assert twice.tail_um == once.tail_um == pytest.approx(2.87, abs=0.005)
    assert twice.removed_um == pytest.approx(2 * once.removed_um, abs=0.01)
    assert twice.gloss60 == once.gloss60


def test_before_and_after_are_one_panel() -> None:
    before, after = (LISTED[code] for code in ("trails_before_finish", "trails_after_finish"))
    assert before.lamps == after.lamps
    assert len(before.lamps) >= 2
    assert {**after.scene, "trail_um": 0.25} == dict(before.scene)


def test_a_reader_of_feet_reads_no_metres_of_section() -> None:
    assert "3.9 ft to 6.6 ft long" in plain("L15", US)
    assert "1.48 mil" in plain("L15", US)
    assert "7.9 in" in plain("L14", US)


def test_no_answer_is_always_the_longest() -> None:
    """What is right isn't told by its length: in a third of the questions at least something wrong is longer."""
    checks = [part for code in CODES for part in whole_shelf().lessons[code].parts if isinstance(part, Check)]
    longest = [
        max(check.options, key=lambda option: len("".join(map(str, option.text.pieces)))) is not check.right
        for check in checks
    ]
    assert sum(longest) >= len(checks) / 3


# Curriculum L14 points 1 to 13, L15 points 1 to 13, L16 points 1 to 10: what has to be said, as the lessons say it.
@pytest.mark.parametrize(
    ("code", "said"),
    [
        ("L14", "pressure × speed × time"),
        ("L14", "the diameter cancels"),
        ("L14", "harder to keep flat on a curve"),
        ("L14", "more force gives you cut, heat and edge wear together"),
        ("L14", "Never over 1800 on a rotary"),
        ("L14", "rotary, spreading 600 to 900"),
        ("L14", "rotary, working 1200 to 1600 30 N 0.05 m/s"),
        ("L14", "dual action, cutting 4800 orbits 50 N"),
        ("L14", "dual action, finishing 4800 orbits 30 N"),
        ("L14", "along, up and down, along, half a pad over each time"),
        ("L14", "Only rails and narrow mouldings get one direction"),
        ("L14", "Pad flat on the panel before you pull the trigger"),
        ("L14", "Stop it before it leaves the panel"),
        ("L14", "Stand square to a vertical side, feet apart. Work between knee and chin"),
        ("L14", "Clean the pad after each section"),
        ("L14", "trip at 4 to 6 mA. That figure is from memory"),
        ("L14", "trip between 15 and 30 mA"),
        ("L14", "They don’t stop the shock"),
        ("L14", "shock between live and neutral"),
        ("L14", "See it trip."),
        ("L14", "110 V from a site transformer"),
        ("L14", "Lifejacket on, a second person in sight"),
        ("L14", "nothing rinsed into the water"),
        ("L14", "Sleeves closed, hair tied, cord over your shoulder"),
        ("L15", "an arm’s reach and a step: 1.2 m to 2 m long"),
        ("L15", "Sand each grade across the one before it, at 90°"),
        ("L15", "A disc does 0.5 to 1 square metre"),
        ("L15", "never carried into the next section"),
        ("L15", "Not a permanent marker: its ink stays in open gel coat"),
        ("L15", "pencil is only skin deep"),
        ("L15", "Dry it fully"),
        ("L15", "New disc, clean plate, rinse, and back one step there"),
        ("L15", "costs film and changes nothing"),
        ("L15", "a flat block across it"),
        ("L15", "a disc on a soft interface"),
        ("L15", "a soft pad cut to fit it"),
        ("L15", "strokes along the edge, never over it"),
        ("L15", "wears up to 2.5 times as fast"),
        ("L15", "The film is unread"),
        ("L15", "flake under the clear"),
        ("L15", "no maker’s sheet"),
        ("L15", "fresh repair that takes a nail mark"),
        ("L15", "0.20 to 0.35 h a square metre"),
        ("L15", "wear P100 or N95"),
        ("L16", "A clear coat ends at 89 and 81"),
        ("L16", "0.10 model µm as the limit of what a lamp shows"),
        ("L16", "Move the lamp. Only then the next pad"),
        ("L16", "20 g of compound for a square metre"),
        ("L16", "shops order 20 to 35 g"),
        ("L16", "Give it less, and clean it"),
        ("L16", "The finishing set takes 0.62 model µm"),
        ("L16", "Go back one stage, not to the start"),
        ("L16", "Wash the oils off"),
        ("L16", "can miss trails that are plain in the sun"),
        ("L16", "Let the pad stop before you set the machine down"),
    ],
)
def test_every_point_of_the_curriculum_is_taught(code: str, said: str) -> None:
    assert said in plain(code)
