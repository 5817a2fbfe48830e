"""The standing of an element and of a unit, as doors and curriculum have it; properties over records of any shape."""

import random
from datetime import timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assessments.competence.standing import STANDINGS, standing_of, unit_standing
from tests.assessments.competence.pieces import HERE, NOON, ask, days, decision, paper, requirement

BAD = {"outcome": "critical_fail"}


def stands(evidence=(), decisions=(), at=None, asked=None, here=HERE):
    return standing_of(asked or requirement(), evidence, decisions, at or days(10), here)


def test_nothing_on_record_is_not_started():
    found = stands()
    assert (found.code, found.done, found.total, found.old, found.since) == ("not_started", 0, 1, 0, None)
    assert [one.why for one in found.missing] == ["none"]


@pytest.mark.parametrize("change", [BAD, {"mode": "practice"}, {"at": days(-900)}])
def test_anything_on_record_that_is_not_enough_is_building(change):
    assert stands([paper(**change)]).code == "building"


def test_evidence_of_other_elements_begins_nothing():
    assert stands([paper(elements=("COA3",))]).code == "not_started"


def test_all_that_is_asked_for_is_ready_since_the_piece_that_completed_it():
    found = stands([paper("late", days(3)), paper("early", days(1))])
    assert (found.code, found.since, found.done, found.missing) == ("ready", days(1), 1, ())


def test_ready_since_the_last_of_several_asks_was_completed():
    asked = requirement(ask(count=2, days=2), ask(code="b", scenarios=("COA-02",)))
    held = [paper("a", days(1)), paper("b", days(1)), paper("c", days(4)), paper("d", days(2), scenario="COA-02")]
    found = stands(held, asked=asked)
    assert (found.code, found.since, found.done, found.total) == ("ready", days(4), 3, 3)


def test_too_old_is_a_notch_of_its_own():
    found = stands([paper(at=days(-900))])
    assert (found.code, found.done, found.old, found.missing[0].why) == ("building", 0, 1, "too_old")


def test_what_can_not_be_gathered_is_named_and_keeps_from_ready():
    asked = requirement(ask(), ask(code="b8", kind="bench", mode="", scenarios=("B8",)))
    found = stands([paper()], asked=asked)
    assert (found.code, [one.state for one in found.asks]) == ("building", ["met", "not_gathered"])
    assert [one.why for one in found.missing] == ["not_gathered"]


@pytest.mark.parametrize("kind", ["declined", "more_asked"])
def test_turned_down_goes_back_to_building_until_new_evidence_counts(kind):
    down = decision(kind, days(2))
    found = stands([paper()], [down])
    assert (found.code, found.turned_down, found.since) == ("building", down, None)
    assert [(one.why, one.ask, one.decision) for one in found.missing] == [("turned_down", None, down)]
    assert stands([paper(), paper("bad", days(3), **BAD)], [down]).code == "building"
    assert stands([paper(at=days(2))], [down]).code == "building"
    again = stands([paper(), paper("new", days(3))], [down])
    assert (again.code, again.turned_down) == ("ready", None)


def test_a_signature_stands_then_is_due_then_lapses():
    signed = decision("signed", days(1), until=days(700))
    codes = {n: stands([paper()], [signed], days(n)).code for n in (0, 1, 639, 640, 700, 701)}
    assert codes == {0: "ready", 1: "signed", 639: "signed", 640: "due", 700: "due", 701: "lapsed"}
    found = stands([paper()], [signed], days(701))
    assert (found.signature, found.until, found.since) == (signed, days(700), None)


def test_a_signature_without_an_end_ends_by_its_requirement():
    signed = decision("signed", NOON, until=None)
    assert stands([paper()], [signed], NOON.replace(year=2028)).code == "due"
    assert stands([paper()], [signed], NOON.replace(year=2028) + timedelta(seconds=1)).code == "lapsed"


def test_a_withdrawn_signature_gives_way_to_the_evidence():
    signed = decision("signed", days(1))
    taken = decision("withdrawn", days(2), withdraws="signed")
    found = stands([paper()], [signed, taken])
    assert (found.code, found.signature, found.until, found.questioned) == ("ready", signed, None, False)
    assert stands([], [signed, taken]).code == "not_started"


def test_under_a_withdrawn_signature_an_earlier_one_is_live_again():
    early, late = decision("signed", days(1), "early"), decision("signed", days(2), "late")
    taken = decision("withdrawn", days(3), withdraws="late")
    assert stands([paper()], [late, taken, early]).signature == early


