"""Stuck: three times in a row, or two weeks of nothing; common practice, no source."""

from datetime import timedelta

import pytest

from assessments.competence.stuck import Stuck, stuck
from tests.assessments.competence.pieces import NOON, days


def rows(*verdicts, code="R41"):
    return [(code, verdict, days(n - 20)) for n, verdict in enumerate(verdicts)]


@pytest.mark.parametrize(
    ("verdicts", "times"),
    [
        (("not_met",) * 2, 0),
        (("not_met",) * 3, 3),
        (("not_met",) * 4, 4),
        (("not_met", "not_met", "met", "not_met"), 0),
        (("met", "not_met", "not_met", "not_met"), 3),
        (("not_met", "not_applicable", "not_met", "not_met"), 3),
        (("not_met", "not_met", "not_met", "not_applicable"), 3),
        (("not_met", "not_met", "not_met", "met"), 0),
        (("not_met", "partly", "not_met", "not_met"), 0),
        (("not_answered",) * 3, 0),
        (("not_applicable",) * 3, 0),
        ((), 0),
    ],
)
def test_a_rule_not_met_three_times_in_a_row(verdicts, times):
    assert stuck(rows(*verdicts), NOON, NOON) == ((Stuck("rule", "R41", times=times),) if times else ())


def test_findings_come_in_any_order_each_rule_for_itself_and_none_from_the_future():
    mixed = rows("not_met", "not_met", "not_met") + rows("not_met", "not_met", "not_met", code="R21")
    mixed.append(("R21", "met", days(1)))
    assert [one.code for one in stuck(reversed(mixed), NOON, NOON)] == ["R21", "R41"]


def test_two_weeks_of_nothing_are_quiet_and_a_second_less_is_not():
    seen = NOON - timedelta(days=14)
    assert stuck([], seen, NOON) == (Stuck("quiet", days=14),)
    assert stuck([], seen + timedelta(seconds=1), NOON) == ()


def test_who_was_never_seen_is_not_quiet():
    assert stuck([], None, NOON) == ()


def test_a_rule_comes_before_quiet():
    assert [one.why for one in stuck(rows(*["not_met"] * 3), days(-20), NOON)] == ["rule", "quiet"]
