"""Notches: one for each thing asked, in the order filled, next, open, dashed."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from courses.figures import NotchError, Notches, in_few, notches

COUNTS = st.integers(0, 12)


def test_done_next_open_and_old_stand_in_this_order():
    assert notches(2, 6, old=1, next_is_here=True) == Notches(("on", "on", "now", "open", "open", "old"), 2, 6, 1, True)


def test_nothing_is_next_where_nothing_is_open():
    assert notches(3, 4, old=1, next_is_here=True).marks == ("on", "on", "on", "old")


@given(done=COUNTS, free=COUNTS, old=COUNTS, here=st.booleans())
def test_there_is_one_notch_for_each_thing_asked_and_at_most_one_is_next(done, free, old, here):
    row = notches(done, done + free + old, old=old, next_is_here=here)
    assert len(row.marks) == row.total
    assert row.marks.count("now") == (here and free > 0)


@pytest.mark.parametrize(("done", "total", "old"), [(5, 4, 0), (3, 4, 2), (-1, 4, 0)])
def test_counts_that_do_not_fit_are_refused(done, total, old):
    with pytest.raises(NotchError, match=f"{done} done and {old} too old do not fit into {total} notches"):
        notches(done, total, old=old)


@given(done=COUNTS, free=COUNTS, old=COUNTS)
def test_in_a_few_notches_nothing_that_is_there_is_lost_and_nothing_is_added(done, free, old):
    row = notches(done, done + free + old, old=old)
    few = in_few(row, 5)
    assert len(few.marks) == min(row.total, 5)
    assert (few.marks.count("on") > 0) == (done > 0)
    assert ("open" in few.marks) == (free > 0)


@pytest.mark.parametrize(
    ("counts", "marks"),
    [
        ((1, 18, 17), ("on", "old", "old", "old", "old")),
        ((17, 18, 0), ("on", "on", "on", "on", "open")),
        ((9, 18, 9), ("on", "on", "old", "old", "old")),
        ((18, 18, 0), ("on",) * 5),
        ((2, 4, 1), ("on", "on", "open", "old")),
    ],
)
def test_only_what_is_done_looks_done(counts, marks):
    done, total, old = counts
    assert in_few(notches(done, total, old=old), 5).marks == marks
