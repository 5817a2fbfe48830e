"""Drawing: one seed, one set of facts; a draw that never settles says why."""

import json
from dataclasses import replace
from types import MappingProxyType

import pytest

from assessments.scenarios import draw as drawing
from assessments.scenarios.chance import Span
from assessments.scenarios.draw import answer_key, draw, key_of
from assessments.scenarios.errors import DrawNeverSettled
from assessments.scenarios.fields import Record
from assessments.scenarios.spec import Scenario

SEVEN = {
    "now_h": 12.75,
    "shuts_h": 17.0,
    "job_h": 2.3,
    "area_m2": 14.2,
    "air_degc": 20.2,
    "air_rh": 67,
    "ir_rail_degc": 19.9,
    "ir_set_emissivity": 0.95,
    "probe_degc": 18.3,
    "probe_age_h": 5.5,
    "trend": "steady",
    "forecast": [
        {"h": 2, "air_degc": 23.8, "dew_degc": 13.9},
        {"h": 4, "air_degc": 22.7, "dew_degc": 14.5},
        {"h": 6, "air_degc": 21.5, "dew_degc": 14.4},
    ],
    "hull_lag_k": 2.1,
    "heater": "fuel",
    "pressure": "crane",
}


def test_the_same_seed_draws_the_same_facts(coa_01: Scenario) -> None:
    assert draw(coa_01, 7) == draw(coa_01, 7)
    assert draw(coa_01, 7).facts != draw(coa_01, 8).facts


def test_a_number_and_its_digits_are_one_seed(coa_01: Scenario) -> None:
    assert draw(coa_01, 7).facts == draw(coa_01, "7").facts


def test_what_seed_seven_draws_never_changes(coa_01: Scenario) -> None:
    # An attempt stores its facts, but a door promises that a seed draws the same for ever.
    assert draw(coa_01, 7).facts.as_json() == SEVEN


def test_facts_are_the_same_after_json(coa_01: Scenario) -> None:
    for seed in range(50):
        facts = draw(coa_01, seed).facts
        assert Record.of(coa_01.facts, json.loads(json.dumps(facts.as_json()))) == facts


def test_the_key_answers_every_task(coa_01: Scenario) -> None:
    for seed in range(50):
        key = answer_key(coa_01, key_of(coa_01, draw(coa_01, seed).facts))
        assert list(key) == [task.id for task in coa_01.tasks]


def test_a_draw_that_never_settles_says_what_threw_it_away(coa_01: Scenario, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(drawing, "MOST_TRIES", 40)
    kind = coa_01.kinds[0]
    never = replace(kind, values=MappingProxyType({**kind.values, "panel_degc": Span(8, 8, 1)}))
    with pytest.raises(DrawNeverSettled) as refused:
        draw(replace(coa_01, kinds=(never,)), 1)
    said = str(refused.value)
    assert said.startswith("COA-01@1: no draw of kind 'coat_now' stood in 40 tries; thrown away because: ")
    assert "the panel is too cold or too hot" in said


def test_every_reason_to_throw_a_draw_away_is_needed_somewhere(coa_01: Scenario) -> None:
    assert max(draw(coa_01, seed).tries for seed in range(100)) > 5
