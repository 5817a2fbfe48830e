"""The cross-section for a phone, as numbers."""

import pytest
from hypothesis import given, settings

from courses.figures.film_rows import in_rows
from courses.figures.film_stages import FilmStep, film_of
from courses.figures.lanes import TALL
from courses.figures.scale import Scale, torn_scale
from tests.courses.figures.plans import faults, films

STEPS = [FilmStep("P600, 5 passes", 267.9, stray_um=7.3, number=3), FilmStep("P1500", 242.9, number=5)]
DRAWN = in_rows(film_of(FilmStep("Start", 291.0), STEPS, 250.0, 60.0), Scale(220.0, 291.0, 20.0))


def widths(look: str) -> list[float]:
    return [mark.box.width for mark in DRAWN.marks if mark.look == look]


def test_lengths_are_in_proportion_to_the_film():
    unit = TALL.bar_width / 71.0
    assert widths("film") == pytest.approx([30 * unit, 30 * unit, 22.9 * unit])
    assert widths("spend") == pytest.approx([41 * unit, 17.9 * unit])
    assert widths("cut") == pytest.approx([23.1 * unit, 25 * unit])
    assert widths("short") == pytest.approx([7.1 * unit])


def test_every_film_is_crossed_by_the_line_of_what_must_stay():
    lines = [mark.box for mark in DRAWN.marks if mark.look == "reserve"]
    assert [line.x for line in lines] == pytest.approx([1.0 + 30 * TALL.bar_width / 71.0] * 3)


def test_a_phone_is_told_where_the_scale_starts_and_what_is_short():
    said = {words.text for words in DRAWN.words}
    assert {"from 220", "250.0 must stay", "7.1 short", "marks 7.3", "no marks", "242.9"} <= said


@settings(max_examples=60)
@given(given_=films())
def test_nothing_leaves_the_drawing_and_no_words_stand_on_each_other(given_):
    film = film_of(FilmStep("Start", given_["film_um"]), given_["steps"], given_["reserve_um"], given_["budget_um"])
    every = [film.limit, *(stage.film for stage in film.stages)]
    assert faults(in_rows(film, torn_scale(min(every), max(every)))) == []
