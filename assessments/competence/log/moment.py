"""Moments as the log writes them: UTC, to the microsecond, always in one form."""

import re
from datetime import UTC, datetime

from assessments.competence.log.errors import LogFault

FORM = "%Y-%m-%dT%H:%M:%S.%fZ"
KEPT = re.compile(r"(\d{4}-\d\d-\d\d)[T ](\d\d:\d\d:\d\d)(?:\.(\d{1,6}))?(?:Z|\+00(?::?00)?)?")


def stamp(at: datetime) -> str:
    """Return `at` in UTC; raises `LogFault` for a moment without a zone.

    >>> stamp(datetime(2026, 4, 14, 14, 5, tzinfo=UTC))
    '2026-04-14T14:05:00.000000Z'
    """
    if at.tzinfo is None:
        raise LogFault(f"{at} has no zone. The log takes moments with one.")
    return at.astimezone(UTC).strftime(FORM).rjust(27, "0")


def stamp_kept(text: str) -> str:
    """Return the stamp for a moment as a database writes it, in UTC; raises `LogFault` if it is none.

    >>> stamp_kept("2026-04-14 14:05:00")
    '2026-04-14T14:05:00.000000Z'
    """
    found = KEPT.fullmatch(text)
    if not found:
        raise LogFault(f"{text!r} is no moment, such as 2026-04-14T14:05:00.000000Z.")
    day, hour, fraction = found.groups()
    written = f"{day}T{hour}.{(fraction or '').ljust(6, '0')}Z"
    try:
        datetime.strptime(written, FORM).replace(tzinfo=UTC)
    except ValueError as wrong:
        raise LogFault(f"{text!r} is no moment of the calendar.") from wrong
    return written
