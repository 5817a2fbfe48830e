"""One ask against the evidence."""

from dataclasses import replace
from datetime import timedelta

import pytest

from assessments.competence.judged import ask_state, is_gathered, met_by
from tests.assessments.competence.pieces import HERE, NOON, ask, days, paper


def state(one, *evidence, at=None, here=HERE):
    return ask_state(one, evidence, at or days(1), here)


def test_one_fitting_paper_meets_the_ask():
    found = state(ask(), paper())
    assert (found.state, found.have, found.counted, found.old, found.missing) == ("met", 1, (paper(),), (), None)


@pytest.mark.parametrize(
    "wrong",
    [
        {"outcome": "not_yet_satisfactory"},
        {"outcome": "critical_fail"},
        {"outcome": "cannot_certify"},
        {"mode": "practice"},
        {"kind": "bench"},
        {"scenario": "COA-02"},
        {"elements": ("COA1",)},
        {"elements": ()},
        {"at": days(2)},
    ],
)
def test_what_does_not_fit_counts_for_nothing(wrong):
    found = state(ask(), paper(**wrong))
    assert (found.state, found.have, found.counted, found.old) == ("open", 0, (), ())
    assert found.missing.why == "none"


def test_an_ask_of_no_mode_and_no_scenario_takes_any():
    assert state(ask(mode="", scenarios=()), paper(mode="practice", scenario="COA-07")).state == "met"


def test_evidence_on_any_element_that_an_ask_serves_counts():
    assert state(ask(elements=("COA1", "COA2")), paper(elements=("COA1",))).state == "met"


def test_evidence_counts_up_to_the_last_moment_of_its_window_and_is_old_after_it():
    last = NOON.replace(year=2027, month=10)  # 18 months by the calendar
    assert (state(ask(), paper(), at=last).state, state(ask(), paper(), at=last).old) == ("met", ())
    found = state(ask(), paper(), at=last + timedelta(microseconds=1))
    assert (found.state, found.have, found.old) == ("old", 0, (paper(),))
    assert (found.missing.why, found.missing.since) == ("too_old", last)


def test_too_old_is_said_since_what_was_left_was_not_enough():
    held = [paper("a"), paper("b", days(1)), paper("c", days(2))]
    since = {count: state(ask(count=count), *held, at=days(900)).missing.since for count in (1, 2, 3)}
    first = NOON.replace(year=2027, month=10)
    assert since == {1: first.replace(day=16), 2: first.replace(day=15), 3: first}


def test_fewer_than_asked_for_are_too_few_and_more_fill_no_further_notch():
    five = [paper(str(n), days(-n)) for n in range(5)]
    assert state(ask(count=3), *five[:2]).missing.why == "too_few"
    assert state(ask(count=3), *five).have == 3


def test_old_ones_that_were_never_enough_leave_it_open():
    found = state(ask(count=2), paper(at=days(-900)))
    assert (found.state, found.missing.why, len(found.old)) == ("open", "none", 1)


def test_two_on_one_day_are_not_on_two_days():
    two = ask(count=2, days=2)
    assert state(two, paper("a"), paper("b")).missing.why == "one_day"
    assert state(two, paper("a"), paper("b", days(-1))).state == "met"


def test_substrates_by_name_have_each_to_be_there_and_no_other_counts():
    both = ask(count=2, substrates=("gel_coat", "clear_coat"))
    assert state(both, paper("a"), paper("b")).missing.why == "one_substrate"
    assert state(both, paper("a"), paper("b", substrate="topcoat_2k")).missing.why == "too_few"
    assert state(both, paper("a"), paper("b", substrate="clear_coat")).state == "met"


def test_substrates_by_number_are_so_many_different_ones():
    two = ask(count=2, substrates=2)
    assert state(two, paper("a"), paper("b", substrate="")).missing.why == "one_substrate"
    assert state(two, paper("a"), paper("b", substrate="topcoat_2k")).state == "met"


def test_tags_have_all_to_be_there():
    tagged = ask(tags=("refusal", "dark"))
    assert state(tagged, paper(tags=("dark",)), here=HERE | {"refusal", "dark"}).missing.why == "none"
    assert state(tagged, paper(tags=("dark", "late", "refusal"))).state == "met"


@pytest.mark.parametrize(("seen", "right"), [("", False), ("T", True), ("X", True), ("W", False), ("WX", True)])
def test_a_workplace_witness_never_stands_alone(seen, right):
    found = state(ask(witness=("T", "X", "WX")), paper(witness=seen))
    assert found.state == ("met" if right else "open")
    assert right or found.missing.why == "wrong_witness"


def test_what_is_old_and_was_seen_by_the_wrong_one_is_not_there():
    assert state(ask(witness=("X",)), paper(at=days(-900), witness="T")).missing.why == "none"


@pytest.mark.parametrize(
    ("asked", "here", "can"),
    [
        (ask(), HERE, True),
        (ask(), {"scenario"}, False),
        (ask(), {"COA-01"}, False),
        (ask(scenarios=()), HERE, True),
        (ask(scenarios=(), elements=("INS1",)), HERE, False),
        (ask(tags=("refusal",)), HERE, False),
        (ask(tags=("refusal",)), HERE | {"refusal"}, True),
        (ask(kind="oral", mode="", scenarios=()), HERE, False),
        (ask(kind="oral", mode="", scenarios=()), HERE | {"oral"}, True),
        (ask(kind="bench", mode="", scenarios=("B1",)), HERE | {"bench"}, False),
        (ask(kind="bench", mode="", scenarios=("B1",)), HERE | {"bench", "B1"}, True),
    ],
)
def test_what_can_be_gathered_here(asked, here, can):
    assert is_gathered(asked, here) is can
    found = state(asked, here=here)
    assert (found.state, found.missing.why) == (("open", "none") if can else ("not_gathered", "not_gathered"))


def test_what_is_there_counts_even_where_no_more_can_be_gathered():
    assert state(ask(), paper(), here=()).state == "met"


def test_enough_is_what_is_asked():
    assert met_by(ask(), [paper()])
    assert not met_by(replace(ask(), count=2), [paper()])
