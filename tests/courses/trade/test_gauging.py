"""Gauge readings against worked figures, printed tables of Student's t and Python's own statistics."""

from statistics import mean, stdev

import pytest
from hypothesis import given
from hypothesis import strategies as st

from courses.trade import gauging
from courses.trade.errors import ImpossibleChoice, OutOfRange

BEFORE, AFTER = [92.0, 95.0, 90.0, 94.0, 96.0], [88.0, 91.0, 87.0, 90.0, 91.0]
SETS = st.lists(st.floats(0.0, 900.0), min_size=2, max_size=12)


def test_the_worked_example_of_lesson_5() -> None:
    # Curriculum L05: means 93.4 and 89.4, removed 4.0, doubt 3.1; at the same places 4.0 ± 0.9.
    assert [gauging.mean_um(BEFORE), gauging.mean_um(AFTER)] == pytest.approx([93.4, 89.4])
    assert gauging.removed_um(BEFORE, AFTER) == pytest.approx(4.0)
    assert round(gauging.doubt_um(BEFORE, AFTER), 1) == 3.1
    assert round(gauging.same_places_doubt_um(BEFORE, AFTER), 1) == 0.9


def test_five_and_five_readings_give_the_formula_of_the_lesson() -> None:
    variances = gauging.spread_um(BEFORE) ** 2 + gauging.spread_um(AFTER) ** 2
    assert gauging.doubt_um(BEFORE, AFTER) == pytest.approx(2.306 * (variances / 5) ** 0.5, rel=1e-4)


def test_the_zero_of_the_plate_comes_off_the_means_and_leaves_the_difference() -> None:
    assert gauging.mean_um(BEFORE, 2.0) == pytest.approx(91.4)
    assert gauging.mean_um(BEFORE, 2.0) - gauging.mean_um(AFTER, 2.0) == pytest.approx(
        gauging.removed_um(BEFORE, AFTER)
    )


@pytest.mark.parametrize(
    ("freedom", "t95", "t99"),  # printed in every table of the distribution
    [
        (1, 12.706, 63.657),
        (2, 4.303, 9.925),
        (3, 3.182, 5.841),
        (4, 2.776, 4.604),
        (5, 2.571, 4.032),
        (8, 2.306, 3.355),
        (9, 2.262, 3.250),
        (10, 2.228, 3.169),
        (18, 2.101, 2.878),
        (30, 2.042, 2.750),
        (60, 2.000, 2.660),
        (120, 1.980, 2.617),
    ],
)
def test_students_t_is_that_of_the_printed_table(freedom: int, t95: float, t99: float) -> None:
    assert [gauging.students_t(freedom), gauging.students_t(freedom, 0.99)] == pytest.approx([t95, t99], abs=6e-4)


def test_sets_of_unlike_size_share_one_spread() -> None:
    """A textbook case of two sets of unlike size: 5 and 3 readings, worked by hand with t(6) = 2.447."""
    first, second = [10.0, 12.0, 11.0, 13.0, 14.0], [8.0, 9.0, 10.0]
    pooled = (4 * 2.5 + 2 * 1.0) / 6  # variances 2.5 and 1.0
    assert gauging.doubt_um(first, second) == pytest.approx(2.447 * (pooled * (1 / 5 + 1 / 3)) ** 0.5, rel=1e-3)


@given(SETS, SETS)
def test_mean_and_spread_are_pythons_own(first: list[float], second: list[float]) -> None:
    assert gauging.removed_um(first, second) == pytest.approx(mean(first) - mean(second), abs=1e-9)
    assert gauging.spread_um(first) == pytest.approx(stdev(first), abs=1e-6)
    assert gauging.doubt_um(first, second) >= 0


def test_more_readings_leave_less_doubt() -> None:
    assert gauging.doubt_um(BEFORE * 2, AFTER * 2) < gauging.doubt_um(BEFORE, AFTER)


@pytest.mark.parametrize(
    ("call", "kind", "sentence"),
    [
        (lambda: gauging.mean_um([92.0]), ImpossibleChoice, "readings_um: Give 2 to 30 readings; this holds 1."),
        (lambda: gauging.mean_um([92.0] * 31), ImpossibleChoice, "readings_um: Give 2 to 30 readings; this holds 31."),
        (lambda: gauging.spread_um([92.0, 6000.0]), OutOfRange, "readings_um: 6000\xa0µm lies outside −50\xa0µm to"),
        (lambda: gauging.mean_um(BEFORE, 80.0), OutOfRange, "zero_um: 80\xa0µm lies outside"),
        (
            lambda: gauging.same_places_doubt_um(BEFORE, AFTER[:4]),
            ImpossibleChoice,
            "after_um: 5 readings before and 4 after can't be of the same places.",
        ),
        (lambda: gauging.students_t(0), OutOfRange, "freedom: Freedom 0 at 0.95 lies outside 1 to 200"),
        (lambda: gauging.students_t(5, 1.0), OutOfRange, "freedom: Freedom 5 at 1 lies outside 1 to 200"),
    ],
)
def test_what_is_no_set_of_readings_is_refused(call, kind: type[Exception], sentence: str) -> None:
    with pytest.raises(kind) as refusal:
        call()
    assert str(refusal.value).startswith(sentence)
