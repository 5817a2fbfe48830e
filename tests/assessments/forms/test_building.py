"""The list that acts and plans are built with, from their tasks."""

from assessments.forms.building import builder_of
from tests.assessments.answers.listing import ORDER, PLAN, SPOTS


def test_acts_carry_what_their_task_says() -> None:
    builder = builder_of(ORDER)
    assert builder.words("lamp") == "Lamp, left"
    assert builder.words("record zone=crack") == "Write it down, the crack"
    assert [(one["ops"], [field["name"] for field in one["main"]]) for one in builder.page([])["shapes"]] == [
        ("lamp", ["place"]),
        ("cut acid record", ["zone"]),
    ]


def test_a_plan_offers_its_steps_by_family_and_its_zones_on_each() -> None:
    builder = builder_of(PLAN)
    assert [one["name"] for one in builder.page([])["groups"]] == ["Wash, tape, wipe", "Chemistry", "Sand and polish"]
    assert builder.words("sand grade=P1500 passes=4 zone=bow") == "Sand, P1500, 4 passes, the bow"
    shapes = {op: one for one in builder.page([])["shapes"] for op in one["ops"].split()}
    assert {field["name"] for field in shapes["sand"]["fine"]} >= {"force_n", "speeds_rpm", "arm_m_s"}
    assert "compound" not in {field["name"] for field in shapes["sand"]["main"]}
    assert shapes["wash"]["main"][-1]["name"] == "zone"


def test_spots_are_made_of_their_acts() -> None:
    assert builder_of(SPOTS).words("spot_sand grade=P1000") == "Wet paper, P1000, one set"
