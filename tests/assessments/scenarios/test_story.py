"""The story: sentences by the facts, numbers in the reader's units, nothing hidden told."""

from dataclasses import replace

import pytest

from assessments.scenarios.draw import Drawn, draw, key_of
from assessments.scenarios.fields import Field, Option, Record
from assessments.scenarios.spec import Scenario
from assessments.scenarios.story import (
    clock,
    facts_shown,
    metric,
    model_text,
    slots,
    story,
    tables_shown,
    with_units,
    worded,
)
from assessments.scenarios.story import told as told_of
from assessments.scenarios.wording import Sentence
from courses.trade.units import Preferences, shown


def american(value: float, unit: str, decimals: int) -> str:
    return shown(value, unit, Preferences.us(), decimals)


def drawn_as(coa_01: Scenario, kind: str) -> Drawn:
    return next(drawn for drawn in (draw(coa_01, seed) for seed in range(200)) if drawn.kind == kind)


def told(coa_01: Scenario, kind: str) -> str:
    return "\n".join(story(coa_01, drawn_as(coa_01, kind).facts, metric))


def test_where_nobody_probed_the_story_says_so(coa_01: Scenario) -> None:
    text = told(coa_01, "no_probe")
    assert "Nobody has put a probe on the gel coat." in text
    assert "Nobody knows whether the hull is warming or cooling." in text
    assert "A contact probe" not in text


def test_where_somebody_probed_the_story_says_what_and_when(coa_01: Scenario) -> None:
    drawn = drawn_as(coa_01, "warm_the_panel")
    text = "\n".join(story(coa_01, drawn.facts, metric))
    probe, age = metric(drawn.facts.number("probe_degc"), "degc", 1), metric(drawn.facts.number("probe_age_h"), "h", 1)
    assert f"A contact probe on the gel coat, keel side in the shade, {age} ago: {probe}." in text
    assert "Nobody" not in text
    assert "An electric heater stands ready, on its stand." in text


@pytest.mark.parametrize("seed", range(40))
def test_no_slot_is_left_open_and_no_key_is_told(coa_01: Scenario, seed: int) -> None:
    facts = draw(coa_01, seed).facts
    text = "\n".join(story(coa_01, facts, metric))
    assert "{" not in text
    assert "  " not in text
    labels = [label for label, _ in facts_shown(coa_01, facts, metric)]
    assert "emissivity" not in (text + " ".join(labels)).casefold()
    assert len(labels) == len(facts) - 3  # the area and the pressure stand in the story, the forecast in its table


def test_an_american_reads_the_same_story_in_customary_units(coa_01: Scenario) -> None:
    drawn = drawn_as(coa_01, "wait")
    text = "\n".join(story(coa_01, drawn.facts, american))
    assert "21.00\u00a0ft by 8.04\u00a0ft" in text
    assert american(drawn.facts.number("air_degc"), "degc", 1) in text
    assert "°C" not in text


def test_the_forecast_is_a_table(coa_01: Scenario) -> None:
    facts = draw(coa_01, 7).facts
    (table,) = tables_shown(coa_01, facts, metric)
    assert table.caption == "Forecast of the shed"
    assert table.heads == ("From now", "Air", "Dew point")
    assert [row[0] for row in table.rows] == ["2\u00a0h", "4\u00a0h", "6\u00a0h"]


def test_what_is_hidden_isnt_shown(coa_01: Scenario) -> None:
    facts = draw(coa_01, 7).facts
    hidden = replace(coa_01, facts=tuple(replace(field, hidden=True) for field in coa_01.facts))
    assert facts_shown(hidden, facts, metric) == []
    assert tables_shown(hidden, facts, metric) == []


@pytest.mark.parametrize("seed", range(40))
def test_the_model_answer_speaks_of_the_readings(coa_01: Scenario, seed: int) -> None:
    drawn = draw(coa_01, seed)
    key = key_of(coa_01, drawn.facts)
    why = coa_01.task("why")
    assert why is not None
    text = model_text(coa_01, why, drawn.facts, key, american)
    assert american(key.number("margin"), "K", 1) in text
    assert "{" not in text
    assert 2 <= text.count(". ") + 1 <= 4 or drawn.kind == "no_probe"


def test_words_for_every_kind_of_value() -> None:
    trend = Field("trend", "choice", options=(Option("rising", "going up"),))
    assert worded(trend, "rising", metric) == "going up"
    assert worded(Field("shut", "yes_no"), True, metric) == "yes"
    assert worded(Field("shut", "yes_no"), False, metric) == "no"
    assert worded(Field("now_h", "quantity", unit="h", clock=True), 8.25, metric) == "08:15"
    assert worded(Field("k", "quantity", unit="K", decimals=1), 3, metric) == "3.0\u00a0K"
    assert worded(Field("trends", "list", items=trend), ("rising", "rising"), metric) == "going up, going up"
    assert worded(Field("trends", "list", items=trend), [], metric) == "none"
    assert worded(Field("why", "text"), "so", metric) == "so"


def test_what_a_reading_tells_may_rest_on_another_that_was_asked_for() -> None:
    water = (Sentence("Beads.", not_asked=("wipe",)), Sentence("It lies flat.", asked=("wipe",)))
    assert [told_of(water, {}, (), metric, asked) for asked in ((), ("wet",), ("wet", "wipe"))] == [
        "Beads.",
        "Beads.",
        "It lies flat.",
    ]


def test_an_empty_paragraph_is_left_out(coa_01: Scenario) -> None:
    silent = replace(coa_01, story=((Sentence("Never.", given="nothing"),), (Sentence("Once."),)))
    assert story(silent, Record({}), metric) == ["Once."]


def test_a_clock_starts_again_past_midnight() -> None:
    assert [clock(hours) for hours in (0, 8.25, 17.0, 24.0, 25.5)] == ["00:00", "08:15", "17:00", "00:00", "01:30"]


def test_fixed_quantities_are_shown_and_names_are_slots() -> None:
    assert with_units("until {4.2 K} over {dew}", american) == "until 7.6\u00a0°F over {dew}"
    assert slots("{a} and {4.2 K} and {4.2 parsec}") == ("a", "4.2 parsec")
