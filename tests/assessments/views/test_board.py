"""The board, put together: what comes first, and who is stuck."""

from datetime import timedelta

import pytest

from assessments.views.board import board_of, rows_of
from tests.factories import MembershipFactory

pytestmark = pytest.mark.django_db


def names(page):
    return [row["name"] for row in page["rows"]]


def test_what_to_do_next_comes_first(signer, remote, trainee, other, sit, now):
    MembershipFactory(cohort=remote, person__name="Abel Always")
    for days in (3, 2, 1):
        sit(other, mode="practice", answers={"dew_point": -40.0}, at=now - timedelta(days=days))
    sit(trainee, at=now - timedelta(days=1))
    page = board_of(signer, remote, now)
    assert names(page) == ["Tara Trainee", "Otto Other", "Abel Always"]
    assert [line["name"] for line in page["waiting"]] == ["Tara Trainee"]
    assert [line["name"] for line in page["stuck"]] == ["Otto Other"]


def test_a_rule_met_in_between_is_nobody_stuck(signer, remote, trainee, sit, now):
    for days, given in ((4, {"dew_point": -40.0}), (3, {"dew_point": -40.0}), (2, None), (1, {"dew_point": -40.0})):
        sit(trainee, mode="practice", answers=given, at=now - timedelta(days=days))
    assert [row.stuck for row in rows_of(signer, remote, now)] == [()]


@pytest.mark.parametrize(("days", "quiet"), [(13, False), (15, True)])
def test_nothing_for_two_weeks_is_stuck(signer, remote, trainee, sit, now, days, quiet):
    sit(trainee, mode="practice", at=now - timedelta(days=days))
    (row,) = rows_of(signer, remote, now)
    assert bool(row.stuck) is quiet


def test_a_cell_that_waits_leads_to_the_signature(signer, remote, trainee, sit, now):
    sit(trainee, at=now)
    page = board_of(signer, remote, now)
    cells = dict(zip([one["code"] for one in page["heads"]], page["rows"][0]["cells"], strict=True))
    assert cells["COA"]["standing"] == "ready"
    assert str(trainee.handle) in cells["COA"]["url"]
    assert (cells["INS"]["standing"], cells["INS"]["url"]) == ("not_started", None)


def test_whoever_left_is_not_on_the_board(signer, remote, trainee, now):
    trainee.is_active = False
    trainee.save()
    assert names(board_of(signer, remote, now)) == []
