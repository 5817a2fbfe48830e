"""Moments as the log and the databases write them."""

from datetime import UTC, datetime, timedelta, timezone

import pytest

from assessments.competence.log.errors import LogFault
from assessments.competence.log.moment import stamp, stamp_kept

STAMP = "2026-04-14T14:05:00.000000Z"


def test_a_moment_is_written_in_utc_to_the_microsecond():
    there = timezone(timedelta(hours=-4))
    assert stamp(datetime(2026, 4, 14, 10, 5, tzinfo=there)) == STAMP
    assert stamp(datetime(2026, 4, 14, 14, 5, 0, 7, tzinfo=UTC)) == "2026-04-14T14:05:00.000007Z"
    assert stamp(datetime(7, 1, 1, tzinfo=UTC)) == "0007-01-01T00:00:00.000000Z"


def test_a_moment_without_a_zone_is_refused():
    with pytest.raises(LogFault, match="has no zone"):
        stamp(datetime(2026, 4, 14))


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("2026-04-14 14:05:00", STAMP),
        ("2026-04-14 14:05:00.000007", "2026-04-14T14:05:00.000007Z"),
        ("2026-04-14 14:05:00.5", "2026-04-14T14:05:00.500000Z"),
        ("2026-04-14 14:05:00+00", STAMP),
        (STAMP, STAMP),
    ],
)
def test_what_a_database_writes_is_read(text, wanted):
    assert stamp_kept(text) == wanted


@pytest.mark.parametrize(
    "text",
    ["", "yesterday", "2026-04-14", "2026-04-14 14:05:00+02", "2026-13-14 14:05:00", "2026-04-14 25:05:00", "\udce9"],
)
def test_what_is_no_moment_is_refused(text):
    with pytest.raises(LogFault, match="is no moment"):
        stamp_kept(text)
