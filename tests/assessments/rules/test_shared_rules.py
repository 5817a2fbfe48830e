"""The sketches of all shared rules of the curriculum read in this language, and come out as they should.

Only R21 and R41 ship as yet; the rest is tried here on the names the curriculum gives them, so that the language is
known to carry them before their scenarios exist.
"""

from pathlib import Path

import pytest

from assessments.rules import Schema, bind, check, evaluate, read_shared

ROOT = Path(__file__).parents[3]
OPS = (
    *("prerinse", "wash", "alkaline", "acid", "iron", "bleach", "rinse", "flush_prove", "dry", "clay", "tape"),
    *("test_spot", "sand", "cut", "refine", "finish", "wipe", "inspect", "coat", "wait", "record", "tell", "refer"),
    *("flush", "call", "mask", "remove_source", "ventilate"),
)
FAMILIES = ["look", "clean", "chem", "abrade", "coat", "stop"]
ZONES = ["side", "bow", "chine"]


def num(unit=None):
    return {"t": "num", "opt": True, **({"unit": unit} if unit else {})}


def words(*vals):
    return {"t": "enum", "vals": list(vals), "opt": True}


def many(item, most=40):
    return {"t": "list", "item": item, "max": most, "opt": True}


def rec(**fields):
    return {"t": "rec", "fields": fields}


def must(kind):
    return {key: value for key, value in kind.items() if key != "opt"}


