"""What rules read of acts and of marked cells."""

from typing import Any

from hypothesis import given
from hypothesis import strategies as st

from assessments import shipped
from assessments.marking.bound import NEVER, bound, bound_kinds
from assessments.marking.case import case_of, schema_of
from assessments.rules import bind
from assessments.scenarios.draw import Drawn, draw, key_of, zones_of
from courses.pictures import CELLS

OPS = ["inspect", "record", "tell", "tape", "test_spot", "cut", "finish", "wipe"]
CRACKS = "INS-04@1"


def drawn(ref: str = CRACKS, seed: int = 3) -> Drawn:
    return draw(shipped.scenario(ref), seed)


def read(answers: dict[str, Any], ref: str = CRACKS) -> dict[str, Any]:
    """What rules read of these answers to the third draw of a scenario."""
    one = drawn(ref)
    return dict(bound(one.scenario, one.facts, answers))


def test_acts_are_numbered_and_what_was_left_unsaid_is_filled_in() -> None:
    steps = read({"steps": [{"op": "inspect"}, {"op": "cut", "zone": "rest"}, {"op": "tell"}, {"op": "finish"}]})[
        "steps"
    ]
    assert [(one["n"], one["op"], one["zone"], one["family"]) for one in steps] == [
        (1, "inspect", "all", "look"),
        (2, "cut", "rest", "abrade"),
        (3, "tell", "all", "stop"),
        (4, "finish", "all", "abrade"),
    ]
    assert [one["covers"] for one in steps] == [["crack", "rest"], ["rest"], ["crack", "rest"], ["crack", "rest"]]
    assert [one["next_abrade"] for one in steps] == [2, 4, 4, NEVER]
    assert [one["next_chem"] for one in steps] == [0, 0, 0, 0]


@given(st.lists(st.sampled_from(OPS), max_size=12))
def test_first_and_last_abrasive_act_bracket_all_of_them(ops: list[str]) -> None:
    found = read({"steps": [{"op": op} for op in ops]})
    abrading = [one["n"] for one in found["steps"] if one["family"] == "abrade"]
    assert found["first_abrade"] == (abrading[0] if abrading else NEVER)
    assert found["last_abrade"] == (abrading[-1] if abrading else 0)


def test_lamp_places_are_counted_once_each() -> None:
    looks = [{"op": "lamp", "place": place} for place in ("left", "right", "left")]
    assert read({"looks": looks}, "INS-01@1")["lamp_places"] == 2
    assert read({"looks": [{"op": "diffuse"}]}, "INS-01@1")["lamp_places"] == 0


def test_a_group_speaks_of_a_zone_from_half_its_cells_on() -> None:
    one = drawn()
    (zone,) = zones_of(one.scenario, one.facts)
    half = list(zone.required)[: (len(zone.required) + 1) // 2]
    found = read({"zones": [{"cells": half, "verdict": "polish"}]})
    assert found["zones"] == [{"n": "crack", "verdict": "polish"}]
    assert found["cells"] == []
    far = [cell for cell in CELLS if cell not in zone.allowed][:3]
    assert read({"zones": [{"cells": far, "verdict": "refer"}]}) == {"zones": [], "cells": far}


def test_what_was_not_answered_is_not_there() -> None:
    assert read({}) == {}
    assert read({"steps": [], "zones": []}) == {
        "steps": [],
        "first_abrade": NEVER,
        "last_abrade": 0,
        "first_acid_or_iron": NEVER,
        "last_bleach": 0,
        "lamp_places": 0,
        "zones": [],
        "cells": [],
    }


def test_every_case_fits_the_schema_its_rules_were_checked_against() -> None:
    for ref in shipped.scenarios():
        scenario = shipped.scenario(ref)
        schema = schema_of(scenario)
        for seed in range(3):
            facts = draw(scenario, seed).facts
            key = key_of(scenario, facts)
            answers = {task.id: key.as_json()[task.id] for task in scenario.tasks}
            bind(schema, case_of(scenario, facts, key, answers))
            assert set(bound_kinds(scenario)) <= set(schema.names["answer"].fields)


def test_the_model_rests_on_what_was_answered() -> None:
    one = drawn("INS-09@1")
    key = key_of(one.scenario, one.facts)
    patches = key.as_json()["patches"]
    assert case_of(one.scenario, one.facts, key, {"patches": patches})["model"] == {"named": 6}
    assert case_of(one.scenario, one.facts, key, {})["model"] == {}
