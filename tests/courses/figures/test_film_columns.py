"""The wide cross-section, as numbers."""

import pytest
from hypothesis import given, settings

from courses.figures.drawing import Drawing, Mark
from courses.figures.film_columns import PLOT, in_columns
from courses.figures.film_stages import FilmStep, film_of
from courses.figures.scale import Scale, torn_scale
from tests.courses.figures.plans import faults, films

STEPS = [FilmStep("P600, 5 passes", 267.9, stray_um=7.3, number=3), FilmStep("P1500", 242.9, number=5)]
SCALE = Scale(220.0, 291.0, 20.0)


def drawn(steps: list[FilmStep] = STEPS) -> Drawing:
    return in_columns(film_of(FilmStep("Start", 291.0, [("chalk", 12.0)]), steps, 250.0, 60.0), SCALE)


def of(drawing: Drawing, look: str) -> list[Mark]:
    return [mark for mark in drawing.marks if mark.look == look]


def test_heights_are_in_proportion_to_the_film():
    unit = PLOT / 71.0
    assert [mark.box.height for mark in of(drawn(), "film")] == pytest.approx([30 * unit, 30 * unit, 22.9 * unit])
    assert [mark.box.height for mark in of(drawn(), "spend")] == pytest.approx([41 * unit, 17.9 * unit])
    assert [mark.box.height for mark in of(drawn(), "short")] == pytest.approx([7.1 * unit])


def test_a_dashed_box_reaches_from_the_top_before_to_the_top_now():
    first, second = of(drawn(), "cut")
    spend = of(drawn(), "spend")
    assert (first.box.y, first.box.bottom) == pytest.approx((spend[0].box.y, spend[1].box.y))
    assert second.box.bottom == pytest.approx(of(drawn(), "film")[2].box.y)


def test_the_line_of_what_must_stay_is_the_border_of_the_two_tones():
    (reserve,) = of(drawn(), "reserve")
    assert {round(mark.box.bottom, 6) for mark in of(drawn(), "spend")} == {round(reserve.box.y, 6)}


def test_notches_are_drawn_to_the_same_scale():
    deepest = max(of(drawn(), "notch"), key=lambda mark: mark.box.height)
    assert deepest.box.height == pytest.approx(12.0 * PLOT / 71.0, abs=0.8)


def test_every_number_shown_is_said_in_words():
    said = {words.text for words in drawn().words}
    assert {"291.0", "267.9", "242.9", "\N{MINUS SIGN}23.1", "\N{MINUS SIGN}25.0", "7.1 short", "250.0"} <= said
    assert "film, model µm; what lies under 220 is not drawn" in said


def test_forty_steps_stand_in_rows_one_under_the_other():
    steps = [FilmStep("Cut with compound, wool", 290.0 - number, number=number) for number in range(1, 41)]
    drawing = drawn(steps)
    assert len(of(drawing, "film")) == 41
    assert len({mark.box.x for mark in of(drawing, "film")}) == 6
    assert faults(drawing) == []


@settings(max_examples=60)
@given(given_=films())
def test_nothing_leaves_the_drawing_and_no_words_stand_on_each_other(given_):
    film = film_of(FilmStep("Start", given_["film_um"]), given_["steps"], given_["reserve_um"], given_["budget_um"])
    every = [film.limit, *(stage.film for stage in film.stages)]
    assert faults(in_columns(film, torn_scale(min(every), max(every)))) == []
