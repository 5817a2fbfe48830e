"""Compared values in words."""

import pytest

from assessments.marking import Said, said
from assessments.rules import Compared
from assessments.scenarios.spec import Scenario
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
