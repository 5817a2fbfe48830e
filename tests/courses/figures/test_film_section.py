"""The cross-section in words: what is left, the gap, what took most, the deepest mark."""

from hypothesis import given, settings

from courses.figures import FilmStep, film_section
from tests.courses.figures.plans import films

STEPS = [
    FilmStep("Wash", 291.0, [("chalk", 12.0)], number=1),
    FilmStep("P600, 5 passes", 267.9, stray_um=7.3, number=3),
    FilmStep("P1500, 4 passes", 249.2, stray_um=2.9, number=5),
    FilmStep("Finish, foam, 1 set", 242.9, stray_um=0.04, number=8),
]
CROSSED = film_section(291.0, 250.0, 60.0, STEPS, found=[("chalk", 12.0)], name="The bow")
KEPT = film_section(45.0, 30.0, 8.0, [FilmStep("Cut, wool", 41.7, number=3)], found=[("swirls", 1.7)])


def test_the_description_says_what_is_short_where_and_why():
    assert CROSSED.description.replace("\N{NO-BREAK SPACE}", " ") == (
        "From 291.0 the film goes to 242.9 model µm: 48.1 taken. 250.0 must stay, the reserve: 7.1 short. "
        "The line is crossed at 5 P1500. 3 P600 took most: 23.1. The deepest mark left: stray scratches, under 0.1."
    )


def test_the_description_of_a_plan_that_keeps_to_its_budget_names_both_limits():
    assert KEPT.description.replace("\N{NO-BREAK SPACE}", " ") == (
        "From 45.0 the film goes to 41.7 model µm: 3.3 taken. 37.0 must stay, or more than the budget of 8.0 is spent; "
        "the reserve is 30.0: 4.7 above it. 3 Cut took most: 3.3. No mark is left."
    )


def test_a_plan_that_takes_nothing_says_so():
    figure = film_section(500.0, 250.0, None, [FilmStep("Wash", 500.0)])
    assert figure.description.startswith("The film starts at 500.0 model µm and nothing is taken.")
    assert figure.shows == {"spend", "torn"}


def test_the_table_holds_every_drawn_step_with_its_numbers():
    glued = "8\N{NO-BREAK SPACE}Finish, foam, 1 set"
    assert CROSSED.table.heads == ("Step", "Taken", "Left", "Above what must stay", "Deepest mark")
    assert CROSSED.table.rows[0] == ("Start", "0.0", "291.0", "41.0", "12.0, chalk")
    assert CROSSED.table.rows[-1] == (glued, "6.3", "242.9", "7.1 short", "under 0.1, stray scratches")


def test_a_step_that_took_nothing_is_named_under_the_table():
    assert CROSSED.notes == ("These take nothing and change no mark here: 1\N{NO-BREAK SPACE}Wash.",)
    assert KEPT.notes == ()


def test_a_name_tells_two_sections_on_one_page_apart():
    assert (CROSSED.title, KEPT.title) == ("The bow: film left after each step", "Film left after each step")


def test_the_caption_explains_only_what_is_there():
    assert CROSSED.shows == {"taken", "spend", "short", "marks", "torn"}
    assert KEPT.shows == {"taken", "spend", "marks", "budget", "torn"}


@settings(max_examples=40)
@given(given_=films())
def test_picture_table_and_words_show_the_same_films(given_):
    figure = film_section(**given_)
    left = [row[2] for row in figure.table.rows]
    for drawing in (figure.wide, figure.tall):
        said = [words.text for words in drawing.words]
        assert all(said.count(number) >= left.count(number) for number in left)
    assert left[-1] in figure.description
