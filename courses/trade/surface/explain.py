"""What a surface and a plan may hold, as a JSON schema with every default."""

from __future__ import annotations

from typing import Any, Final

from courses.trade.constants import Constants
from courses.trade.surface.ops import OPS
from courses.trade.surface.panel import DEGC, HARDNESS, MOST_ZONES
from courses.trade.surface.parameters import MOST_PASSES, Parameter, parameters
from courses.trade.surface.steps import ALL, MOST_STEPS, read_plan
from courses.trade.surface.zone import MOST_DEFECTS, RANGES, zone_defaults
from courses.trade.surfaces import Catalogue

__all__ = ["schema"]

_DIALECT: Final = "https://json-schema.org/draft/2020-12/schema"
_FLAGS: Final = ("soiled", "taped", "wet", "oils")


def schema(catalogue: Catalogue, constants: Constants) -> dict[str, object]:
    """The schema of what the door ``simulate`` takes: draft 2020-12, with ``default`` wherever there is one.

    A default that differs by substrate stands under ``defaults`` of the substrate; one that differs by machine under
    the machine.
    """
    return {
        "$schema": _DIALECT,
        "title": "A surface and a plan",
        "description": "Numbers are in the unit their name ends in; a quantity may also be text with a unit: '20 mil'.",
        "type": "object",
        "additionalProperties": False,
        "required": ["surface", "plan"],
        "properties": {"surface": _surface(catalogue, constants), "plan": _plan()},
    }


def _surface(catalogue: Catalogue, constants: Constants) -> dict[str, object]:
    zone = _zone_fields(catalogue, constants)
    own = {
        "substrate": {"enum": list(catalogue.surfaces)},
        "colour": {
            "anyOf": [{"enum": list(catalogue.palette)}, {"pattern": "^#[0-9a-fA-F]{6}$", "type": "string"}],
            "default": "white",
        },
        "hardness": _number(*HARDNESS, description="multiplies every cut: 1.3 is a soft film, 0.7 a hard one"),
        "panel_degc": _number(*DEGC, default=constants.heat.air_degc),
        "rest": {
            "type": "string",
            "default": "main",
            "description": "what the part without a zone of its own is called",
        },
    }
    named = {
        "name": {"type": "string", "minLength": 1, "maxLength": 40},
        "share": _number(*RANGES["share"], description="of the panel; a tenth where left out, of an edge a twentieth"),
        "edge": {"type": "boolean", "default": False, "description": "a line that a pad meets; only harms count there"},
        "idle": {"type": "boolean", "default": False, "description": "not part of the work: nothing is judged there"},
    }
    zones = {
        "type": "array",
        "default": [],
        "maxItems": MOST_ZONES,
        "items": {"type": "object", "additionalProperties": False, "required": ["name"], "properties": named | zone},
    }
    usual = {code: zone_defaults(catalogue, constants, code) for code in catalogue.surfaces}
    return {
        "type": "object",
        "additionalProperties": False,
        "required": ["substrate", "film_um"],
        "properties": _with_defaults(own | zone | {"zones": zones}, list(usual.values())),
        "defaults": usual,
    }


def _with_defaults(fields: dict[str, Any], usual: list[dict[str, object]]) -> dict[str, Any]:
    """The fields, each with the default that all substrates share, where they share one."""
    first = usual[0]
    shared = [name for name in fields if name in first and all(one.get(name) == first[name] for one in usual)]
    return fields | {name: {"default": first[name], **fields[name]} for name in shared}


def _zone_fields(catalogue: Catalogue, constants: Constants) -> dict[str, object]:
    """What a surface and each zone of it may say; a zone takes over what it leaves out."""
    agreed = {
        "type": "object",
        "additionalProperties": False,
        "properties": {
            "gloss60": _number(0, 100),
            "gloss20": _number(0, 100),
            "may_stay": {"type": "array", "items": {"enum": list(catalogue.kinds)}, "default": []},
        },
    }
    numbers = {name: _number(*span) for name, span in RANGES.items() if name != "share"}
    flags = {name: {"type": "boolean", "default": name == "soiled"} for name in _FLAGS}
    return {**numbers, **flags, "agreed": agreed, "defects": _defects(catalogue, constants)}


def _defects(catalogue: Catalogue, constants: Constants) -> dict[str, object]:
    """The families of marks, each kind with the depths it may have."""
    kinds = []
    for kind in catalogue.kinds.values():
        role = constants.kinds[kind.code]
        fields: dict[str, object] = {"kind": {"const": kind.code}}
        fields |= {"spread": _number(1, 5, default=role.spread), "cover": _number(0, 1, default=role.cover)}
        if kind.graded:
            low, middle, high = kind.depths_um
            fields["depth_um"] = _number(low, high, default=middle)
        kinds.append({"title": kind.called, "properties": fields})
    fields = {"kind": {"enum": list(catalogue.kinds)}, "depth_um": _number(0, 5000), "spread": _number(1, 5)}
    fields |= {"cover": _number(0, 1), "zone": {"type": "string", "default": ALL}}
    one = {"type": "object", "additionalProperties": False, "required": ["kind"], "properties": fields, "anyOf": kinds}
    return {"type": "array", "default": [], "maxItems": MOST_DEFECTS, "items": one}


def _plan() -> dict[str, object]:
    return {"type": "array", "maxItems": MOST_STEPS, "items": {"oneOf": [_op(op) for op in OPS]}}


def _op(op: str) -> dict[str, object]:
    """One kind of step; where its settings follow from the machine, the defaults of each."""
    fields: dict[str, object] = {"op": {"const": op}, "zone": {"type": "string", "default": ALL}}
    fields |= {one.name: _setting(one) for one in parameters(op)}
    found: dict[str, object] = {"title": OPS[op].words, "description": f"family {OPS[op].family}", "type": "object"}
    found |= {"additionalProperties": False, "required": ["op"], "properties": fields}
    machines = [code for one in parameters(op) if one.name == "machine" for code, _ in one.options]
    if machines:
        found["defaults"] = {code: read_plan([{"op": op, "machine": code}])[0].as_json() for code in machines}
    return found


def _setting(one: Parameter) -> dict[str, Any]:
    words = [code for code, _ in one.options]
    if one.kind == "choice":
        return {"title": one.label, "enum": words, "default": one.default}
    if one.kind == "text":
        return {"title": one.label, "type": "string", "maxLength": int(one.high), "default": one.default}
    number = {"type": "integer" if one.kind == "whole" else "number", "minimum": one.low, "maximum": one.high}
    if one.kind == "numbers":
        speeds = list(one.default) if isinstance(one.default, tuple) else []
        listed = {"type": "array", "items": number, "minItems": 1, "maxItems": MOST_PASSES}
        return {"title": one.label, **listed, "default": speeds}
    kind: dict[str, Any] = {"anyOf": [number, {"enum": words}]} if words else number
    default: dict[str, Any] = {} if one.default is None else {"default": one.default}
    return {"title": one.label, **kind, **default, **({"unit": one.unit} if one.unit else {})}


def _number(low: float, high: float, **more: object) -> dict[str, object]:
    return {"type": "number", "minimum": low, "maximum": high, **more}
