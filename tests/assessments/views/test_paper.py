"""How answers are written back into the page, for each reader."""

from datetime import timedelta

import pytest
from django.utils import translation

from assessments import shipped
from assessments.answers.sheet import parse_form
from assessments.views.paper import Sheet, minutes_left, show_for
from courses.trade.units import Preferences

SPEC = shipped.scenario("COA-01@1")
US, SI = Sheet(Preferences.us()), Sheet(Preferences.metric())


@pytest.mark.parametrize(
    ("sheet", "task", "value", "text"),
    [
        (US, "dew_point", 9.3, "48.7"),
        (SI, "dew_point", 9.3, "9.3"),
        (SI, "dew_point", -2.0, "-2"),
        (US, "margin", 3.0, "5.4"),
        (SI, "decision", "wait", "wait"),
        (SI, "why", "cold & wet", "cold & wet"),
        (SI, "why", None, ""),
    ],
)
def test_a_value_is_typed_as_its_reader_would(sheet, task, value, text):
    assert sheet.typed(SPEC.task(task), value) == text


@pytest.mark.parametrize(
    ("task", "value"),
    [
        ("dew_point", 9.333333333333334),
        ("margin", 0.1),
        ("decision", "wait"),
        ("next_steps", ["tell_owner", "probe_coldest"]),
        ("next_steps", []),
        ("why", "cold"),
        ("dew_point", None),
    ],
)
@pytest.mark.parametrize("sheet", [US, SI])
def test_an_answer_taken_from_a_conflict_is_the_same_to_the_last_digit(sheet, task, value):
    one = SPEC.task(task)
    sent = [text for name, text in sheet.fields(one, value) if name == "value"]
    assert parse_form(one, sent, sheet.prefs) == value


def test_words_name_what_was_chosen():
    assert US.words(SPEC.task("margin"), 3.0) == "5.4\u00a0°F"
    assert SI.words(SPEC.task("margin"), None) == "not answered"
    assert SI.words(SPEC.task("decision"), "coat_now") == "Start coating now"


def test_temperatures_always_show_a_tenth():
    assert show_for(Preferences.metric())(20.0, "degc", 0) == "20.0\u00a0°C"
    assert show_for(Preferences.metric())(65.0, "rh", 0) == "65\u00a0%"


@pytest.mark.parametrize(("seconds", "words"), [(720, "12"), (719, "12"), (61, "2"), (60, "1"), (1, "1"), (-5, "0")])
def test_time_left_is_rounded_up(seconds, words):
    with translation.override("en-us"):
        assert minutes_left(timedelta(seconds=seconds)) == f"{words} min left"
