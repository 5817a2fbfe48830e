"""The case: one schema, answers rounded to what is shown."""

import json

from assessments.marking.case import case_of, drawn_schema_of, schema_of
from assessments.rules import bind, check
from assessments.scenarios.draw import draw, key_of
from assessments.scenarios.fields import Record
from assessments.scenarios.spec import Scenario


def test_every_draw_fits_the_schema(coa_01: Scenario) -> None:
    schema = schema_of(coa_01)
    for seed in range(40):
        facts = draw(coa_01, seed).facts
        bound = bind(schema, case_of(coa_01, facts, key_of(coa_01, facts), {}))
        assert bound["facts"]["air_degc"] == facts["air_degc"]
        assert bound["answer"]["margin"] is None


def test_answers_are_rounded_as_people_round_what_they_see(coa_01: Scenario) -> None:
    answers = {"dew_point": 12.25, "margin": 2.9999999, "decision": "wait", "next_steps": []}
    case = case_of(coa_01, Record({}), Record({}), answers)
    assert case["answer"] == {"dew_point": 12.3, "margin": 3.0, "decision": "wait", "next_steps": []}


def test_a_case_is_plain_json(coa_01: Scenario) -> None:
    facts = draw(coa_01, 3).facts
    case = case_of(coa_01, facts, key_of(coa_01, facts), {"why": "short"})
    assert json.loads(json.dumps(case)) == case


def test_rules_may_name_facts_key_and_answer_and_nothing_else(coa_01: Scenario) -> None:
    schema = schema_of(coa_01)
    assert check("near(answer.margin, key.margin, 0.5)", schema).ok
    assert check("every(r.air_degc > r.dew_degc for r in facts.forecast)", schema).ok
    assert check("every(m > 1.8 for m in key.row_margins)", schema).ok
    assert not check("answer.margin == facts.air_degc", schema).ok
    assert not check("'fuel_heatr' in answer.next_steps", schema).ok
    assert not check("facts.emissivity > 0.2", schema).ok


def test_an_exemplar_may_not_read_the_answer(coa_01: Scenario) -> None:
    assert check("key.short and answered(facts.probe_degc)", drawn_schema_of(coa_01)).ok
    assert not check("answer.decision == 'wait'", drawn_schema_of(coa_01)).ok