def test_a_live_signature_is_not_turned_down_by_what_was_decided_on_renewing_it():
    found = stands([paper()], [decision("signed", days(1)), decision("declined", days(2))])
    assert (found.code, found.turned_down) == ("signed", None)


def test_decisions_on_other_elements_and_of_the_future_are_left_aside():
    other = decision("signed", days(1), element="COA3")
    assert stands([paper()], [other, decision("signed", days(20))]).code == "ready"


def test_judged_again_to_the_worse_questions_a_signature():
    signed = decision("signed", days(1))
    found = stands([paper(), paper("again", replaces="p", **BAD)], [signed])
    assert (found.code, found.questioned, found.missing[0].why) == ("signed", True, "none")


def test_judged_again_to_the_worse_leaves_what_else_was_there_enough():
    held = [paper(), paper("again", replaces="p", **BAD), paper("other", days(0.5))]
    assert not stands(held, [decision("signed", days(1))]).questioned


def test_what_came_after_a_signature_does_not_answer_the_question():
    held = [paper(), paper("again", replaces="p", **BAD), paper("later", days(3))]
    assert stands(held, [decision("signed", days(1))]).questioned
    assert not stands(held, [decision("signed", days(1), "a"), decision("signed", days(4), "b")]).questioned


def test_a_better_judgement_taken_back_questions_a_signature_too():
    held = [paper(**BAD), paper("better", replaces="p"), paper("worse", replaces="better", **BAD)]
    assert stands(held, [decision("signed", days(1))]).questioned


def test_age_questions_nothing():
    assert not stands([paper()], [decision("signed", days(1))], days(720)).questioned


def test_a_signature_without_evidence_was_never_judged_again():
    assert not stands([], [decision("signed", days(1))]).questioned


@pytest.mark.parametrize(
    ("elements", "unit"),
    [
        ([], "not_started"),
        (["not_started", "not_started"], "not_started"),
        (["signed", "signed"], "signed"),
        (["signed", "not_started"], "building"),
        (["not_started", "building"], "building"),
        (["building", "ready", "signed"], "ready"),
        (["ready", "due", "signed"], "due"),
        (["ready", "due", "lapsed"], "lapsed"),
    ],
)
def test_a_unit_stands_as_its_elements_do(elements, unit):
    assert unit_standing([_Bare(one) for one in elements]) == unit


class _Bare:
    """A standing of which only the code is read."""

    def __init__(self, code):
        self.code = code


EVIDENCE = st.lists(
    st.builds(
        lambda day, outcome, mode: (day, outcome, mode),
        st.integers(-800, 20),
        st.sampled_from(["satisfactory", "critical_fail"]),
        st.sampled_from(["paper", "practice"]),
    ),
    max_size=6,
).map(lambda rows: [paper(f"e{n}", days(day), outcome=out, mode=mode) for n, (day, out, mode) in enumerate(rows)])
DECISIONS = st.lists(
    st.tuples(st.sampled_from(["signed", "declined", "more_asked"]), st.integers(-800, 20)), max_size=4
).map(lambda rows: [decision(kind, days(day), f"d{n}") for n, (kind, day) in enumerate(rows)])


@given(EVIDENCE, DECISIONS, st.integers(1, 3), st.randoms(use_true_random=False))
def test_the_order_of_rows_makes_no_difference(evidence, decisions, count, chance: random.Random):
    asked = requirement(ask(count=count))
    mixed, turned = evidence.copy(), decisions.copy()
    chance.shuffle(mixed)
    chance.shuffle(turned)
    assert stands(evidence, decisions, asked=asked) == stands(mixed, turned, asked=asked)


@given(EVIDENCE, DECISIONS, st.integers(1, 3))
def test_notches_fit_and_a_ready_element_lacks_nothing(evidence, decisions, count):
    found = stands(evidence, decisions, asked=requirement(ask(count=count)))
    assert found.code in STANDINGS
    assert 0 <= found.done <= found.done + found.old <= found.total == count
    if found.code == "ready":
        assert found.missing == ()
        assert found.since <= days(10)
    if found.code in ("not_started", "building"):
        assert found.missing


@given(EVIDENCE, DECISIONS)
def test_the_future_changes_nothing(evidence, decisions):
    past = [one for one in evidence if one.at <= days(10)]
    decided = [one for one in decisions if one.at <= days(10)]
    assert stands(evidence, decisions) == stands(past, decided)


@given(EVIDENCE, DECISIONS)
def test_good_evidence_never_takes_a_standing_away(evidence, decisions):
    before = stands(evidence, decisions).code
    after = stands([*evidence, paper("good", days(10))], decisions).code
    assert STANDINGS.index(after) >= STANDINGS.index(before)