STEP = rec(
    n={"t": "int"},
    op=must(words(*OPS)),
    zone=must(words("all", *ZONES)),
    family=must(words(*FAMILIES)),
    covers=must(many(must(words(*ZONES)), 8)),
    panel_degc=must(num("degc")),
    next_abrade={"t": "int"},
    next_chem={"t": "int"},
)
SCHEMA = Schema.of(
    rec(
        facts=rec(
            reserve=must(num("um")),
            budget=must(num("um")),
            econ=must(num()),
            true_defect=must(words("swirl", "scratch")),
            missing=must(words("film", "edge")),
            given=must(many(must(words("film", "edge")))),
            limit_degc=must(num("degc")),
            formula=must(words("a", "b")),
            air=must(words("known", "unknown")),
        ),
        answer=rec(
            steps=many(STEP),
            zones=many(rec(n=must(words(*ZONES)), verdict=must(words("refer", "polish")))),
            cells=many(must(words("A1", "A2", "B1"))),
            last_abrade={"t": "int", "opt": True},
            defect=words("swirl", "scratch"),
            asked=many(must(words("film", "edge", "contact_probe"))),
            decision=words("coat_now", "wait"),
            limit=words("rh", "dew", "none"),
            kit=many(must(words("gloves", "goggles"))),
            kit_items=many(must(words("half_mask", "full_mask", "gloves"))),
            water_to=words("drain", "tank"),
            te=num("h"),
            ml=num("ml"),
            formula=words("a", "b"),
            area=num("m2"),
            packs={"t": "int", "opt": True},
            note={"t": "str", "opt": True},
            ppm=num("ppm"),
            controls=many(rec(op=must(words("remove_source", "ventilate", "mask")))),
            flush_min=num("min"),
            remedies=many(must(words("fuel_heater", "flame", "fan"))),
            coated=many(must(words(*ZONES))),
        ),
        model=rec(
            film_um=num("um"),
            removed_um=num("um"),
            tail_um=num("um"),
            own_tail_um=num("um"),
            verdict=words("pass", "redo", "harm"),
            unplaced={"t": "int", "opt": True},
            bad_pairs={"t": "int", "opt": True},
            drip_pairs={"t": "int", "opt": True},
        ),
        key=rec(
            needed_cut=must(num("um")),
            refer_zones=must(many(must(words(*ZONES)), 8)),
            record_zones=must(many(must(words("all", *ZONES)))),
            required=must(many(must(words("A1", "A2", "B1")))),
            required_n={"t": "int"},
            allowed=must(many(must(words("A1", "A2", "B1")))),
            decision=must(words("coat_now", "wait")),
            limit=must(words("rh", "dew", "none")),
            kit=must(many(must(words("gloves", "goggles")))),
            water_ok=must(many(must(words("drain", "tank")))),
            te=must(num("h")),
            ml=must(num("ml")),
            area=must(num("m2")),
            packs={"t": "int"},
            slack_pct=must(num()),
            ppm=must(num("ppm")),
            walk_zones=must(many(must(words(*ZONES)))),
        ),
    )
)
SKETCHES = {
    "R01": "every(any(t.op=='wash' and t.n<s.n for t in answer.steps) for s in answer.steps if s.family=='abrade')",
    "R02": "every(any(t.op=='test_spot' and t.n<s.n for t in answer.steps) for s in answer.steps"
    " if s.family=='abrade')",
    "R03": "model.film_um >= facts.reserve",
    "R04": "model.removed_um <= facts.budget",
    "R05": "model.verdict != 'harm'",
    "R06": "model.verdict == 'pass'",
    "R07": "model.removed_um <= facts.econ * key.needed_cut",
    "R08": "model.tail_um <= model.own_tail_um + 0.2",
    "R09": "every(any(d.op=='dry' and d.n>s.n and d.n<s.next_abrade for d in answer.steps) and any(t.op=='inspect'"
    " and t.n>s.n and t.n<s.next_abrade for t in answer.steps) for s in answer.steps if s.op=='sand')",
    "R10": "any(t.op=='wipe' and t.n>answer.last_abrade for t in answer.steps)",
    "R11": "every(any(t.op=='tape' and t.n<s.n for t in answer.steps) for s in answer.steps if s.family=='abrade')",
    "R12": "every(any(z.n==k and z.verdict=='refer' for z in answer.zones) for k in key.refer_zones)",
    "R13": "not any((s.family=='abrade' or s.op=='test_spot') and overlap(s.covers, key.refer_zones) > 0"
    " for s in answer.steps)",
    "R14": "every(any(s.op=='record' and (k=='all' or s.zone==k) for s in answer.steps) for k in key.record_zones)"
    " and any(s.op=='tell' for s in answer.steps)",
    "R15": "overlap(answer.cells, key.required) >= 0.8*key.required_n",
    "R16": "count(c not in key.allowed for c in answer.cells) <= 2",
    "R17": "answer.defect == facts.true_defect",
    "R18": "facts.missing in answer.asked",
    "R19": "count(a in facts.given for a in answer.asked) <= 2",
    "R21": "answer.decision == key.decision",
    "R22": "answer.limit == key.limit",
    "R23": "'contact_probe' in answer.asked",
    "R24": "every(k in answer.kit for k in key.kit)",
    "R26": "model.unplaced == 0 and model.bad_pairs == 0 and model.drip_pairs == 0",
    "R27": "answer.water_to in key.water_ok",
    "R28": "every(any((t.op=='flush_prove' or t.op=='rinse' and s.op!='bleach') and t.n>s.n and t.n<s.next_chem"
    " for t in answer.steps) for s in answer.steps if s.family=='chem' and s.next_chem>0)",
    "R29": "every(s.panel_degc < facts.limit_degc for s in answer.steps if s.family=='chem')",
    "R30": "near_rel(answer.te, key.te, 5)",
    "R33": "near_rel(answer.ml, key.ml, 5)",
    "R34": "answer.formula == facts.formula and near_rel(answer.area, key.area, 1)",
    "R35": "answer.packs == key.packs or key.slack_pct < 5.0 and answer.packs == key.packs + 1",
    "R36": "mentions(answer.note, ['leave','leaves','leaving','remain','remains','remaining','stay','stays','still',"
    "'untreated','refer','referred','visible','unchanged','excluded','cannot'])",
    "R37": "near_rel(answer.ppm, key.ppm, 5)",
    "R38": "any(c.op=='remove_source' for c in answer.controls) and any(c.op=='ventilate' for c in answer.controls)"
    " and not starts_before(answer.controls,'mask','remove_source')"
    " and not starts_before(answer.controls,'mask','ventilate')",
    "R39": "facts.air == 'known' or overlap(answer.kit_items, ['half_mask','full_mask']) == 0",
    "R40": "any(s.op=='flush' for s in answer.steps) and not starts_before(answer.steps,'call','flush')"
    " and answer.flush_min >= 15.0",
    "R41": "answer.decision != 'coat_now'",
    "R42": "overlap(answer.remedies, ['fuel_heater','flame']) == 0",
    "R43": "overlap(answer.coated, key.walk_zones) == 0",
}


def steps(*acts):
    """Steps of (op, family), numbered, on the side, with the next abrasive and chemical step filled in."""
    made = [
        {"n": n, "op": op, "zone": "all", "family": family, "covers": ["side"], "panel_degc": 20.0}
        for n, (op, family) in enumerate(acts, 1)
    ]
    for step in made:
        later = [each["n"] for each in made if each["n"] > step["n"] and each["family"] == "abrade"]
        step["next_abrade"] = later[0] if later else 999
        chem = [each["n"] for each in made if each["n"] > step["n"] and each["family"] == "chem"]
        step["next_chem"] = chem[0] if chem else 0
    return made


