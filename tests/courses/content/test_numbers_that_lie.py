"""Lesson 5: every figure it teaches comes out of the trade's own arithmetic, every point of the curriculum is made."""

import re
from math import sqrt

import pytest

from courses.content.finder import FinderTable, find
from courses.content.parts import Calculator, Caution, Drawing, Finder, Mistakes, Worked
from courses.trade import gauging, gloss
from courses.trade.sums import SUMS, work_out
from tests.courses.content.reading import FINDERS, SOURCES, US, plain, told, whole_shelf, words

CODE = "L05"
BEFORE, AFTER = (92.0, 95.0, 90.0, 94.0, 96.0), (88.0, 91.0, 87.0, 90.0, 91.0)


@pytest.fixture(scope="module")
def finder() -> FinderTable:
    return FINDERS["what_the_gauge_reads"]


def test_the_lesson_has_all_its_parts() -> None:
    parts = whole_shelf().lessons[CODE].parts
    assert [part.sum for part in parts if isinstance(part, Calculator)] == ["gauge_statistics", "gloss"]
    assert [part.table for part in parts if isinstance(part, Finder)] == ["what_the_gauge_reads"]
    assert [part.code for part in parts if isinstance(part, Drawing)] == ["film_car", "film_gel_coat", "gloss_lobes"]
    assert [sum(isinstance(part, one) for part in parts) for one in (Worked, Mistakes, Caution)] == [1, 1, 1]
    lesson = whole_shelf().lessons[CODE]
    assert ([len(check.options) for check in lesson.checks], len(lesson.outcomes)) == ([3, 2, 3, 3, 3], 3)
    assert {check.right.id for check in lesson.checks} == {"a", "b", "c"}
    assert set(lesson.sources) <= set(SOURCES)


def test_the_worked_example_comes_out() -> None:
    # Curriculum L05: means 93.4 and 89.4, removed 4.0, doubt 3.1, the same places 0.9.
    figures = {
        gauging.mean_um(BEFORE),
        gauging.mean_um(AFTER),
        gauging.removed_um(BEFORE, AFTER),
        gauging.doubt_um(BEFORE, AFTER),
        gauging.same_places_doubt_um(BEFORE, AFTER),
        gauging.spread_um(BEFORE),
        gauging.spread_um(AFTER),
    }
    assert {(round(figure, 1), "um") for figure in figures} <= told(CODE)
    assert round(2.3 * sqrt((2.41**2 + 1.82**2) / 5), 1) == 3.1
    low, high = 4.0 - gauging.doubt_um(BEFORE, AFTER), 4.0 + gauging.doubt_um(BEFORE, AFTER)
    assert (round(low), round(high)) == (1, 7)
    paired = gauging.same_places_doubt_um(BEFORE, AFTER)
    assert (round(4.0 - paired), round(4.0 + paired)) == (3, 5)


def test_the_calculator_opens_with_the_worked_example() -> None:
    opened = next(part for part in whole_shelf().lessons[CODE].parts if isinstance(part, Calculator))
    assert work_out(opened.sum, dict(opened.given)).as_json()["inputs"] == {
        "zero_um": 0.0,
        "before_um": BEFORE,
        "after_um": AFTER,
    }
    assert all(name in {one.name for one in SUMS[opened.sum].inputs} for name, _ in opened.given)


def test_the_calculator_takes_another_figure_than_23_for_other_numbers() -> None:
    assert [round(gauging.students_t(free), 1) for free in (4, 8, 18)] == [2.8, 2.3, 2.1]


@pytest.mark.parametrize(
    ("step", "rq_um", "at60", "at20"),  # rms roughness a fifth of the model's Rz: 0.135 and 0.03 µm
    [("after a medium step", 0.027, 92, 72), ("after a fine step", 0.006, 97.0, 94), ("perfectly smooth", 0, 97.3, 95)],
)
def test_the_gloss_of_three_finishes_comes_out(step: str, rq_um: float, at60: float, at20: float) -> None:
    read = [gloss.gloss(1.55, rq_um, 3.0, angle) for angle in (60, 20)]
    assert read == pytest.approx([at60, at20], abs=0.55)
    assert f"{step} {at60} {at20}" in plain(CODE)


def test_a_perfect_film_reads_less_than_the_glass() -> None:
    assert [round(gloss.smooth_gloss(1.5, angle)) for angle in (60, 20)] == [89, 82]
    assert gloss.smooth_gloss(1.55, 60) - gloss.gloss(1.55, 0.006, 3.0, 60) == pytest.approx(0.3, abs=0.06)


