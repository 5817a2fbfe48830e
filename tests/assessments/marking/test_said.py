"""Compared values in words."""

import pytest

from assessments import shipped
from assessments.marking import Said, mark, said
from assessments.marking.exemplars import drawn_case, trials
from assessments.marking.said import in_words
from assessments.rules import Compared
from assessments.scenarios.draw import draw, key_of
from assessments.scenarios.spec import Scenario
from assessments.scenarios.story import metric
from courses.trade.units import Preferences, shown


def american(value: float, unit: str, decimals: int) -> str:
    return shown(value, unit, Preferences.us(), decimals)


@pytest.mark.parametrize(
    ("compared", "words"),
    [
        (Compared("answer.margin", 3.0, "K"), Said("answer", "Margin", "5.4\u00a0°F")),
        (Compared("key.dew_point", 10.0, "degc"), Said("key", "Dew point", "50.0\u00a0°F")),
        (Compared("within", 0.5, "K"), Said("within", "within", "0.9\u00a0°F")),
        (Compared("answer.margin", None, "K"), Said("answer", "Margin", "")),
        (Compared("answer.decision", "coat_now", None), Said("answer", "Decision", "Start coating now")),
        (Compared("limit", "coat_now", None), Said("limit", "limit", "Start coating now")),
        (Compared("limit", "electric", None), Said("limit", "limit", "electric, on a stand")),
        (Compared("limit", "read", None), Said("limit", "limit", "read")),
        (Compared("limit", 3, None), Said("limit", "limit", "3")),
        (Compared("limit", True, None), Said("limit", "limit", "yes")),
        (Compared("facts.heater", "fuel", None), Said("facts", "Heater to hand", "fuel-burning")),
        (Compared("key.short", True, None), Said("key", "Not a day to coat on these readings", "yes")),
        (
            Compared("answer.next_steps", ["tell_owner", "fan_along_hull"], None),
            Said(
                "answer",
                "Next steps",
                "Tell the owner the decision and until when it holds, Move the shed’s air along the hull",
            ),
        ),
        (Compared("answer.next_steps", [], None), Said("answer", "Next steps", "none")),
        (Compared("model.margin", 1.25, "K"), Said("model", "margin", "2.25\u00a0°F")),
        (Compared("model.margin", None, "K"), Said("model", "margin", "")),
        (Compared("dew point of air", 10.0, "degc"), Said("", "dew point of air", "50\u00a0°F")),
    ],
)
def test_a_value_is_said_in_the_readers_words_and_units(coa_01: Scenario, compared: Compared, words: Said) -> None:
    assert said(coa_01, compared, american) == words


def test_a_quantity_in_an_options_words_is_shown_in_the_readers_units(coa_01: Scenario) -> None:
    assert "7.6\u00a0°F" in said(coa_01, Compared("limit", "warm_electric", None), american).text
    assert "7.6\u00a0°F" in said(coa_01, Compared("answer.next_steps", ["warm_electric"], None), american).text


@pytest.mark.parametrize(
    ("ref", "compared", "wanted"),
    [
        (
            "INS-04@1",
            Compared("answer.steps[2].op", "test_spot", None),
            Said("answer", "Work plan 2", "Test spot with polish"),
        ),
        (
            "INS-04@1",
            Compared("answer.steps[1].zone", "rest", None),
            Said("answer", "Work plan 1, where", "the rest of the side"),
        ),
        ("INS-04@1", Compared("limit", "test_spot", None), Said("limit", "limit", "Test spot with polish")),
        (
            "INS-08@1",
            Compared("limit", ["sand", "cut_now"], None),
            Said("limit", "limit", "Sand it, there is enough, One careful cut now"),
        ),
        ("INS-08@1", Compared("limit", ["leave", "stays"], None), Said("limit", "limit", "leave, stays")),
        ("INS-04@1", Compared("0.8 × required n", 3.2, None), Said("", "0.8 × required n", "3.2")),
        (
            "INS-04@1",
            Compared("answer.asked[1]", "press", None),
            Said("answer", "Readings 1", "A thumb pressed hard, all round the fitting"),
        ),
        ("INS-01@1", Compared("answer.looks", 4, None), Said("answer", "Looks", "4")),
        ("INS-08@1", Compared("within", 25, "%"), Said("within", "within", "25\u00a0%")),
        ("INS-01@1", Compared("answer.lamp_places", 1, None), Said("answer", "Places of the lamp", "1")),
        ("INS-01@1", Compared("facts.true_defect", "swirl", None), Said("facts", "true defect", "swirls")),
        ("INS-09@1", Compared("model.named", 4, None), Said("model", "Patches named right", "4")),
    ],
)
def test_a_place_in_a_list_and_what_is_derived_have_words(ref: str, compared: Compared, wanted: Said) -> None:
    assert said(shipped.scenario(ref), compared, metric) == wanted


def test_whatever_a_finding_of_a_shipped_book_compares_has_words_in_any_units() -> None:
    for ref in shipped.scenarios():
        marker = shipped.marker(ref)
        scenario = marker.scenario
        facts = draw(scenario, 11).facts
        key = key_of(scenario, facts)
        for trial in trials(marker.expressions, key, drawn_case(scenario, facts, key)):
            for finding in mark(marker, facts, trial.answers).findings:
                said_of = [said(scenario, one, american) for one in finding.values]
                assert all(one.label for one in said_of), (ref, finding.code)


@pytest.mark.parametrize(
    ("ref", "sentence", "wanted"),
    [
        ("CUT-03@1", "add_catalyst is not in actions", "“Brush a little catalyst over it"),
        ("CUT-03@1", "overlap of asked and (catalyst, temp_log) is 0", "in both asked and (“The mixing note"),
        ("PLN-01@1", "econ × needed cut", "economical factor × needed cut"),
        ("PLN-01@1", "removed (wet) is_not known", "removed (wet) is_not known"),
    ],
)
def test_what_is_said_of_a_rule_has_words_for_our_own_names(ref: str, sentence: str, wanted: str) -> None:
    assert in_words(shipped.scenario(ref), sentence).startswith(wanted)
