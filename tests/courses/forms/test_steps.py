"""Lists of steps as a page builds them, button by button."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from courses.forms.steps import Act, Builder, Setting, picked_from

GRADE = Setting("grade", "Grade", (("P1500", "P1500"), ("P1000", "P1000")), "P1500")
FORCE = Setting("force_n", "Force", says="{} N", typed="number", fine=True)
SPEEDS = Setting("speeds_rpm", "Speeds", says="{} rpm", typed="numbers", fine=True)
SAND = Act("sand", "Sand", (GRADE, FORCE), "Abrade")
CUT = Act("cut", "Cut", (SPEEDS,), "Abrade")
WASH = Act("wash", "Wash", (), "Clean")
LIST = Builder((WASH, SAND, CUT), 4)
STEPS = ["wash", "sand grade=P1000", "cut"]


def test_a_step_is_said_with_what_it_carries() -> None:
    assert LIST.words("sand grade=P1000 force_n=40") == "Sand, P1000, 40 N"
    assert LIST.words("cut speeds_rpm=600,900") == "Cut, 600,900 rpm"
    assert LIST.words("dance") == "dance"


def test_buttons_add_move_double_change_and_take_out() -> None:
    assert LIST.composed(STEPS, "add", {"op": "wash"}) == [*STEPS, "wash"]
    assert LIST.composed(STEPS, "add", {"op": "sand", "grade": "P1500", "force_n": ""})[-1] == "sand grade=P1500"
    assert LIST.composed(STEPS, "up:3", {}) == ["wash", "cut", "sand grade=P1000"]
    assert LIST.composed(STEPS, "down:1", {}) == ["sand grade=P1000", "wash", "cut"]
    assert LIST.composed(STEPS, "twice:2", {}) == ["wash", "sand grade=P1000", "sand grade=P1000", "cut"]
    assert LIST.composed(STEPS, "out:2", {}) == ["wash", "cut"]
    assert LIST.composed(STEPS, "put:2", {"op": "cut", "speeds_rpm": "600 / 900"}) == [
        "wash",
        "cut speeds_rpm=600,900",
        "cut",
    ]


@pytest.mark.parametrize("do", ["", "add", "up:1", "down:3", "up:9", "out:x", "put:2", "twice:0", "leave", "nonsense"])
def test_a_button_that_leads_nowhere_changes_nothing(do: str) -> None:
    assert LIST.composed(STEPS, do, {}) == STEPS


def test_a_full_list_takes_no_double() -> None:
    full = ["wash"] * 4
    assert LIST.composed(full, "twice:1", {}) == full
    assert LIST.page(full)["full"]


def test_an_act_with_settings_opens_them_first_and_a_step_its_own() -> None:
    assert LIST.opens("add", {"op": "sand"}) == "sand"
    assert LIST.opens("add", {"op": "sand", "grade": "P1500"}) == ""
    assert LIST.opens("add", {"op": "wash"}) == ""
    assert LIST.opens("change:2", {}) == "2"
    assert LIST.composed(STEPS, "add", {"op": "sand"}) == STEPS


def test_the_page_opens_the_settings_that_are_asked_for() -> None:
    shapes = {one["ops"]: one for one in LIST.page(STEPS, "sand")["shapes"]}
    assert (shapes["sand"]["on"], shapes["cut"]["on"]) == (True, False)
    assert [one["chosen"] for one in shapes["sand"]["main"][0]["options"]] == [True, False]
    changing = LIST.page(STEPS, "2")
    assert (changing["changing"], changing["picked"]) == (2, "sand")
    grade = changing["shapes"][0]["main"][0]
    assert [one["chosen"] for one in grade["options"]] == [False, True]
    assert LIST.page(STEPS, "9")["changing"] == 0


def test_acts_stand_in_their_groups_and_what_isnt_known_is_left_out() -> None:
    page = LIST.page(["dance", *STEPS])
    assert [(one["name"], [act["id"] for act in one["acts"]]) for one in page["groups"]] == [
        ("Clean", ["wash"]),
        ("Abrade", ["sand", "cut"]),
    ]
    assert [one["token"] for one in page["steps"]] == STEPS


def test_what_is_picked_has_its_head_taken_off() -> None:
    assert picked_from({"pick-op": "sand", "value": "wash", "pick-grade": "P1500"}) == {
        "op": "sand",
        "grade": "P1500",
    }


@given(
    st.lists(st.sampled_from(STEPS), max_size=4),
    st.sampled_from(["up", "down", "twice", "put", "add"]),
    st.integers(-1, 5),
)
def test_no_button_loses_a_step(steps: list[str], verb: str, place: int) -> None:
    after = LIST.composed(steps, f"{verb}:{place}", {})
    assert sorted(steps) == sorted(after)[: len(steps)] or set(steps) <= set(after)
    assert len(after) in (len(steps), len(steps) + 1)
