"""The samples of the figures show every look a figure has, so that each is looked at in every lighting."""

from typing import get_args

from courses.figures.drawing import Ink, Look
from courses.views.samples_of_figures import samples_of_figures


def test_every_look_and_every_ink_stands_on_the_sheet():
    sheet = samples_of_figures()
    figures = [*sheet["film_sections"], sheet["ladder"], sheet["workload"]]
    drawings = [drawing for figure in figures for drawing in (figure.wide, figure.tall)]
    assert {mark.look for drawing in drawings for mark in drawing.marks} == set(get_args(Look))
    assert {words.ink for drawing in drawings for words in drawing.words} == set(get_args(Ink))


def test_the_longest_plan_and_every_remark_of_a_caption_are_shown():
    sheet = samples_of_figures()
    assert len(sheet["film_sections"][2].table.rows) == 38
    shown = frozenset().union(*(figure.shows for figure in sheet["film_sections"]))
    assert shown == {"taken", "spend", "short", "marks", "budget", "torn"}


def test_figures_of_one_page_have_titles_of_their_own():
    sheet = samples_of_figures()
    titles = [figure.title for figure in (*sheet["film_sections"], sheet["ladder"], sheet["workload"])]
    assert len(set(titles)) == len(titles)