GOOD = steps(
    ("wash", "clean"),
    ("tape", "clean"),
    ("test_spot", "look"),
    ("sand", "abrade"),
    ("dry", "clean"),
    ("inspect", "look"),
    ("wipe", "clean"),
    ("record", "stop"),
    ("tell", "stop"),
    ("flush", "clean"),
)
BAD = steps(("sand", "abrade"), ("acid", "chem"), ("alkaline", "chem"), ("call", "stop"), ("flush", "clean"))
FACTS = {
    "reserve": 40.0,
    "budget": 20.0,
    "econ": 3.0,
    "true_defect": "swirl",
    "missing": "film",
    "given": ["edge"],
    "limit_degc": 30.0,
    "formula": "a",
    "air": "unknown",
}
KEY = {
    "needed_cut": 4.0,
    "refer_zones": ["bow"],
    "record_zones": ["all"],
    "required": ["A1", "A2"],
    "required_n": 2,
    "allowed": ["A1", "A2"],
    "decision": "wait",
    "limit": "rh",
    "kit": ["gloves"],
    "water_ok": ["tank"],
    "te": 20.0,
    "ml": 100.0,
    "area": 14.2,
    "packs": 2,
    "slack_pct": 9.0,
    "ppm": 50.0,
    "walk_zones": ["chine"],
}
RIGHT = {
    "steps": GOOD,
    "zones": [{"n": "bow", "verdict": "refer"}],
    "cells": ["A1", "A2"],
    "last_abrade": 4,
    "defect": "swirl",
    "asked": ["film", "contact_probe"],
    "decision": "wait",
    "limit": "rh",
    "kit": ["gloves"],
    "kit_items": ["gloves"],
    "water_to": "tank",
    "te": 20.4,
    "ml": 99.0,
    "formula": "a",
    "area": 14.2,
    "packs": 2,
    "note": "One scratch stays.",
    "ppm": 51.0,
    "controls": [{"op": "remove_source"}, {"op": "ventilate"}, {"op": "mask"}],
    "flush_min": 15.0,
    "remedies": ["fan"],
    "coated": ["side"],
}
WRONG = {
    "steps": BAD,
    "zones": [{"n": "bow", "verdict": "polish"}],
    "cells": ["B1"],
    "last_abrade": 1,
    "defect": "scratch",
    "asked": ["edge"],
    "decision": "coat_now",
    "limit": "dew",
    "kit": ["goggles"],
    "kit_items": ["half_mask"],
    "water_to": "drain",
    "te": 24.0,
    "ml": 60.0,
    "formula": "b",
    "area": 14.2,
    "packs": 3,
    "note": "Remainder of the day free.",
    "ppm": 5.0,
    "controls": [{"op": "mask"}, {"op": "ventilate"}, {"op": "remove_source"}],
    "flush_min": 5.0,
    "remedies": ["flame"],
    "coated": ["chine"],
}
KIND = {
    "film_um": 55.0,
    "removed_um": 9.0,
    "tail_um": 0.2,
    "own_tail_um": 0.1,
    "verdict": "pass",
    "unplaced": 0,
    "bad_pairs": 0,
    "drip_pairs": 0,
}
HARSH = {
    "film_um": 30.0,
    "removed_um": 30.0,
    "tail_um": 2.0,
    "own_tail_um": 0.1,
    "verdict": "harm",
    "unplaced": 0,
    "bad_pairs": 1,
    "drip_pairs": 0,
}
NOT_SHOWN_WRONG = {"R13", "R16", "R19", "R29"}


def told(code, answer, model):
    case = {"facts": FACTS, "key": KEY, "answer": answer, "model": model}
    checked = check(SKETCHES[code], SCHEMA)
    assert checked.ok, checked.errors
    return evaluate(checked, bind(SCHEMA, case))[0]


@pytest.mark.parametrize("code", list(SKETCHES))
def test_a_shared_rule_is_met_by_the_right_answer(code):
    assert told(code, RIGHT, KIND) is True


@pytest.mark.parametrize("code", sorted(set(SKETCHES) - NOT_SHOWN_WRONG))
def test_a_shared_rule_is_not_met_by_the_wrong_answer(code):
    assert told(code, WRONG, HARSH) is False


@pytest.mark.parametrize("code", list(SKETCHES))
def test_a_shared_rule_is_unknown_of_nothing_answered(code):
    assert told(code, {}, {}) is None


def test_an_abrasive_in_a_referred_zone_breaks_the_ban():
    worked = [{**step, "covers": ["bow"]} for step in GOOD]
    assert told("R13", {**RIGHT, "steps": worked}, KIND) is False


def test_chemistry_on_a_hot_panel_is_not_met():
    worked = steps(("wash", "clean"), ("acid", "chem"))
    assert told("R29", {"steps": [{**step, "panel_degc": 31.0} for step in worked]}, KIND) is False


def test_the_shipped_shared_book_says_what_the_sketches_say():
    shipped = read_shared((ROOT / "fixtures/rulebooks/shared.toml").read_text()).rules
    assert {code: rule.test for code, rule in shipped.items()} == {code: SKETCHES[code] for code in shipped}
    assert shipped["R41"].when == "key.decision != 'coat_now'"
