"""The tags of the figures: two drawings with title and description, a caption, a table."""

import pytest
from django.template import Context, Template

from courses.figures import FilmStep, Load, Rung, film_section, scratch_ladder, workload

STEPS = [FilmStep("P600, <5> passes", 267.9, stray_um=7.3, number=3), FilmStep("P1500", 242.9, number=5)]
FILM = film_section(291.0, 250.0, 60.0, STEPS, found=[("chalk", 12.0)], name="The bow")
KEPT = film_section(45.0, 30.0, 8.0, [])
LADDER = scratch_ladder([Rung("P2000", 1.3, 2.2, 1.4, 2, 4.5)], 7.3)
LOADS = workload([Load("Wash", 1.5), Load("P1000", 6.8, discs=1.2)])


def written(tag: str, figure: object) -> str:
    return Template("{% load figures %}{% " + tag + " figure %}").render(Context({"figure": figure}))


@pytest.mark.parametrize(("tag", "figure"), [("film_section", FILM), ("scratch_ladder", LADDER), ("workload", LOADS)])
def test_both_drawings_have_a_title_and_a_description(tag, figure):
    shown = written(tag, figure)
    assert shown.count(f"<title>{figure.title}</title><desc>{figure.description}</desc>") == 2
    assert 'class="fig for-wide" viewBox="0 0 960 ' in shown
    assert 'class="fig for-tall" viewBox="0 0 328 ' in shown
    assert shown.count('role="img"') == 2


@pytest.mark.parametrize(("tag", "figure"), [("film_section", FILM), ("scratch_ladder", LADDER), ("workload", LOADS)])
def test_a_drawing_wears_classes_only_and_leaves_no_name_to_clash(tag, figure):
    shown = written(tag, figure)
    assert not any(word in shown for word in ("style=", " id=", "fill=", "stroke="))


def test_what_a_step_is_called_is_escaped():
    assert "&lt;5&gt; passes" in written("film_section", FILM)
    assert "<5>" not in written("film_section", FILM)


def test_the_table_stands_under_the_drawings_with_a_name_of_its_own():
    shown = written("film_section", FILM)
    assert 'aria-label="The bow: film left after each step, table"' in shown
    assert '<th scope="row">5\N{NO-BREAK SPACE}P1500</th><td class="n">25.0</td><td class="n">242.9</td>' in shown


def test_sums_stand_at_the_foot_of_a_table():
    assert '<tfoot><tr><th scope="row">In all</th><td class="n">8.3</td>' in written("workload", LOADS)
    assert "<tfoot>" not in written("film_section", FILM)


def test_a_caption_explains_what_is_there_and_says_model_micrometres_once():
    crossed, kept = (written("film_section", figure).split("<figcaption>")[1] for figure in (FILM, KEPT))
    assert "Hatched: spent from what must stay." in crossed
    assert "Hatched" not in kept
    assert "The budget says what must stay; the reserve lies lower." in kept
    assert crossed.split("</figcaption>")[0].count("model µm") == 1


def test_a_stray_that_stands_is_explained():
    assert "Hatched: marks of an earlier step that still stand." in written("scratch_ladder", LADDER)
