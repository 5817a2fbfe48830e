"""Minutes as bars, materials as a table; sums are those of the numbers shown."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from courses.figures import FigureError, Load, workload
from tests.courses.figures.plans import faults

LOADS = [
    Load("Wash", 1.5, number=1),
    Load("Sand P1000, 3 passes", 6.84, discs=1.2, number=2),
    Load("Cut with compound, wool", 75.26, pads=0.3, grams=20.0, number=3),
]
COST = st.floats(0.0, 900.0)
SOME = st.builds(
    Load, st.sampled_from(["Wash", "Cut with compound, wool, heavy, three passes"]), COST, COST, COST, COST
)


def test_bars_are_in_proportion_to_the_minutes():
    widths = [mark.box.width for mark in workload(LOADS).wide.marks]
    assert [width / widths[2] for width in widths] == pytest.approx([1.5 / 75.3, 6.8 / 75.3, 1.0])


def test_the_sums_are_those_of_the_numbers_shown():
    table = workload(LOADS).table
    assert table.heads == ("Step", "Minutes", "Discs", "Pads", "Grams")
    assert table.total == ("In all", "83.6", "1.2", "0.3", "20.0")


def test_more_than_an_hour_is_said_in_hours_too():
    said = workload(LOADS, per="for 12 square metres").description.replace("\N{NO-BREAK SPACE}", " ")
    assert said == (
        "83.6 minutes in all for 12 square metres, that is 1.4 hours. 3 Cut with compound takes longest: 75.3 minutes."
    )


def test_two_plans_on_one_page_have_titles_of_their_own():
    assert workload(LOADS).title == "Minutes of each step, for each square metre"
    assert workload(LOADS, name="Plan B").title == "Plan B: minutes of each step, for each square metre"


@given(loads=st.lists(SOME, min_size=1, max_size=40))
def test_nothing_leaves_the_drawings_and_no_words_stand_on_each_other(loads):
    figure = workload(loads)
    assert faults(figure.wide) == faults(figure.tall) == []


@pytest.mark.parametrize("loads", [[], [LOADS[0]] * 41])
def test_no_step_or_too_many_are_refused(loads):
    with pytest.raises(FigureError, match="1 to 40 steps"):
        workload(loads)


def test_a_cost_that_cannot_be_is_refused_with_its_step():
    with pytest.raises(FigureError, match="A cost of “Wash” is -1.0"):
        workload([Load("Wash", -1.0)])
