"""The columns of a plan: every parameter of the steps it may be made of."""

from assessments.scenarios.fields import Record
from assessments.scenarios.planned import plan_columns, plan_parameters
from courses.trade.surface import OPS, parameters
from tests.assessments.answers.listing import PLAN


def test_every_setting_of_every_step_has_a_column() -> None:
    columns = {one.name for one in plan_columns(tuple(OPS), ())}
    assert columns == {"op", "zone", *(one.name for op in OPS for one in parameters(op))}


def test_a_choice_offers_what_any_of_the_steps_takes() -> None:
    pads = dict(plan_parameters(("sand", "cut"))["pad"].options)
    assert {"disc", "block", "wool", "foam_cut"} <= set(pads)


def test_a_plan_fits_its_columns_numbers_words_and_all() -> None:
    steps = [
        {"op": "sand", "grade": "P1500", "passes": 4},
        {"op": "cut", "sets": "until_clear", "speeds_rpm": [900, 1500]},
    ]
    field = PLAN.as_field()
    assert Record.of((field,), {"steps": steps}).as_json() == {"steps": steps}
