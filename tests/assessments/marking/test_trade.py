"""The trade's formulas as words of a rule."""

from inspect import signature

import pytest

from assessments.marking.trade import FUNCTIONS
from courses.trade.sums import SUMS, work_out
from courses.trade.sums.air import AIR_SUMS

BY_NAME = {function.name: function for function in FUNCTIONS}


@pytest.mark.parametrize(
    ("name", "values"),
    [
        ("dew_point", (20.0, 50.0)),
        ("dew_margin", (18.0, 65.0, 13.0)),
        ("surface_rh", (22.0, 60.0, 16.0)),
        ("water_content", (20.0, 50.0, 1013.25)),
        ("infrared_reading", (12.0, 22.0, 0.28, 0.95)),
    ],
)
def test_a_rule_gets_what_the_calculator_shows(name: str, values: tuple[float, ...]) -> None:
    inputs = SUMS[name].inputs[: len(values)]
    shown = work_out(name, {given.name: value for given, value in zip(inputs, values, strict=True)}).as_json()["output"]
    assert BY_NAME[name].call(*values) == pytest.approx(shown["value"], abs=0.006)
    assert BY_NAME[name].returns.unit == shown["unit"]
    assert [param.unit for param in BY_NAME[name].params] == [given.unit for given in inputs]


def test_out_of_range_is_unknown_and_no_error() -> None:
    assert BY_NAME["dew_point"].call(20.0, 140.0) is None
    assert BY_NAME["infrared_reading"].call(12.0, 300.0, 0.28, 0.95) is None


def test_every_sum_of_the_air_can_be_called() -> None:
    assert set(BY_NAME) == {declared.name for declared in AIR_SUMS}
    assert all(signature(function.call) for function in FUNCTIONS)
