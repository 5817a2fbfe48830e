import pytest

from assessments.rules import Schema, check, choice, num, text
from assessments.rules.compiler import Compiled


@pytest.mark.parametrize(
    ("kind", "value", "stored"),
    [
        (num(), 41.26, 41.26),
        (num(), 1 / 3, 0.333333),
        (num(), -2250000000.0000005, round(-2250000000.0000005, 6)),
        (num(), 1e12, 1e12),
        (num(), -0.0, -0.0),
        (num(step=0.1), 2.5, 2.5),
        (num(step=0.3), 1 / 3, 0.333333),
        (num(opt=True), 1 / 3, 0.333333),
    ],
)
def test_numbers_are_stored_to_six_decimals(kind, value, stored):
    compiled = Compiled([check("a < 1e9", Schema({"a": kind}))])
    events = compiled.traced({"a": value})[1]
    assert repr(events[0][2]) == repr(stored)
    assert [whole for _, _, whole in compiled.whole({"a": value}, events, [])] == [(value, 1e9)]


@pytest.mark.parametrize(
    ("kind", "value", "stored"),
    [
        (text(40), "x" * 40, "x" * 40),
        (text(300), "x" * 300, "x" * 39 + "…"),
        (text(300, opt=True), None, None),
        (choice(["x" * 50, "y"]), "x" * 50, "x" * 39 + "…"),
    ],
)
def test_texts_are_cut_where_they_may_be_long(kind, value, stored):
    compiled = Compiled([check("a == b", Schema({"a": kind, "b": kind}))])
    assert compiled.traced({"a": value, "b": value})[1][0][2:] == (stored, stored)


def test_what_is_small_anyway_costs_nothing(lines):
    assert not [line for line in lines("answer.decision == 'wait' and answer.packs > 2", traced=True) if "six" in line]


def test_numbers_of_the_case_are_rounded_at_the_head_all_at_once(lines):
    text = lines("facts.film_um > 2", "facts.film_um < facts.reserve_um", traced=True)
    assert len([line for line in text if "sixes(" in line]) == 1


def test_lists_are_stored_by_their_length(ran):
    found = ran("'tell_owner' in answer.next_steps")
    assert found.events[0][2:] == ("tell_owner", [2])
    assert found.whole[0][2] == ("tell_owner", ["probe_coldest", "tell_owner"])


@pytest.mark.parametrize(
    "rule", ["answer.sure", "not answer.sure", "answer.sure and key.short", "1 if key.short else 2"]
)
def test_a_bare_field_in_the_place_of_a_test_is_recorded(ran, rule):
    assert len(ran(rule).events) == rule.count("answer") + rule.count("key")
