"""Marking COA-01: one case worked by hand, the four outcomes, silence, and books that don't fit."""

from dataclasses import replace

import psychrolib
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from assessments.answers.sheet import Value, read_answers
from assessments.marking import Marked, Marker, mark
from assessments.marking.exemplars import ExpressionRefused
from assessments.marking.mark import MarkerRefused
from assessments.rules import BookRefused, RuleBook
from assessments.scenarios.draw import draw, key_of
from assessments.scenarios.fields import Record
from assessments.scenarios.spec import Scenario

# A shed in the morning: 18.0 °C, 65 %, probe 13.0 on the keel side an hour ago, a fuel heater to hand, and a forecast
# that brings the margin. L24 works this line: margin 1.68, so nothing is laid.
SHED: dict[str, object] = {
    "now_h": 9.0,
    "shuts_h": 17.0,
    "job_h": 2.3,
    "area_m2": 14.2,
    "air_degc": 18.0,
    "air_rh": 65,
    "ir_rail_degc": 17.1,
    "ir_set_emissivity": 0.95,
    "probe_degc": 13.0,
    "probe_age_h": 1.0,
    "trend": "steady",
    "forecast": [
        {"h": 2, "air_degc": 18.5, "dew_degc": 11.5},
        {"h": 4, "air_degc": 19.5, "dew_degc": 11.4},
        {"h": 6, "air_degc": 19.6, "dew_degc": 11.4},
    ],
    "hull_lag_k": 2.0,
    "heater": "fuel",
    "pressure": "foreman",
}
RIGHT: dict[str, Value] = {
    "dew_point": 11.3,
    "margin": 1.7,
    "decision": "wait",
    "next_steps": ["keep_shut_and_wait", "probe_coldest", "log_meter_place_time", "tell_owner"],
}


@pytest.fixture
def shed(coa_01: Scenario) -> Record:
    return Record.of(coa_01.facts, SHED)


def marked(marker: Marker, facts: Record, **changed: object) -> Marked:
    raw = {name: value for name, value in {**RIGHT, **changed}.items() if value is not None}
    return mark(marker, facts, read_answers(marker.scenario.tasks, raw))


def not_met(found: Marked) -> list[str]:
    return [finding.code for finding in found.findings if finding.verdict == "not_met"]


def test_the_shed_worked_by_hand_is_satisfactory_with_every_point(coa_01_marker: Marker, shed: Record) -> None:
    # The margin by an independent library: PsychroLib 2.5, ASHRAE Fundamentals 2017.
    psychrolib.SetUnitSystem(psychrolib.SI)
    dew = psychrolib.GetTDewPointFromRelHum(18.0, 0.65)
    found = marked(coa_01_marker, shed, dew_point=round(dew, 1), margin=round(13.0 - dew, 1))
    assert (round(dew, 1), round(13.0 - dew, 1)) == (11.3, 1.7)
    # 38 points, less the two for a second humidity meter: this margin isn't in the doubt.
    assert (found.outcome, found.points, found.of) == ("satisfactory", 36, 36)
    assert {finding.code for finding in found.findings if finding.verdict == "not_applicable"} == {"COA-01.8"}


def test_the_margin_of_the_rail_is_told_against_that_of_the_probe(coa_01_marker: Marker, shed: Record) -> None:
    found = marked(coa_01_marker, shed, margin=5.8)
    finding = next(one for one in found.findings if one.code == "COA-01.2")
    assert finding.as_json() == {
        "code": "COA-01.2",
        "verdict": "not_met",
        "severity": "needed",
        "points": 0,
        "of": 2,
        "because": "The film lies on gel coat; bright metal mirrors the room.",
        "values": [
            {"name": "answer.margin", "value": 5.8, "unit": "K"},
            {"name": "key.margin", "value": 1.7, "unit": "K"},
            {"name": "within", "value": 0.5, "unit": "K"},
        ],
        "lesson": "L25",
        "source": "emissivity-tables",
    }
    assert found.outcome == "not_yet_satisfactory"


def test_coating_over_water_fails_on_its_own(coa_01_marker: Marker, shed: Record) -> None:
    found = marked(coa_01_marker, shed, decision="coat_now")
    assert (found.outcome, found.critical, not_met(found)) == ("critical_fail", ("R41",), ["R21", "R41"])


def test_a_critical_rule_not_met_outweighs_one_not_answered(coa_01_marker: Marker, shed: Record) -> None:
    found = marked(coa_01_marker, shed, decision="coat_now", next_steps=None)
    assert found.outcome == "critical_fail"


