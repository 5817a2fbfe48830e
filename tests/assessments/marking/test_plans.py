"""What rules read of a plan: its steps with every setting, and what the panel came to."""

from typing import Any

import pytest

from assessments import shipped
from assessments.marking.case import case_of, drawn_schema_of, schema_of
from assessments.marking.plans import NONE, bound_plan, model_of, plan_kind
from assessments.rules import bind
from assessments.scenarios.draw import Drawn, draw, key_of

LADDER = "PLN-02@1"


@pytest.fixture(scope="module")
def drawn() -> Drawn:
    return draw(shipped.scenario(LADDER), 3)


def steps_of(drawn: Drawn, *given: dict[str, Any]) -> list[dict[str, Any]]:
    task = drawn.scenario.the("plan")
    assert task is not None
    return [dict(one) for one in bound_plan(drawn.scenario, task, drawn.facts, given)]


def model(drawn: Drawn, *given: dict[str, Any]) -> dict[str, Any]:
    task = drawn.scenario.the("plan")
    assert task is not None
    return dict(model_of(drawn.scenario, task, drawn.facts, given))


def test_what_was_left_unsaid_is_as_the_shop_does_it(drawn: Drawn) -> None:
    wash, sand, cut = steps_of(
        drawn, {"op": "wash"}, {"op": "sand", "grade": "P1000"}, {"op": "cut", "sets": "until_clear"}
    )
    assert (sand["n"], sand["family"], sand["zone"], sand["passes"], sand["pad"]) == (2, "abrade", "all", 4, "disc")
    assert (cut["pad"], cut["compound"], cut["machine"], cut["top_rpm"]) == ("wool", "heavy", "rotary", 1500)
    assert (cut["until_clear"], cut["sets"], sand["until_clear"], sand["sets"]) == (True, 0, False, 1)
    assert (wash["pad"], wash["grade"], wash["top_rpm"], wash["next_abrade"]) == (NONE, NONE, 0, 2)


def test_a_disc_that_did_its_area_reads_as_used(drawn: Drawn) -> None:
    assert [one["disc"] for one in steps_of(drawn, {"op": "sand", "disc": 0.8}, {"op": "sand"})] == ["used", "fresh"]


def hot() -> Drawn:
    """A dark side in the sun, at more than the label allows."""
    found = (draw(shipped.scenario("INS-06@2"), seed) for seed in range(1, 60))
    return next(one for one in found if one.facts.number("panel_degc") > 30)


def test_a_panel_is_as_warm_as_in_the_model_when_a_step_begins() -> None:
    side = hot()
    degc = side.facts.number("panel_degc")
    steps = (
        {"op": "tape"},
        {"op": "prerinse"},
        {"op": "acid"},
        {"op": "wait", "hours": 2, "warm_degc": 30},
        {"op": "wipe"},
    )
    assert [one["panel_degc"] for one in steps_of(side, *steps)] == [degc, degc, 20.0, 20.0, 30.0]


def test_steps_where_the_panel_is_not_are_bound_and_change_nothing() -> None:
    side = hot()
    elsewhere = steps_of(side, {"op": "wash", "zone": "elsewhere"}, {"op": "acid"})
    assert [one["zone"] for one in elsewhere] == ["elsewhere", "all"]
    assert elsewhere[1]["panel_degc"] == side.facts.number("panel_degc")


def test_every_field_that_is_bound_has_its_kind(drawn: Drawn) -> None:
    task = drawn.scenario.the("plan")
    assert task is not None
    kind: Any = plan_kind(task)
    assert set(steps_of(drawn, {"op": "sand"})[0]) == set(kind["fields"])


def test_no_plan_no_word_on_what_it_came_to(drawn: Drawn) -> None:
    key = key_of(drawn.scenario, drawn.facts)
    case: Any = case_of(drawn.scenario, drawn.facts, key, {})
    assert case["model"] == {}
    empty: Any = case_of(drawn.scenario, drawn.facts, key, {"steps": []})
    assert empty["model"]["verdict"] == "redo"
    assert empty["model"]["removed_um"] == 0


def test_a_plan_comes_to_film_marks_and_a_verdict(drawn: Drawn) -> None:
    polish = ({"op": "wash"}, {"op": "cut"}, {"op": "finish"}, {"op": "wipe"})
    came = model(drawn, *polish)
    assert came["verdict"] == "redo"
    assert came["film_um"] + came["removed_um"] == pytest.approx(drawn.facts.number("film_um"), abs=0.06)
    assert came["oxidised"] > 0.05
    assert [row["name"] for row in came["zones"]] == ["main"]
    assert {"kind": "oxidation", "left": came["oxidised"]}.items() <= {
        name: value for row in came["residual"] for name, value in row.items() if row["kind"] == "oxidation"
    }.items()


def test_rules_read_the_case_and_no_plan_of_the_key(drawn: Drawn) -> None:
    key = key_of(drawn.scenario, drawn.facts)
    case = case_of(drawn.scenario, drawn.facts, key, {"steps": key.as_json()["steps"]})
    bound = bind(schema_of(drawn.scenario), case)
    assert bound["model"]["verdict"] == "pass"
    assert "steps" not in bound["key"]
    assert bound["key"]["needed_cut"] == key.number("needed_cut")
    assert "steps" not in drawn_schema_of(drawn.scenario).names["key"].fields
