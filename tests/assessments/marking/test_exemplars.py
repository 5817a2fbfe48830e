"""Exemplars are made from the key of a draw."""

from collections.abc import Mapping
from dataclasses import replace
from types import MappingProxyType

import pytest

from assessments.answers.errors import UnknownOption
from assessments.marking.exemplars import Expressions, Trial, drawn_case, trials
from assessments.scenarios.draw import answer_key, draw, key_of
from assessments.scenarios.spec import Exemplar, Scenario


def trials_of(coa_01: Scenario, seed: int) -> Mapping[str, Trial]:
    facts = draw(coa_01, seed).facts
    key = key_of(coa_01, facts)
    made = trials(Expressions.of(coa_01), key, drawn_case(coa_01, facts, key))
    return {trial.name: trial for trial in made}


def seed_of(coa_01: Scenario, kind: str) -> int:
    return next(seed for seed in range(200) if draw(coa_01, seed).kind == kind)


def test_key_silence_and_one_task_left_out_are_always_tried(coa_01: Scenario) -> None:
    found = trials_of(coa_01, 7)
    assert list(found)[:7] == [
        "key",
        "nothing answered",
        "key without dew_point",
        "key without margin",
        "key without decision",
        "key without next_steps",
        "key without why",
    ]
    assert found["nothing answered"].answers == {}
    assert "margin" not in found["key without margin"].answers
    assert "decision" in found["key without margin"].answers


def test_an_exemplar_is_tried_only_where_it_applies(coa_01: Scenario) -> None:
    good, short = trials_of(coa_01, seed_of(coa_01, "coat_now")), trials_of(coa_01, seed_of(coa_01, "wait"))
    assert "refuses a good day" in good
    assert "refuses a good day" not in short
    assert "coats on the rail" in short
    assert "coats on the rail" not in good


def test_an_exemplar_differs_from_the_key_as_written(coa_01: Scenario) -> None:
    seed = seed_of(coa_01, "wait")
    facts = draw(coa_01, seed).facts
    key = key_of(coa_01, facts)
    found = trials_of(coa_01, seed)
    rail = found["coats on the rail"].answers
    assert rail["margin"] == pytest.approx(facts.number("ir_rail_degc") - key.number("dew_point"), abs=0.051)
    assert (rail["decision"], rail["next_steps"]) == ("coat_now", ["tell_owner", "log_meter_place_time"])
    assert rail["dew_point"] == key["dew_point"]
    assert "probe_coldest" not in str(found["starts by the forecast, no probe"].answers["next_steps"])
    assert len(str(found["everything ticked"].answers["next_steps"]).split(",")) == 14
    assert found["no next step at all"].answers["next_steps"] == []


def test_an_exemplar_may_leave_a_task_unanswered(coa_01: Scenario) -> None:
    silent = Exemplar("silent", ("cannot_certify",), unanswered=("decision",))
    found = trials_of(replace(coa_01, exemplars=(silent,)), 7)["silent"].answers
    assert set(found) == set(answer_key(coa_01, key_of(coa_01, draw(coa_01, 7).facts))) - {"decision"}


def test_an_exemplar_that_puts_an_option_nobody_offers_is_refused(coa_01: Scenario) -> None:
    lost = Exemplar("lost", ("satisfactory",), put=MappingProxyType({"decision": "wate"}))
    with pytest.raises(UnknownOption, match="decision: 'wate' is no option here; did you mean wait?"):
        Expressions.of(replace(coa_01, exemplars=(lost,)))