def test_a_critical_rule_not_answered_cant_be_certified(coa_01_marker: Marker, shed: Record) -> None:
    found = marked(coa_01_marker, shed, next_steps=None)
    assert (found.outcome, not_met(found)) == ("cannot_certify", [])
    silent = {finding.code for finding in found.findings if finding.verdict == "not_answered"}
    assert {"COA-01.3", "COA-01.4", "COA-01.5", "COA-01.12"} <= silent


def test_none_of_these_is_an_answer_and_lights_no_heater(coa_01_marker: Marker, shed: Record) -> None:
    found = marked(coa_01_marker, shed, next_steps=[])
    assert (found.outcome, found.critical) == ("not_yet_satisfactory", ())
    assert "COA-01.3" in not_met(found)


def test_nothing_answered_breaks_no_rule_and_earns_nothing(coa_01_marker: Marker, shed: Record) -> None:
    found = mark(coa_01_marker, shed, {})
    assert (found.outcome, found.points, found.of, not_met(found)) == ("cannot_certify", 0, 36, [])


@pytest.mark.parametrize(("off", "verdict"), [(0.5, "met"), (0.54, "met"), (0.56, "not_met"), (-0.5, "met")])
def test_half_a_degree_is_what_the_page_shows(coa_01_marker: Marker, shed: Record, off: float, verdict: str) -> None:
    found = marked(coa_01_marker, shed, dew_point=11.3 + off)
    assert next(one.verdict for one in found.findings if one.code == "COA-01.1") == verdict


def test_an_answer_in_fahrenheit_is_marked_like_the_same_in_celsius(coa_01_marker: Marker, shed: Record) -> None:
    found = marked(coa_01_marker, shed, dew_point="52.3 °F", margin="3.1 °F")
    assert (found.outcome, found.points) == ("satisfactory", 36)


@given(seed=st.integers(0, 10**6), ticked=st.data())
@settings(max_examples=60, deadline=None)
def test_any_answers_to_any_draw_are_judged(coa_01_marker: Marker, seed: int, ticked: st.DataObject) -> None:
    tasks = {task.id: task for task in coa_01_marker.scenario.tasks}
    answers: dict[str, object] = {
        "dew_point": ticked.draw(st.none() | st.floats(-60, 60)),
        "margin": ticked.draw(st.none() | st.floats(-60, 60)),
        "decision": ticked.draw(st.none() | st.sampled_from(tasks["decision"].option_ids)),
        "next_steps": ticked.draw(st.none() | st.lists(st.sampled_from(tasks["next_steps"].option_ids))),
    }
    facts = draw(coa_01_marker.scenario, seed).facts
    found = mark(coa_01_marker, facts, read_answers(coa_01_marker.scenario.tasks, answers))
    assert found.failed == ()
    assert 0 <= found.points <= found.of <= 38
    assert found == mark(coa_01_marker, facts, read_answers(coa_01_marker.scenario.tasks, answers))
    if answers["decision"] == "coat_now" and key_of(coa_01_marker.scenario, facts)["short"]:
        assert found.outcome == "critical_fail"


def test_a_book_of_another_version_is_refused(coa_01: Scenario, coa_01_book: RuleBook) -> None:
    with pytest.raises(MarkerRefused, match="The rule book COA-01@1 doesn't mark COA-01@2"):
        Marker.of(replace(coa_01, version=2), coa_01_book)


def test_an_exemplar_that_names_no_rule_is_refused(coa_01: Scenario, coa_01_book: RuleBook) -> None:
    lost = replace(coa_01.exemplars[0], not_met=("R14",))
    with pytest.raises(MarkerRefused, match="exemplar 'coats on the rail': no rule of its book is called 'R14'; did"):
        Marker.of(replace(coa_01, exemplars=(lost,)), coa_01_book)


def test_an_exemplar_that_cant_be_worked_is_refused(coa_01: Scenario, coa_01_book: RuleBook) -> None:
    lost = replace(coa_01.exemplars[0], when="key.shortt")
    with pytest.raises(ExpressionRefused, match="COA-01@1, exemplar 'coats on the rail', 'key.shortt': "):
        Marker.of(replace(coa_01, exemplars=(lost,)), coa_01_book)


def test_a_rule_that_names_a_fact_nobody_draws_is_refused(coa_01: Scenario, coa_01_book: RuleBook) -> None:
    without = replace(coa_01, facts=tuple(field for field in coa_01.facts if field.name != "heater"), exemplars=())
    with pytest.raises(BookRefused, match="heater"):
        Marker.of(without, coa_01_book)
