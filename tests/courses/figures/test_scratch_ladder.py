"""The ladder: what stands after each abrasive, and where a stray of an earlier one was not cleared."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from courses.figures import FigureError, Rung, scratch_ladder
from courses.figures.lanes import WIDE
from tests.courses.figures.plans import faults

SKIPS = (
    Rung("P600, 5 passes", 4.3, 7.3, 4.4, 5, 7.3, number=3),
    Rung("P2000, 2 passes", 1.3, 2.2, 1.4, 2, 4.5, number=4),
    Rung("Cut, wool, medium", 0.1, 0.2, 2.25, 2, 0.2, each="set", number=6),
)
DEPTH = st.floats(0.0, 20.0)
RUNGS = st.builds(
    Rung,
    st.sampled_from(["P600", "Sand P1500, 4 passes, hard disc, the bow", "Cut with compound, wool, until clear"]),
    DEPTH,
    DEPTH,
    DEPTH,
    st.integers(1, 20),
    DEPTH,
    st.sampled_from(["pass", "set"]),
    st.integers(0, 40),
)


def looks(figure, look):
    return [mark.box for mark in figure.wide.marks if mark.look == look]


def test_a_stray_that_still_stands_is_hatched_to_its_depth():
    figure = scratch_ladder(SKIPS, 15.0)
    (short,) = looks(figure, "short")
    unit = WIDE.bar_width / 15.0
    assert (short.x - WIDE.bar_x, short.width) == pytest.approx((2.2 * unit, 2.3 * unit))
    assert figure.shows == {"short"}
    assert "4.5 still stands" in {words.text for words in figure.wide.words}


def test_each_pass_that_still_found_marks_has_its_box():
    widths = [box.width * 15.0 / WIDE.bar_width for box in looks(scratch_ladder(SKIPS, 15.0), "cut")]
    assert widths == pytest.approx([4.4, 3.3, 1.4, 1.4, 2.25, 2.05])


def test_the_description_says_which_step_leaves_marks_of_another():
    said = scratch_ladder(SKIPS, 15.0).description.replace("\N{NO-BREAK SPACE}", " ")
    assert said == "4 P2000 leaves marks of an earlier step: they stand 4.5 model µm deep, its own strays 2.2."


def test_a_ladder_that_clears_everything_says_what_is_left():
    figure = scratch_ladder(SKIPS[:1], 15.0)
    assert figure.description == "Each step clears what it meets. At the end the deepest mark is 7.3 model µm."
    assert figure.shows == frozenset()


def test_a_stray_two_tenths_over_its_own_is_cleared_and_more_is_not():
    own, over = (Rung("P2000", 1.3, 2.2, 1.4, 2, stands) for stands in (2.4, 2.41))
    assert scratch_ladder([own], 5.0).shows == frozenset()
    assert scratch_ladder([over], 5.0).shows == {"short"}


def test_the_table_says_what_each_meets_takes_and_leaves():
    row = scratch_ladder(SKIPS, 15.0).table.rows[2]
    assert [cell.replace("\N{NO-BREAK SPACE}", " ") for cell in row] == [
        "6 Cut, wool, medium",
        "4.5",
        "2 sets of 2.2",
        "0.1",
        "0.2",
        "0.2",
    ]


@given(rungs=st.lists(RUNGS, min_size=1, max_size=12), start=DEPTH)
def test_nothing_leaves_the_drawings_and_no_words_stand_on_each_other(rungs, start):
    figure = scratch_ladder(rungs, start)
    assert faults(figure.wide) == faults(figure.tall) == []


@pytest.mark.parametrize("rungs", [[], [SKIPS[0]] * 41])
def test_no_step_or_too_many_are_refused(rungs):
    with pytest.raises(FigureError, match="1 to 40 abrasive steps"):
        scratch_ladder(rungs, 1.0)


def test_a_depth_that_cannot_be_is_refused_with_its_step():
    with pytest.raises(FigureError, match="A depth of “P600” is nan"):
        scratch_ladder([Rung("P600", float("nan"), 1.0, 1.0, 1, 1.0)], 1.0)
