"""Steps of plans that several keys are made of."""

from assessments.scenarios.plan_steps import acts, in_zone, polished, sanded


def test_every_grade_is_dried_and_inspected() -> None:
    assert sanded(("P1500", 4)) == [
        {"op": "sand", "grade": "P1500", "passes": 4},
        {"op": "dry"},
        {"op": "inspect"},
    ]
    assert [step.get("grade") for step in sanded(("P1000", 4), ("P1500", 3))][::3] == ["P1000", "P1500"]


def test_every_polish_is_wiped() -> None:
    assert polished("cut", "finish") == acts("cut", "wipe", "finish", "wipe")


def test_a_zone_is_put_on_every_step_and_nothing_else_changes() -> None:
    plan = sanded(("P1000", 4))
    worked = in_zone("rest", plan)
    assert {step["zone"] for step in worked} == {"rest"}
    assert [{key: value for key, value in step.items() if key != "zone"} for step in worked] == plan
    assert "zone" not in plan[0]
