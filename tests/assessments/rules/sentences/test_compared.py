import pytest

from assessments.rules import Compared, bind, compared
from assessments.rules.compiler import compile_rule


@pytest.fixture
def values(checked, schema, case):
    def ask(rule, **answers):
        case["answer"].update(answers)
        result = checked(rule)
        return [
            (each.name, each.value, each.unit)
            for each in compared(result, compile_rule(result).run(bind(schema, case)).whole)
        ]

    return ask


@pytest.mark.parametrize(
    ("rule", "wanted"),
    [
        (
            "near(answer.dew_point, key.dew_point, 0.5)",
            [("answer.dew_point", 13.2, "degc"), ("key.dew_point", 13.6, "degc"), ("within", 0.5, "K")],
        ),
        (
            "near_rel(model.film_um, 50, 5)",
            [("model.film_um", 53.5, "um"), ("limit", 50, "um"), ("within", 5, "%")],
        ),
        ("near(facts.econ, 3, 1)", [("facts.econ", 3.0, None), ("limit", 3, None), ("within", 1, None)]),
        ("answer.margin >= 3", [("answer.margin", 2.8, "K"), ("limit", 3, "K")]),
        ("3 <= answer.margin", [("limit", 3, "K"), ("answer.margin", 2.8, "K")]),
        (
            "'fuel_heater' not in answer.next_steps",
            [("limit", "fuel_heater", None), ("answer.next_steps", ["probe_coldest", "tell_owner"], None)],
        ),
        ("any(s.um > 3 for s in answer.steps)", [("answer.steps[2].um", 4.0, "um"), ("limit", 3, "um")]),
        (
            "any(s.um > 9 for s in answer.steps) or answer.margin > 3",
            [("answer.margin", 2.8, "K"), ("limit", 3, "K")],
        ),
        (
            "count(s.wet for s in answer.steps) > 1",
            [("number of steps", 2, None), ("limit", 1, None)],
        ),
        (
            "facts.panel_degc - answer.dew_point >= answer.margin",
            [("panel − dew point", pytest.approx(2.8), "K"), ("answer.margin", 2.8, "K")],
        ),
        (
            "before(answer.steps, 'wash', 'sand')",
            [("answer.steps", 4, None), ("limit", "wash", None), ("limit", "sand", None)],
        ),
        ("answered(answer.margin)", []),
        ("answer.margin > 3 or answer.margin > 3", [("answer.margin", 2.8, "K"), ("limit", 3, "K")]),
    ],
)
def test_a_finding_shows_what_was_compared_with_what(values, rule, wanted):
    assert values(rule) == wanted


def test_no_more_than_a_dozen_values_are_shown(values):
    assert len(values(" and ".join(f"answer.margin < {n}" for n in range(3, 23)))) == 12


def test_a_value_is_the_door_s_shape():
    assert Compared("limit", 3, "K").as_json() == {"name": "limit", "value": 3, "unit": "K"}
