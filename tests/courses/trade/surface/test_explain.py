"""The schema of what the door takes: a small reader of our own holds real files against it."""

import json
import re
from collections.abc import Mapping
from typing import Any

import pytest
from hypothesis import given, settings

from courses.trade.surface import OPS, read_plan
from courses.trade.surface.explain import schema
from courses.trade.surface.panel import SURFACE_KEYS
from tests.courses.pictures.trade import catalogue
from tests.courses.trade.model import constants
from tests.courses.trade.surface.drawn import plans, surfaces
from tests.courses.trade.surface.plans import CLEAR, FOURTEEN, GEL, panel

SCHEMA: dict[str, Any] = json.loads(json.dumps(schema(catalogue(), constants())))
SURFACE, PLAN = SCHEMA["properties"]["surface"], SCHEMA["properties"]["plan"]
TYPES = {"object": dict, "array": list, "string": str, "boolean": bool, "integer": int, "number": int | float}


def fits(value: Any, wanted: Mapping[str, Any]) -> bool:
    """Say whether a value fits a schema, in the words that ours uses."""
    if "anyOf" in wanted and not any(fits(value, one) for one in wanted["anyOf"]):
        return False
    if "oneOf" in wanted and sum(fits(value, one) for one in wanted["oneOf"]) != 1:
        return False
    if "const" in wanted and value != wanted["const"]:
        return False
    if "enum" in wanted and value not in wanted["enum"]:
        return False
    if "type" in wanted and (
        not isinstance(value, TYPES[wanted["type"]]) or (wanted["type"] != "boolean" and isinstance(value, bool))
    ):
        return False
    return _inside(value, wanted)


def _inside(value: Any, wanted: Mapping[str, Any]) -> bool:
    if isinstance(value, dict):
        known = wanted.get("properties", {})
        closed = wanted.get("additionalProperties", True) or set(value) <= set(known)
        whole = set(wanted.get("required", ())) <= set(value)
        return closed and whole and all(fits(value[key], known[key]) for key in value if key in known)
    if isinstance(value, list):
        long = wanted.get("minItems", 0) <= len(value) <= wanted.get("maxItems", 1000)
        return long and all(fits(one, wanted.get("items", {})) for one in value)
    if isinstance(value, str):
        return bool(re.search(wanted.get("pattern", ""), value)) and len(value) <= wanted.get("maxLength", 1000)
    return bool(wanted.get("minimum", value) <= value <= wanted.get("maximum", value))


@pytest.mark.parametrize("name", FOURTEEN)
def test_the_plans_of_the_sketch_fit(name: str) -> None:
    surface, steps, _ = FOURTEEN[name]
    assert fits({"surface": surface, "plan": list(steps)}, SCHEMA)


@given(surface=surfaces, steps=plans)
@settings(max_examples=40)
def test_what_is_read_fits_and_so_does_what_is_written_out(
    surface: dict[str, Any], steps: list[dict[str, Any]]
) -> None:
    assert fits(surface, SURFACE)
    assert fits(json.loads(json.dumps(panel(surface).as_json())), SURFACE)
    assert fits(steps, PLAN)
    assert fits([step.as_json() for step in read_plan(steps)], PLAN)


@pytest.mark.parametrize(
    "wrong",
    [
        {"surface": GEL},
        {"surface": GEL | {"film_um": 0}, "plan": []},
        {"surface": GEL | {"defects": [{"kind": "swirl", "depth_um": 12}]}, "plan": []},
        {"surface": CLEAR | {"colour": "blu"}, "plan": []},
        {"surface": GEL, "plan": [{"op": "sand", "grade": "P1499"}]},
        {"surface": GEL, "plan": [{"op": "wash", "grade": "P1500"}]},
        {"surface": GEL, "plan": [{"op": "wash"}] * 41},
        {"surface": GEL, "plan": [], "optics": True},
    ],
)
def test_what_is_refused_does_not_fit(wrong: dict[str, Any]) -> None:
    assert not fits(wrong, SCHEMA)


def test_every_key_and_every_step_stands_there_with_its_default() -> None:
    assert set(SURFACE["properties"]) == set(SURFACE_KEYS)
    assert [one["properties"]["op"]["const"] for one in PLAN["items"]["oneOf"]] == list(OPS)
    cut = next(one for one in PLAN["items"]["oneOf"] if one["properties"]["op"]["const"] == "cut")
    assert cut["properties"]["speeds_rpm"]["default"] == [600, 900, 1500]
    assert cut["defaults"]["da"]["passes"] == 6
    assert SURFACE["defaults"]["clear_coat"]["reserve_um"] == 30.0
    assert SURFACE["properties"]["oxidation_cv"]["maximum"] == 1.0
    shared = {name: one.get("default") for name, one in SURFACE["properties"].items()}
    assert (shared["hardness"], shared["oxidation_cv"], shared["tail_um"], shared["soiled"]) == (1.0, 0.25, 0.1, True)
    swirl = next(one for one in SURFACE["properties"]["defects"]["items"]["anyOf"] if one["title"] == "swirl marks")
    assert (swirl["properties"]["depth_um"]["default"], swirl["properties"]["spread"]["default"]) == (0.8, 1.3)