def test_haze_rises_and_falls_with_roughness() -> None:
    haze = [gloss.haze(1.55, rq, 3.0) for rq in (0.01, 0.05, 0.2)]
    assert haze[0] < haze[1] > haze[2]


@pytest.mark.parametrize(("read60", "angle"), [(88.0, 20), (71.0, 20), (40.0, 60), (6.0, 85)])
def test_the_angle_is_chosen_as_the_lesson_says(read60: float, angle: int) -> None:
    assert gloss.geometry(read60) == angle


def test_one_coat_is_thinner_than_a_gauge_can_show() -> None:
    # Common practice: 50 mL cover 15.6 to 28.2 m² of a boat, 30 % stays in the cloth, 20 to 60 % of the rest is solid.
    dry_um = [50 / m2 * left * solid for m2, left, solid in ((28.2, 0.7, 0.20), (15.64, 0.7, 0.60))]
    assert [round(thickness, 1) for thickness in dry_um] == [0.2, 1.3]
    assert {(0.2, "um"), (1.3, "um")} <= told(CODE)


def test_what_has_gone_from_the_door_is_a_difference() -> None:
    assert (118 - 111, 118 - 111 - 3, 118 - 111 + 3) == (7, 4, 10)
    assert "About 7.0 µm have gone" in plain(CODE) or "About 7 µm have gone" in plain(CODE)


def test_a_reader_of_mils_reads_no_micrometres() -> None:
    text = plain(CODE, US)
    assert "3.68 mil" in text
    assert "0.12 mil" in text
    assert "µm" not in text.replace("in µm, with two decimals", "")


def test_the_words_are_those_of_the_house() -> None:
    text = plain(CODE)
    assert not re.search(r"!|'|\b(please|oops|well done|great|simply|very)\b", text, re.IGNORECASE)
    blocks = re.findall(r"<(?:p|li)>(.*?)</(?:p|li)>", words(CODE), re.DOTALL)
    sentences = [one for block in blocks for one in re.split(r"(?<=[.:?])\s", re.sub(r"<[^>]+>", "", block))]
    assert max(len(one.split()) for one in sentences) <= 40
    assert sum(len(one.split()) for one in sentences) / len(sentences) <= 12


# Curriculum L05, points 1 to 12: what has to be said.
@pytest.mark.parametrize(
    "said",
    [
        "They read everything above the metal: primer, colour and clear together",
        "A reading of 110 µm doesn’t mean 110 µm of clear",
        "a layer-reading ultrasonic gauge",
        "minus the total here. That is what has already gone",
        "Under about 60 µm in all is dangerously thin",
        "220 µm and more among 110 µm is a repair",
        "The back of gel coat is rough, so the echo changes from point to point",
        "Take 10 µm either way as the least doubt",
        "Gel coat is sprayed 380 µm to 890 µm thick, with 380 µm to 510 µm as the aim",
        "It is thinnest at bow and corners",
        "Clear coat is 35 µm to 60 µm",
        "printed figures run from 30 µm to 102 µm",
        "Set the zero on the bare plate",
        "Check on the foil",
        "drifts by 1 µm to 2 µm",
        "refractive index 1.567, which counts as 100",
        "Above 70 use 20°, below 10 use 85°",
        "So never write “must be 100”",
        "haze rises and then falls again",
        "Nobody proves a coating with a paint gauge",
        "Write the instrument, the zero, the place and the time",
        "Never press a probe on a wet or uncured film",
    ],
)
def test_every_point_of_the_curriculum_is_taught(said: str) -> None:
    assert said in plain(CODE)


def test_no_gauge_but_one_by_layers_gives_the_clear(finder: FinderTable) -> None:
    gauges, bases = (choice.ids for choice in finder.choices)
    for gauge in gauges:
        for base in bases:
            row = find(finder, {"gauge": gauge, "base": base})
            assert row is not None
            alone = "the clear is among them" in str(row.results[0].pieces)
            assert alone == (gauge == "layers" and base in ("steel", "aluminium"))


def test_a_gauge_for_metal_shows_nothing_on_a_laminate(finder: FinderTable) -> None:
    for gauge in ("magnetic", "eddy"):
        row = find(finder, {"gauge": gauge, "base": "gel_coat"})
        assert row is not None
        assert "Wrong instrument" in str(row.results[1].pieces)
