"""What a scenario says of itself."""

import pytest

from assessments.scenarios.chance import Chance, Span
from assessments.scenarios.errors import SpecRefused
from assessments.scenarios.fields import Field, Option
from assessments.scenarios.spec import Kind, Scenario
from assessments.scenarios.tasks import Task

KIND = Kind("wait", 1, {"age_h": Span(0, 1, 0.5), "trend": ("rising", "steady"), "job_h": 2.3})
ZERO = Chance(lambda: 0.0)


def test_a_kind_draws_from_its_spans_and_choices() -> None:
    assert (KIND.between(ZERO, "age_h"), KIND.pick(ZERO, "trend"), KIND.number("job_h")) == (0.0, "rising", 2.3)
    assert (KIND.has("age_h"), KIND.has("probe")) == (True, False)


def test_a_kind_refuses_what_it_lacks_or_holds_otherwise() -> None:
    with pytest.raises(SpecRefused, match="kind 'wait' has no 'probe'"):
        KIND.number("probe")
    with pytest.raises(SpecRefused, match="'trend' should be one number"):
        KIND.number("trend")
    with pytest.raises(SpecRefused, match="'trend' should be a range"):
        KIND.span("trend")
    with pytest.raises(SpecRefused, match="'age_h' should be a list of choices"):
        KIND.pick(ZERO, "age_h")


def test_a_task_says_what_its_answer_must_fit() -> None:
    log = Option("log", "Log")
    many = Task("steps", "many", "Steps", "Which?", options=(log,))
    assert many.as_field() == Field("steps", "list", "Steps", items=Field("steps", "choice", "Steps", options=(log,)))
    margin = Task("margin", "quantity", "Margin", "How far?", unit="K", decimals=1)
    assert margin.as_field() == Field("margin", "quantity", "Margin", "K", 1)
    assert Task("why", "text", "Why", "Why?").as_field() == Field("why", "text", "Why")
    assert Task("do", "choice", "Do", "What?", options=(log,)).as_field() == Field("do", "choice", "Do", options=(log,))


def test_a_scenario_knows_its_reference_its_tasks_and_its_key(coa_01: Scenario) -> None:
    assert coa_01.ref == "COA-01@1"
    task = coa_01.task("margin")
    assert task is not None
    assert task.unit == "K"
    assert coa_01.task("marge") is None
    assert [field.name for field in coa_01.key_fields][:6] == [
        "dew_point",
        "margin",
        "decision",
        "next_steps",
        "why",
        "main_step",
    ]
