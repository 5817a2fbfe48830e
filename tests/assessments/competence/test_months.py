"""Calendar months, against a table worked by hand from the calendar (no library for it is installed here)."""

from datetime import UTC, datetime, timedelta, timezone

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assessments.competence.months import months_after

MOMENTS = st.datetimes(datetime(1990, 1, 1), datetime(2090, 1, 1), timezones=st.just(UTC))


# Worked by hand: the same day of the month, or the last where the month is too short; 2028 is a leap year, 2100 isn't.
@pytest.mark.parametrize(
    ("start", "months", "end"),
    [
        ("2026-04-14", 18, "2027-10-14"),
        ("2026-04-14", 24, "2028-04-14"),
        ("2026-08-31", 18, "2028-02-29"),
        ("2026-08-31", 6, "2027-02-28"),
        ("2028-02-29", 12, "2029-02-28"),
        ("2028-02-29", 48, "2032-02-29"),
        ("2026-12-31", 2, "2027-02-28"),
        ("2026-10-31", 1, "2026-11-30"),
        ("2026-11-30", 1, "2026-12-30"),
        ("2099-12-31", 2, "2100-02-28"),
        ("2026-03-31", -1, "2026-02-28"),
        ("2026-01-15", -1, "2025-12-15"),
        ("2026-01-15", 0, "2026-01-15"),
    ],
)
def test_months_are_counted_by_the_calendar(start, months, end):
    at = datetime.fromisoformat(f"{start}T23:30:00+00:00")
    assert months_after(at, months).isoformat() == f"{end}T23:30:00+00:00"


def test_months_are_counted_in_utc_whatever_zone_the_moment_carries():
    west = datetime(2026, 8, 30, 22, tzinfo=timezone(timedelta(hours=-4)))  # 31 August, 02:00 in UTC
    assert months_after(west, 6) == datetime(2027, 2, 28, 2, tzinfo=UTC)


@given(MOMENTS, st.integers(0, 240))
def test_a_later_start_never_ends_earlier(at, months):
    assert months_after(at, months) <= months_after(at + timedelta(days=1), months)


@given(MOMENTS, st.integers(1, 240))
def test_a_month_is_at_least_28_and_at_most_31_days(at, months):
    passed = months_after(at, months) - at
    assert timedelta(days=28 * months) <= passed <= timedelta(days=31 * months)
