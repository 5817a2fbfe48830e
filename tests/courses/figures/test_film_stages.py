"""Stages of film: rounded, then compared; steps that change nothing are set aside."""

import pytest
from hypothesis import given

from courses.figures.drawing import FigureError
from courses.figures.film_stages import FilmStep, film_of
from tests.courses.figures.plans import films

START = FilmStep("Start", 500.0)


@pytest.mark.parametrize(
    ("film", "reserve", "budget", "limit", "by_budget"),
    [(500.0, 250.0, 60.0, 440.0, True), (291.0, 250.0, 60.0, 250.0, False), (45.0, 30.0, None, 30.0, False)],
)
def test_what_must_stay_is_the_reserve_or_the_film_without_its_budget(film, reserve, budget, limit, by_budget):
    stages = film_of(FilmStep("Start", film), [], reserve, budget)
    assert (stages.limit, stages.by_budget) == (limit, by_budget)


def test_what_a_step_took_is_the_difference_of_the_numbers_shown():
    film = film_of(START, [FilmStep("P600", 499.96), FilmStep("P800", 499.94)], 250.0, None)
    assert [(stage.film, stage.taken) for stage in film.stages] == [(500.0, 0.0), (499.9, 0.1)]


def test_a_step_that_takes_no_film_but_a_mark_is_drawn():
    start = FilmStep("Start", 500.0, [("mineral spots", 2.0)])
    film = film_of(start, [FilmStep("Acid", 500.0), FilmStep("Rinse", 500.0)], 250.0, None)
    assert [stage.name.head for stage in film.stages] == ["Start", "Acid"]
    assert [name.head for name in film.quiet] == ["Rinse"]


def test_the_deepest_mark_is_named():
    film = film_of(FilmStep("Start", 45.0, [("swirls", 1.7)], stray_um=2.9, trail_um=0.2), [], 30.0, None)
    assert film.stages[0].deepest == ("stray scratches", 2.9)


@given(given_=films())
def test_no_step_is_lost_and_the_film_adds_up(given_):
    film = film_of(FilmStep("Start", given_["film_um"]), given_["steps"], given_["reserve_um"], given_["budget_um"])
    assert len(film.stages) - 1 + len(film.quiet) == len(given_["steps"])
    taken = sum(stage.taken for stage in film.stages)
    assert taken == pytest.approx(film.stages[0].film - film.stages[-1].film)


@pytest.mark.parametrize(
    ("step", "said"),
    [
        (FilmStep("P600", float("nan")), "The film after “P600” is nan"),
        (FilmStep("P600", 1.0, [("swirls", -1.0)]), "The depth of swirls is -1.0"),
    ],
)
def test_a_number_that_cannot_be_is_refused_with_its_step(step, said):
    with pytest.raises(FigureError, match=said):
        film_of(START, [step], 250.0, None)


def test_more_than_forty_steps_are_refused():
    with pytest.raises(FigureError, match="at most 40 steps; these are 41"):
        film_of(START, [FilmStep("P600", 1.0)] * 41, 250.0, None)
