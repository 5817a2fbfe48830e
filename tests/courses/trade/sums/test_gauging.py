"""The sum of gauge readings, as lesson 5 works it."""

from courses.trade.sums import work_out
from courses.trade.units import Preferences

LESSON = {"before_um": [92, 95, 90, 94, 96], "after_um": [88, 91, 87, 90, 91]}


def test_the_worked_example_comes_out_whole() -> None:
    result = work_out("gauge_statistics", LESSON)
    assert {one.name: one.value for one in (result.output, *result.also)} == {
        "removed_um": 4.0,
        "mean_before_um": 93.4,
        "mean_after_um": 89.4,
        "spread_before_um": 2.41,
        "spread_after_um": 1.82,
        "doubt_um": 3.1,
    }
    assert [str(note) for note in (result.uncertainty, *result.notes)] == [
        "From these readings alone, 95 times in a hundred, what was removed is known to ±3.1\xa0µm.",
        "If both sets were read at the same places, in the same order, it is ±0.9\xa0µm.",
        "A hand-held gauge drifts by 1\xa0µm to 2\xa0µm besides: set the zero again before each set.",
    ]


def test_the_zero_comes_off_the_means() -> None:
    result = work_out("gauge_statistics", {**LESSON, "zero_um": 2})
    assert (result.value, result.also[0].value, result.also[1].value) == (4.0, 91.4, 87.4)


def test_a_doubt_as_large_as_the_figure_is_said() -> None:
    shallow = {"before_um": [92, 95, 90, 94, 96], "after_um": [90, 93, 88, 92]}
    said = [str(note) for note in work_out("gauge_statistics", shallow).notes]
    assert said[0] == "The doubt is as large as the figure: say unknown, and read the same places again."
    assert len(said) == 2  # four readings against five are of no same places


def test_readings_are_shown_as_they_were_given() -> None:
    said = work_out("gauge_statistics", LESSON).shown(Preferences.metric())
    assert said.inputs[1].text == "92\xa0µm; 95\xa0µm; 90\xa0µm; 94\xa0µm; 96\xa0µm"
